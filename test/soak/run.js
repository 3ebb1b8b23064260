import { runnerImport } from 'vite';
const { module } = await runnerImport('./test/soak/soak.ts', { configFile: false, logLevel: 'error' });
await module.soak(
  process.env.LATHESIDE_DIST ?? 'dist',
  Number(process.argv[2] ?? 6),
  Number(process.argv[3] ?? 1),
);
process.exit();
