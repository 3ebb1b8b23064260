import { join } from 'node:path';
import { defineConfig } from 'eslint/config';
import tseslint from 'typescript-eslint';

/** What would make a calculation depend on where or when it runs. The compiler keeps the DOM out of core as well. */
const IMPURE_GLOBALS = [
  'window',
  'document',
  'navigator',
  'location',
  'localStorage',
  'sessionStorage',
  'indexedDB',
  'caches',
  'fetch',
  'crypto',
  'performance',
  'process',
  'setTimeout',
  'setInterval',
  'queueMicrotask',
  'console',
];

export default defineConfig(
  { ignores: ['dist/', 'coverage/', 'test/bench/out/'] },
  {
    files: ['**/*.ts'],
    extends: [tseslint.configs.recommendedTypeChecked],
    languageOptions: {
      parserOptions: { project: 'tsconfig.json', tsconfigRootDir: join(import.meta.dirname, '..') },
    },
    rules: {
      '@typescript-eslint/no-unused-vars': 'off', // the compiler says it
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/no-confusing-void-expression': 'off',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      'no-eval': 'error',
      'no-implied-eval': 'off', // the typed rule replaces it
      'prefer-const': 'error',
      'no-console': 'error',
      '@typescript-eslint/unbound-method': 'off', // Lit binds the listeners in its templates
    },
  },
  {
    files: ['src/core/**/*.ts'],
    rules: {
      'no-restricted-globals': ['error', ...IMPURE_GLOBALS],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Core gives the same answer every time.' },
        { object: 'Date', property: 'now', message: 'The time is handed in.' },
      ],
      'no-restricted-syntax': [
        'error',
        {
          selector: 'NewExpression[callee.name="Date"][arguments.length=0]',
          message: 'The time is handed in.',
        },
        { selector: 'CallExpression[callee.name="parseFloat"]', message: 'Read numbers with core/quantity.' },
      ],
    },
  },
  {
    files: ['test/**/*.ts'],
    rules: { 'no-console': 'off' },
  },
  {
    files: ['**/*.js'],
    extends: [tseslint.configs.recommended],
    rules: {
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      eqeqeq: ['error', 'always', { null: 'ignore' }],
    },
  },
);
