import { expect } from 'vitest';
import type { Person } from './app';
import type { Hand } from './hand';
import { stopsTested } from './stops';

/** Called on each screen and state that the walk comes to. */
export type Visit = (name: string) => Promise<void>;

const heading = (person: Hand, text: string | RegExp): Promise<void> => person.heads(text);

/** From a first visit to an example machine in use. */
export const takeExample = async (person: Hand, name = /^Heron/): Promise<void> => {
  await person.link('Try an example first');
  await person.key(name);
  await person.heads('No thread chosen');
};

/** Chooses M10 × 1.5 by family and size, from a screen that offers to choose. */
export const chooseM10 = async (person: Hand): Promise<void> => {
  await person.link('Choose a thread');
  await person.link('ISO metric coarse');
  await person.key('M10');
  await person.heads(/^M10/);
};

/** Sets the leadscrew's pitch to one of its usual values, from any screen. */
export const setPitch = async (person: Person, key: string): Promise<void> => {
  await person.place('Machine');
  await person.link(/^Leadscrew pitch/);
  await person.key(key);
  await person.reads(`Leadscrew pitch ${key}`);
};

/** Sets what the pad asks, having opened it by a key. */
export const enter = (person: Hand, key: string | RegExp, text: string, unit?: string): Promise<void> =>
  person.enters(key, text, unit);

const back = async (person: Person): Promise<void> => {
  await person.phone.page.goBack();
  await person.phone.page.locator('ls-pad').waitFor({ state: 'detached' });
};

const why = async (person: Person, row: RegExp, name: string, visit: Visit): Promise<void> => {
  await person.key(row);
  await person.phone.page.locator('dialog[open]').waitFor();
  await visit(`why ${name}`);
  await person.key('Close');
  await person.phone.page.locator('dialog[open]').waitFor({ state: 'detached' });
};

/** First visit, the list of machines, a new machine and its refusal. */
const begin = async (person: Person, visit: Visit): Promise<void> => {
  await heading(person, /every thread/);
  await visit('first visit');
  await person.link('Enter my lathe');
  await heading(person, 'New machine');
  await person.key('Add this machine');
  await person.phone.page.getByRole('alert').filter({ hasText: /./ }).first().waitFor();
  await visit('new machine refused');
  await person.place('Threads');
  await person.link('Try an example first');
  await heading(person, 'No machine yet');
  await visit('machines, none of one’s own');
  await person.key(/^Heron/);
  await heading(person, 'No thread chosen');
  await visit('threads, none chosen');
  await person.place('Speed');
  await heading(person, 'Choose a thread first');
  await visit('speed, no thread');
  await person.place('Checks');
  await heading(person, 'Which thread?');
  await visit('checks, no thread');
  await person.place('Cut');
  await heading(person, 'Nothing to cut yet');
  await visit('cut, no thread');
};

/** Nothing can be taken from the look-up's list until it follows the last sign. */
const follows = (person: Person): Promise<void> =>
  person.phone.page.locator('ls-type[aria-busy]').waitFor({ state: 'detached' });

const look = async (person: Person, visit: Visit): Promise<void> => {
  await person.place('Threads');
  await person.link('Choose a thread');
  await heading(person, 'Which thread?');
  await visit('find');
  await person.link('ISO metric fine');
  await heading(person, 'ISO metric fine');
  await visit('family');
  await person.link('M36');
  await heading(person, 'M36');
  await visit('size');
  await person.phone.page.goBack();
  await person.phone.page.goBack();
  await person.link('Type a size or pitch');
  await person.sees('Such as');
  await visit('type, nothing typed');
  for (const key of ['1', 'Over', '4']) await person.key(key);
  await follows(person);
  await visit('type, found');
  await person.key(/^Unit/);
  await visit('type, units');
  await person.key('tpi');
  await person.key('Over');
  await follows(person);
  await visit('type, refused');
  for (let n = 0; n < 4; n += 1) await person.key('Correct');
  await person.key('8');
  await follows(person);
  await visit('type, as it stands');
  await person.key('Use as a pitch');
  await heading(person, '8 tpi');
  await visit('threads, a bare pitch');
  await person.link('Another thread');
  await person.link('ISO metric coarse');
  await person.key('M10');
  await heading(person, /^M10/);
};

const threads = async (person: Person, visit: Visit): Promise<void> => {
  await visit('threads');
  await why(person, /^Depth/, 'depth, missing', visit);
  await person.key('Round');
  await enter(person, 'Enter the tool nose', '0.2');
  await person.key('Add to favourites');
  await visit('threads, nose known, favourite');
  await why(person, /^Half-nut/, 'half-nut', visit);
  await why(person, /^Steps per count/, 'ratio', visit);
  await why(person, /^Turn blank to/, 'blank', visit);
};

/** The pages under a thread: its limits, measuring it, and asking what a thread is. */
const pages = async (person: Person, visit: Visit): Promise<void> => {
  await person.link('Limits, undercuts, drills');
  await heading(person, /^M10×1.5 6g/);
  await visit('limits');
  await person.link('Back to the thread');
  await person.link('Measure: wires, gauges');
  await heading(person, /^Measure M10/);
  await enter(person, 'Add one', '0.866', 'mm');
  await enter(person, 'Enter: Wire in use', '0.866', 'mm');
  await enter(person, 'Enter: Reading over three wires', '10.52', 'mm');
  await visit('measure, above the limits');
  await person.key('Go and no-go');
  await visit('measure, gauges');
  await person.link('Back to the thread');
  await person.link('Another thread');
  await person.link('What is this thread?');
  await heading(person, 'What is this thread?');
  await enter(person, 'Enter: Outside diameter', '9.85', 'mm');
  await enter(person, 'Enter: Length over crests', '15.02', 'mm');
  await enter(person, 'Enter: Crests in it', '11');
  await visit('what is this thread');
  await person.place('Threads');
};

const speed = async (person: Person, visit: Visit): Promise<void> => {
  await person.link('Use it');
  await person.sees('This spindle has');
  await visit('speed, none set');
  await enter(person, 'Enter stopping room', '4', 'mm');
  await person.key(/^700/);
  await person.sees(/^Over: /);
  await visit('speed, too much');
  await person.key(/^160/);
  await person.reads('OK at 160 rpm');
  await visit('speed, ok');
  await why(person, /^Stopping room/, 'stopping room', visit);
};

/** What is to be cut, what it is planned by, and the other work. */
const cut = async (person: Person, visit: Visit): Promise<void> => {
  await person.place('Cut');
  await heading(person, /^M10/);
  await visit('cut');
  await person.link(/^Work and tool/);
  await person.key('Modified flank');
  await enter(person, /^Blank as measured/, '10.1', 'mm');
  await visit('cut, work and tool');
  await person.link(/^Material/);
  await visit('cut, material');
  await person.key('Mild steel');
  await person.link('Back to the cut');
  await person.link('Other work');
  await heading(person, 'Other work');
  for (const way of await person.phone.page.locator('ls-cut-ways summary').all())
    await person.phone.finger.tapOn(way);
  await visit('cut, other work');
};

const checks = async (person: Person, visit: Visit): Promise<void> => {
  await person.place('Checks');
  await person.sees('Belts and pulleys tight?');
  await visit('checks, question');
  await person.key('NOT OK');
  await person.sees(/recorded this as not OK/);
  // A new question takes no answer for a moment, against double taps.
  await person.phone.page.locator('ls-checks .resting').waitFor({ state: 'detached' });
  await visit('checks, not ok');
  await person.link('All checks');
  await heading(person, 'Pre-start checks');
  await visit('checks, list');
  await person.key('Something changed');
  await visit('checks, what changed');
  await person.link('Before service: isolate');
  await person.sees('Before service');
  await visit('checks, service');
  await person.place('Checks');
  await person.link('All checks');
  await person.link(/^Blank/);
  await person.link('Enter the figure');
  await person.phone.page.locator('ls-pad').waitFor();
  await visit('pad, reading');
  for (let n = 0; n < 5; n += 1) await person.key('9');
  await person.key('Done');
  await person.phone.page.getByRole('alert').filter({ hasText: /./ }).first().waitFor();
  await visit('pad, refused');
  await back(person);
};

const machine = async (person: Person, visit: Visit): Promise<void> => {
  await person.place('Machine');
  await heading(person, 'Heron');
  await visit('machine');
  await why(person, /^Counts per spindle rev/, 'counts', visit);
  await person.link(/^Leadscrew pitch/);
  await heading(person, /pitch of the leadscrew/);
  await visit('field, number');
  await person.key('4 mm');
  await heading(person, 'Heron');
  await visit('machine, undo');
  await person.key('Undo');
  await person.link(/^Motor Stepper/);
  await heading(person, 'What drives the leadscrew?');
  await visit('field, choice');
  await person.link('All of this machine');
  await person.link(/^Its fixed speeds/);
  await heading(person, 'Which speeds has the spindle?');
  await visit('field, speeds');
  await person.link('All of this machine');
  await person.link(/^Name Heron/);
  await person.phone.page.getByLabel('Name').fill('');
  await person.key('Keep');
  await person.phone.page.getByRole('alert').filter({ hasText: /./ }).first().waitFor();
  await visit('field, text refused');
  await person.link('All of this machine');
  await person.link('Guided entry');
  await heading(person, 'What turns the leadscrew?');
  await visit('guide');
  await person.place('Machine');
  await person.link('Another machine');
  await heading(person, 'Machines');
  await visit('machines');
  await person.place('Machine');
  await person.link(/^Your own log/);
  await person.phone.page.locator('ls-pad').waitFor();
  await visit('pad, hours');
  await back(person);
  await person.link('Settings, cautions and log');
  await heading(person, 'Settings');
  await person.key('Show the log');
  await visit('settings, log');
};

/** Every screen and the states they can be in, by touch from the first visit on. */
export const everyScreen = async (person: Person, visit: Visit): Promise<void> => {
  for (const part of [begin, look, threads, pages, speed, cut, checks, machine]) await part(person, visit);
};

/** What the checks that need a figure are answered with, for Heron and M10 × 1.5 at 160 rpm. */
const FIGURES: readonly (readonly [RegExp, string])[] = [
  [/end float/i, '0.02'],
  [/backlash/i, '0.1'],
  [/stopping time/i, '0.5'],
  [/ramp/i, '400'],
  [/blank/i, '9.85'],
  [/run-in/i, '10'],
  [/gap/i, '20'],
  [/passes/i, '12'],
];

/** Answers what is asked on Checks, one by one, until a heading that matches; gives the questions in order. */
export const answerChecks = async (person: Person, until: RegExp): Promise<string[]> => {
  const { page } = person.phone;
  const question = async (): Promise<string> =>
    (await page.locator('ls-checks h1').innerText()).replace(/\s+/g, ' ').trim();
  const asked: string[] = [];
  for (let now = await question(); !until.test(now); now = await question()) {
    if (asked.includes(now)) throw new Error(`asked twice: ${now}`);
    asked.push(now);
    const figure = FIGURES.find(([words]) => words.test(now));
    if (figure) await enter(person, 'Enter the figure', figure[1]);
    else await person.key(/^DONE/);
    await expect.poll(question, { timeout: 10_000, interval: 50 }).not.toBe(now);
  }
  return asked;
};

/** From the end of the walk: all checks recorded, the cut begun, its own checks, the cut ended. */
export const everyCutScreen = async (person: Person, visit: Visit): Promise<void> => {
  await stopsTested(person);
  await person.place('Checks');
  await answerChecks(person, /^All checks recorded/);
  await visit('checks, all recorded');
  await person.key('Cut begins now');
  await heading(person, 'Clean, deburred and cool?');
  await visit('checks, after the scratch pass');
  await person.place('Speed');
  await person.sees(/that a cut began/);
  await visit('speed, a cut runs');
};
