import { holdCutting, type CuttingHold } from './device/cutting-lock';
import { colourEdge } from './device/edge-colour';
import { logTrouble } from './device/log';
import { keepAwake, type Awake } from './device/wake-lock';
import { ScreenFailedEvent } from './elements/screen';
import { Shell } from './screens/shell';
import { App, openStorage } from './state';
import { setMark } from './text/numbers';
import { setWords } from './text/words';

/** Places where a person stands at the lathe: the screen stays on. */
const AWAKE = ['speed', 'checks', 'cut'];

/** Figures beside those that Speed shows; kept here until there is an app to take them. */
let figures: Parameters<App['addFigures']>[0] | null = null;
let taker: App | null = null;
const loadFigures = async (): Promise<void> => {
  figures ??= (await import('./core/figures/rest')).REST;
  taker?.addFigures(figures);
};

/** All that the first paint does without is one file. */
const load = async (): Promise<void> => {
  await Promise.all([import('./screens/rest'), loadFigures()]);
};

/** So long the frame of the app waits for what stands in it, ms. */
const AT_ONCE = 150;
const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

const afterPaint = (): Promise<void> =>
  new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));

/** What a person came for is on the screen, and a touch is answered. */
const usable = async (): Promise<void> => {
  document.querySelector('.door')?.remove();
  await afterPaint();
  performance.mark('latheside:usable');
};

const dress = (app: App): void => {
  const root = document.documentElement;
  const { theme, words, hand } = app.settings;
  if (theme === 'auto') delete root.dataset.theme;
  else root.dataset.theme = theme;
  colourEdge(theme);
  root.dataset.machine = app.profile?.colour ?? 'none';
  root.dataset.hand = hand;
  setWords(words);
};

/** While a cut runs that this tab knows of it holds the lock that keeps updates away from every tab. */
const followCut = (app: App): (() => void) => {
  let hold: Promise<CuttingHold> | null = null;
  return () => {
    const { cutting } = app;
    if (cutting && !hold) hold = holdCutting();
    if (!cutting && hold) {
      void hold.then((h) => h.release());
      hold = null;
    }
  };
};

/** The tab that takes a run's passes holds its lock; in every other tab the run can only be read. */
const followRun = async (app: App): Promise<void> => {
  const { RunLock } = await import('./device/run-lock');
  const lock = new RunLock((id, hold) => app.runs.holding(id, hold));
  app.runs.takeOver = () => lock.takeOver();
  const follow = (): void => lock.follow(app.runs.current?.id ?? null);
  app.subscribe(follow);
  follow();
};

const followPlace = (): (() => void) => {
  let awake: Awake | null = null;
  return () => {
    const place = location.hash.split('/')[1] ?? '';
    if (AWAKE.includes(place)) awake ??= keepAwake(() => undefined);
    else if (place !== 'enter') {
      awake?.release();
      awake = null;
    }
  };
};

/** Builds the look-up's index a family at a time, so that neither the first key nor a touch meanwhile waits for it. */
const warmInSlices = (warm: () => boolean): void => {
  if (warm()) setTimeout(() => warmInSlices(warm), 30);
};

/** The copy beside the database catches up and follows from now on. */
const followCopy = async (app: App): Promise<void> => {
  try {
    if (await app.storage.startMirror()) await app.refresh();
  } catch (e) {
    logTrouble('storage', e);
  }
};

/** A host that sends an older policy forbids style sheet and scripts in the page: the app then does what they do. */
const doAsThePage = (): void => {
  if (!globalThis.lathesideEarly)
    document.head.append(
      Object.assign(document.createElement('link'), { rel: 'manifest', href: './manifest.webmanifest' }),
    );
  const forbidden = document.querySelector('style');
  if (!forbidden || forbidden.sheet) return;
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(forbidden.textContent);
  document.adoptedStyleSheets.push(sheet);
};

const start = async (): Promise<void> => {
  doAsThePage();
  const deep = location.hash !== '';
  const shell = new Shell();
  // Where the head of the screen can be shown without it, the code of the screens waits until that is done.
  let goOn: () => void = () => undefined;
  const headFirst = new Promise<void>((resolve) => {
    goOn = resolve;
  });
  shell.load = async () => {
    if (shell.glances && location.hash !== '') await headFirst;
    await load();
  };
  shell.addEventListener('ls-trouble', (e) => logTrouble('module', (e as CustomEvent).detail));
  shell.addEventListener(ScreenFailedEvent.type, (e) => {
    logTrouble('screen', (e as ScreenFailedEvent).error);
    shell.showFailure();
  });
  addEventListener('error', (e) => logTrouble('page', e.error ?? e.message));
  addEventListener('unhandledrejection', (e) => logTrouble('promise', e.reason));

  // Asked for first: the database opens while the modules are read.
  const opening = openStorage({
    onBlocked: () => shell.showWaiting(),
    onClosed: () => shell.showClosed(),
    // At a start there is no app yet, and it asks by itself.
    onRestored: (restored) => void taker?.sayRestored(restored),
  });
  void globalThis.lathesideAsked?.then(() => Shell.makeReady());
  setMark((1.5).toLocaleString().includes(',') ? ',' : '.');
  const opened = opening.then(async (storage) => {
    if (storage.trouble) logTrouble('storage', storage.trouble);
    const app = new App(storage);
    taker = app;
    if (figures) app.addFigures(figures);
    const [kept] = await Promise.all([app.lastPlace(), app.load()]);
    // An address asked for counts more than where the app was.
    if (!deep && kept && kept !== location.hash) {
      // Nobody follows the address yet: going there would be told to the frame just when it is drawn.
      if (shell.isConnected) location.replace(kept);
      else history.replaceState(null, '', kept);
    }
    dress(app);
    const cut = followCut(app);
    const place = followPlace();
    app.subscribe(() => dress(app));
    app.subscribe(cut);
    addEventListener('hashchange', place);
    cut();
    place();
    shell.app = app;
    return app;
  });
  // The door stands meanwhile. Most often everything is there in a moment, and the frame is drawn once.
  await Promise.race([opened, pause(AT_ONCE)]);
  document.body.append(shell);
  performance.mark('latheside:shell');

  const app = await opened;
  const glanced = await shell.glanced();
  if (glanced) await usable();
  goOn();
  await shell.shown();
  if (!glanced) await usable();
  // Before anything else: what is saved from now on waits for it.
  app.storage.openMirror().catch((e: unknown) => logTrouble('storage', e));
  await Promise.all([app.loadRest(), followRun(app)]);
  const updates = import('./device/updates');
  await Promise.all([load(), app.machines.loaded || app.machines.load(), app.own.load(), app.runs.load()]);
  warmInSlices((await import('./core/thread/search')).warmSearch);
  const { watchUpdates } = await updates;
  shell.updates = watchUpdates({
    save: () => app.saveAgain(),
    onStatus: (status) => {
      shell.offline = status;
    },
  });
  // Last: filling a copy may take a while, and nothing waits for it.
  await followCopy(app);
  if (navigator.onLine) await (await import('./state/shelf')).shelfOf(app).refresh();
};

start().catch((e: unknown) => {
  logTrouble('start', e);
  throw e;
});
