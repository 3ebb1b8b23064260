import type { Page } from 'playwright-core';
import type { Person } from './app';
import type { Phone } from './phone';

/** Waits until the app starts without a network. */
export const readyOffline = async (phone: Phone, person: Person): Promise<void> => {
  await phone.controlled();
  await person.sees('Ready offline');
};

/** Asks for a newer version; what comes of it is seen on the screen, so that an answer that never comes ends nothing. */
export const lookForUpdate = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const asked = navigator.serviceWorker.ready.then((r) => r.update()).catch(() => undefined);
    await Promise.race([asked, new Promise((resolve) => setTimeout(resolve, 15_000))]);
  });

/** Takes the newer version that is offered. A finger on the page that goes would be told nothing, and wait for ever. */
export const changeToIt = async (phone: Phone, person: Person): Promise<void> => {
  const loaded = phone.page.waitForEvent('load');
  await person.key('Change to it now');
  await loaded;
};
