/** Names of the pad's sign keys, for those who hear the screen. */
export const padWords = {
  back: 'Correct',
  space: 'Space',
  mark: 'Decimal mark',
  over: 'Over',
  unit: 'Unit',
} as const;
