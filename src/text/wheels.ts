/** Entering the set, the train mounted, the box, and a motor's curve. */
export const wheelsText = {
  add: 'Add a wheel',
  addLabel: 'Teeth of the wheel',
  takeOut: (z: number): string => `Take out a wheel of ${z}`,
  help: 'Touch a wheel to take one out. Undo brings it back.',
  none: 'No wheels yet.',
  count: (n: number): string => (n === 1 ? '1 wheel' : `${n} wheels`),
  write: 'Or write it',
  writeAlone: 'In this way',
  keep: 'Keep',
  pick: 'Touch wheels in order, from the first shaft on:',
  nextPair: 'Next, beside the last on its stud',
  takeLast: 'Take the last off',
  lever: 'Box lever',
  draft: 'So far',
  noSet: 'Enter the set of wheels first.',
  examples: {
    wheels: '20 25 30×2 35 40',
    train: '40/70/60 20/80',
    box: 'A=1/2 B=1 C=2',
    curve: '0=2.2 300=2 600=1.4',
  },
} as const;
