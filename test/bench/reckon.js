/** Times core's calculations in a slowed page, from a bundle of core alone. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { serve } from '../../.ci/serve.js';
import { newProfile, openBrowser, slow } from './browser.js';
import { bundle } from './bundle.js';
import { median, quantile } from './numbers.js';

export async function measureCalculations() {
  const { folder, remove } = await bundle('test/bench/calculations.ts', 'core.js');
  const profile = newProfile();
  try {
    writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Calculations</title>');
    const host = await serve(folder);
    const { context, page } = await openBrowser(profile.path);
    await page.goto(host.url);
    await slow(page);
    const times = await page.evaluate(async (address) => {
      const core = await import(address);
      return {
        lookUp: core.lookUps(),
        own: core.ownLookUps(),
        records: core.recordLookUps(),
        gauge: core.gauges(),
        trains: core.trains(),
      };
    }, `${host.url}core.js`);
    await context.close();
    await host.close();
    const summary = (/** @type {{ first: number, each: number[] }} */ { first, each }) => ({
      first,
      median: median(each),
      p95: quantile(each, 0.95),
      count: each.length,
    });
    return {
      lookUp: summary(times.lookUp),
      'look-up with 10,000 own': summary(times.own.lookUp),
      'index of 500 own': summary(times.own.indexing),
      'look-up of 10,000 records': summary(times.records.lookUp),
      '250 records made ready': summary(times.records.making),
      gauge: summary(times.gauge),
      'trains of 20 wheels': summary(times.trains),
    };
  } finally {
    profile.remove();
    remove();
  }
}
