import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { Phone } from './support/phone';
import { chooseM10, enter, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

const faults = (name: string): Promise<string[]> => pageFaults(phone.page, name);

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person);
  await chooseM10(person);
  await person.link('Measure: wires, gauges');
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

// ISO 965-2, M10 6g: pitch diameter 8.862 to 8.994. Wires of 0.866: E = M − 3 W + 0.866025 P − 0.0017 (NBS H28).
describe('the measuring page', () => {
  it('keeps the wires a person owns: to be used by a touch, taken out by two, put back by one', async () => {
    // Best wire 0.57735 P = 0.866; 0.56 P to 0.90 P; of the drills 0.85 mm is nearest (No. 65 is 0.889).
    await person.reads('Best wire 0.866 mm');
    await person.reads('0.840 mm – 1.350 mm');
    await person.reads('Nearest drill shank 0.85 mm');
    await enter(person, 'Add one', '5', 'mm');
    await person.reads('None of yours suits this thread.');
    await enter(person, 'Add one', '0.9', 'mm');
    await enter(person, 'Add one', '0.866', 'mm');
    await person.reads('Best of yours 0.866 mm');
    await person.link('Add one');
    await person.types('5', 'mm');
    await person.sees('This one is among yours already.');
    await phone.page.goBack();
    await person.key('5 mm');
    await person.reads('Too thick for this thread');
    await person.key('Take one out');
    expect(await faults('measure, taking out')).toEqual([]);
    await person.key('Take out 5 mm');
    await person.key('Undo');
    await phone.page.getByRole('button', { name: '5 mm', exact: true }).waitFor();
    await person.key('0.866 mm');
    await person.reads('Wire in use: 0.866 mm');
  });

  it('finds the pitch diameter by one wire, and keeps that way over the pad and a killed phone', async () => {
    await person.key('One wire');
    await person.key('A measuring set');
    // M = 2 × 10.04 − 9.85 = 10.23; E = 8.929.
    await enter(person, 'Enter: Reading, one wire to the crest', '10.04', 'mm');
    await enter(person, 'Enter: Major diameter, measured', '9.85', 'mm');
    await person.reads('Effective diameter 8.929 mm');
    // u² = (2 × 0.004)² + 0.004² + (3 × 0.0005)² µm: twice 0.0091.
    await person.reads('± 0.018 mm');
    await person.reads('Effective diameter within limits by your wires; lead and form not checked.');
    await phone.kill();
    await phone.start();
    await person.reads('Effective diameter 8.929 mm');
  });

  it('finds it by two wires against a cylinder', async () => {
    await person.key('Two wires');
    // M = 9 + (9.498 − 10) + 2 × 0.866 = 10.23.
    await enter(person, 'Enter: Cylinder, known size', '9', 'mm');
    await enter(person, 'Enter: Reading on the cylinder', '10', 'mm');
    await enter(person, 'Enter: Reading on the thread', '9.498', 'mm');
    await person.key('DRO');
    await person.reads('Effective diameter 8.929 mm');
    expect(await faults('measure, two wires')).toEqual([]);
    await person.key('Three wires');
    // A DRO reads nothing across three wires.
    await person.seesNot('DRO');
  });

  it('finds it by a thread micrometer, and calls no wires', async () => {
    await person.key('Thread micrometer');
    // 8.94 + 25 − 25.012 = 8.928.
    await enter(person, 'Enter: Standard, known size', '25', 'mm');
    await enter(person, 'Enter: Reading on the standard', '25.012', 'mm');
    await enter(person, 'Enter: Reading on the work', '8.94', 'mm');
    await person.reads('Effective diameter 8.928 mm');
    await person.reads('within limits by your micrometer; lead and form not checked.');
    await person.seesNot('Best wire');
  });

  it('gauges an inside thread and says why no wires', async () => {
    await person.link('Back to the thread');
    await person.key('Internal');
    await person.link('Measure: wires, gauges');
    await person.sees('Wires and thread micrometers measure outside threads.');
    // No-go, two turns (ISO 1502): 2 × 1.5.
    await person.reads('3.000 mm');
    await person.seesNot('Best wire');
  });

  it('forgets what was read on another thread', async () => {
    await person.link('Back to the thread');
    await person.key('External');
    await person.link('Another thread');
    await person.link('ISO metric coarse');
    await person.key('M8');
    await person.link('Measure: wires, gauges');
    // 0.57735 × 1.25.
    await person.reads('Enter: Reading on the standard');
    await person.key('Three wires');
    await person.reads('Best wire 0.722 mm');
    await person.sees('Enter: Reading over three wires');
    await person.sees('Enter: Wire in use');
    expect(phone.watch.problems).toEqual([]);
  });
});
