export * from './half-nut';
