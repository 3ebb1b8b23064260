import { it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { Phone } from './support/phone';
import { shoot } from './support/shots';
import { everyScreen, recordAll } from './support/screens';
it('walks', { timeout: 400_000 }, async () => {
  const host = await serve(DIST);
  const phone = await Phone.open(host.url);
  phone.context.setDefaultTimeout(6000);
  try {
    let n = 0; const t0 = Date.now();
    await everyScreen(new Person(phone), async (name) => { n++; console.log(n, name, Date.now() - t0); await shoot(phone.page, `w${String(n).padStart(2, '0')} ${name}`); });
    console.log(phone.watch.problems);
  } catch (e) { await shoot(phone.page, 'failed'); throw e; } finally { await phone.close(); await host.close(); }
});
