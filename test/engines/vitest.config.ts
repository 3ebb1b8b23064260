import { defineConfig } from 'vitest/config';

/** `npm run test:engines`; apart from the rest, since `npm test` needs no browser but Chromium. */
export default defineConfig({
  root: import.meta.dirname + '/../..',
  test: {
    name: 'engines',
    environment: 'node',
    include: ['test/engines/*.test.ts'],
    globalSetup: ['test/engines/support/setup.ts'],
    testTimeout: 90_000,
    // As the journeys of test/browser: once more, and the report says so.
    retry: 1,
    fileParallelism: false,
    maxWorkers: 1,
    reporters: ['verbose'],
  },
});
