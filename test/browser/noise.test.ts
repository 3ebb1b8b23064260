import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { scanEverywhere } from './support/axe';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { Phone } from './support/phone';
import { enter, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

const plot = () => phone.page.locator('ls-bode-plot').getByRole('img');

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await phone.controlled();
  await person.sees('Ready offline');
  await takeExample(person);
  await person.place('Machine');
  phone.watch.allow(/ERR_CONNECTION_REFUSED|Failed to load resource/);
  // No network from here on, and none when it is opened again.
  await host.close();
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

// Heron: 1200 lines on the spindle itself, channels up to 30° off.
describe('electrical noise', () => {
  it('begins with the cautions, and says what to try for what is seen', async () => {
    await person.link('Electrical noise');
    await person.reads('Isolate before you touch wiring');
    await person.reads('No protective device is sized here.');
    expect(await scanEverywhere(phone.page, 'noise, nothing entered')).toEqual([]);
    expect(await pageFaults(phone.page, 'noise, nothing entered')).toEqual([]);
    await person.link('Counts come only while the inverter runs');
    await person.reads('Try in this order, cheapest first');
    await person.reads('Clamp the encoder cable’s screen all round to the chassis at both ends');
    expect(await scanEverywhere(phone.page, 'noise, what to try')).toEqual([]);
    await person.link('All about noise');
  });

  it('an open collector: 4.7 kΩ at 2000 rpm is too much, 1 kΩ is not', async () => {
    await person.link(/^Open collector/);
    await person.reads('Not known yet: Pull-up resistor');
    await enter(person, /^Pull-up resistor/, '4.7', 'kΩ');
    await enter(person, /^Length of the cable/, '5', 'm');
    await enter(person, /^Capacitance of the cable/, '100');
    await enter(person, /^Capacitance of the input/, '47', 'pF');
    await enter(person, /^Input switches at/, '70');
    await enter(person, /^Voltage of the pull-up/, '5');
    await enter(person, /^Output can sink/, '20', 'mA');
    await person.reads('Not known yet: Spindle speed.');
    await enter(person, /^Spindle speed/, '2000');
    // 2.571 µs to 70 %: 3.095. Channel 40 kHz; 60/360 of 25 µs is 4.167, a quarter of it 1.0417.
    await person.reads('Rising edge late by Too much: 3.1 µs');
    await person.reads('At most 1.04 µs');
    expect(await scanEverywhere(phone.page, 'noise, open collector')).toEqual([]);
    await enter(person, /^Pull-up resistor/, '1', 'kΩ');
    await person.reads('Rising edge late by OK: 659 ns');
    await person.link('All about noise');
    await person.reads('Open collector OK');
  });

  it('a filter is drawn, and says where it amplifies', async () => {
    await person.link(/^Supply filter/);
    await enter(person, /^Inductance of the coil/, '1', 'mH');
    await enter(person, /^Capacitor Enter/, '1', 'µF');
    await person.reads('Corner 5.03 kHz');
    await enter(person, /^Resistance of the source/, '0.1', 'Ω');
    await enter(person, /^Resistance of the load/, '100', 'Ω');
    await enter(person, /^Carrier frequency/, '8', 'kHz');
    // |1 − (8/5.033)²| is 3.67 dB with no load.
    await person.reads('Carrier, ideal −3.7 dB At 8 kHz');
    await person.reads('Carrier as it is Close: −4.1 dB');
    expect(await plot().getAttribute('aria-label')).toContain('Corner 5.03');
    expect(await scanEverywhere(phone.page, 'noise, filter')).toEqual([]);
    expect(await pageFaults(phone.page, 'noise, filter')).toEqual([]);
    await enter(person, /^Carrier frequency/, '5', 'kHz');
    await person.reads('Carrier as it is Too much:');
    await phone.finger.tapOn(phone.page.locator('summary'));
    await person.reads('1 ÷ (2π × √(L × C)) = 5.03 kHz');
    expect(await scanEverywhere(phone.page, 'noise, filter, why')).toEqual([]);
    await person.link('All about noise');
  });

  it('length of the cable, by how the signals are driven', async () => {
    await person.link(/^Cable length/);
    await person.key('Single-ended');
    await person.reads('Single-ended, near noise Too much: 3 m');
    await person.key('Differential');
    await person.reads('Differential reaches OK: 1219 m');
    expect(await scanEverywhere(phone.page, 'noise, cable')).toEqual([]);
    await person.link('All about noise');
    // What holds for an open collector alone isn't asked any more.
    await person.seesNot('Open collector');
  });

  it('of a conductor’s sizes only the one said last counts', async () => {
    await person.link(/^Encoder’s supply/);
    await enter(person, /^Voltage fed in/, '5');
    await enter(person, /^Least the encoder needs/, '4.75');
    await enter(person, /^Its current/, '150', 'mA');
    await enter(person, /^Conductor, AWG/, '26');
    // 133.9 Ω/km; 0.25 V ÷ (2 × 0.15 A × 0.1339 Ω/m) is 6.22 m.
    await person.reads('Longest cable 6.22 m');
    await enter(person, /^Or its area/, '0.5');
    await person.reads('Conductor, AWG Enter');
    // 39 Ω/km: 21.4 m.
    await person.reads('Longest cable 21.3 m');
    expect(await scanEverywhere(phone.page, 'noise, supply')).toEqual([]);
  });

  it('all of it is there again after the phone was killed', async () => {
    await phone.kill();
    await phone.start();
    person = new Person(phone);
    await person.reads('Longest cable 21.3 m');
    await person.link('All about noise');
    await person.reads('Cable length OK');
    await person.reads('Supply filter Too much');
  });

  it('what was entered is cleared for this machine, and comes back', async () => {
    await person.key('Clear what was entered here');
    await person.reads('Supply filter Not known');
    await person.key('Undo');
    await person.reads('Supply filter Too much');
    expect(phone.watch.problems).toEqual([]);
  });
});
