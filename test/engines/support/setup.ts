import { rmSync } from 'node:fs';
import type { TestProject } from 'vitest/node';
import { build } from '../../browser/support/builds';
import builtApp from '../../browser/support/setup';

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of a newer build of the same source, for the journey of an update. */
    newer: string;
  }
}

/** Before any journey: the app is there, and a newer one. */
export default async function setup(project: TestProject): Promise<() => void> {
  builtApp();
  const newer = await build({ version: '9.9.9' });
  project.provide('newer', newer);
  return () => rmSync(newer, { recursive: true, force: true });
}
