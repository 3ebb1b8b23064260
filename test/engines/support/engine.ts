import type { Evaluates } from '../../browser/support/evaluates';

export const ENGINES = ['chromium', 'firefox', 'webkit'] as const;
export type EngineName = (typeof ENGINES)[number];

/** CSS pixels of the screen in every engine. */
export const SCREEN = { width: 390, height: 844 } as const;

/** One page of a browser. */
export interface Tab extends Evaluates {
  goto(address: string): Promise<void>;
  reload(): Promise<void>;
  /** Brings it before the others. */
  front(): Promise<void>;
  /** Touches the screen there as the engine's own input does; where it has no touch, the mouse clicks. CSS pixels. */
  tap(x: number, y: number): Promise<void>;
  /** Types into what has the focus. */
  type(text: string): Promise<void>;
  /** Chooses a file where the page asks for one. */
  choose(path: string): Promise<void>;
  /** Presses what makes a file, and gives where that was saved, under its own name. */
  saved(press: () => Promise<void>): Promise<string>;
  shoot(path: string): Promise<void>;
  close(): Promise<void>;
}

/** A browser that began with nothing stored, opened on the app. */
export interface Browser {
  /** The first page; another one after `restart`. */
  readonly page: Tab;
  newTab(address: string): Promise<Tab>;
  /** Ends the process at once (SIGKILL), and opens the address again in the same profile. */
  restart(address: string): Promise<void>;
  /** What the console said that no journey may cause, a line each; empty where the engine tells nothing. */
  readonly problems: readonly string[];
  close(): Promise<void>;
}

export interface Engine {
  readonly name: EngineName;
  open(address: string): Promise<Browser>;
}
