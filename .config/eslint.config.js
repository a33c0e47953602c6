import js from '@eslint/js';
import prettier from 'eslint-config-prettier';
import tseslint from 'typescript-eslint';

/** Folders each layer may not import: dependencies point inward (see DEVELOPERS.md, "The map"). */
const inward = (files, forbidden) => ({
  files,
  rules: {
    'no-restricted-imports': [
      'error',
      {
        patterns: forbidden.map((group) => ({
          group: [group],
          message: 'Dependencies point inward.',
        })),
      },
    ],
  },
});

export default tseslint.config(
  { ignores: ['dist/', 'maps/', 'node_modules/'] },
  js.configs.recommended,
  ...tseslint.configs.strict,
  ...tseslint.configs.stylistic,
  {
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/unified-signatures': 'off',
      eqeqeq: 'error',
      'no-console': 'error',
    },
  },
  {
    files: ['src/domain/**', 'src/workbook/**', 'functions/**'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...[
          'window',
          'document',
          'fetch',
          'localStorage',
          'setTimeout',
          'setInterval',
          'process',
        ].map((name) => ({
          name,
          message: 'The core knows no host.',
        })),
      ],
    },
  },
  {
    files: ['src/domain/**', 'src/workbook/**'],
    rules: {
      'no-restricted-syntax': [
        'error',
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: 'The date is passed in.',
        },
        {
          selector: "MemberExpression[object.name='Date'][property.name='now']",
          message: 'The date is passed in.',
        },
        {
          selector: "MemberExpression[object.name='Math'][property.name='random']",
          message: 'Chance is passed in.',
        },
      ],
    },
  },
  inward(
    ['src/domain/**'],
    [
      '**/workbook/**',
      '**/hosts/**',
      '**/functions/**',
      '**/taskpane/**',
      'lit',
      '@fluentui/*',
      '@univerjs/*',
      'node:*',
    ],
  ),
  inward(
    ['src/workbook/**'],
    [
      '**/hosts/**',
      '**/functions/**',
      '**/taskpane/**',
      'lit',
      '@fluentui/*',
      '@univerjs/*',
      'node:*',
    ],
  ),
  inward(
    ['functions/**'],
    ['**/hosts/**', '**/taskpane/**', 'lit', '@fluentui/*', '@univerjs/*', 'node:*'],
  ),
  inward(['taskpane/**'], ['**/hosts/**', '@univerjs/*', 'node:*']),
  // Among the hosts: xlsx ← files, starter ← excel, workbench, and these two know nothing of each other.
  inward(
    ['src/hosts/xlsx/**'],
    ['**/functions/**', '**/taskpane/**', '**/files/**', '**/excel/**', '**/workbench/**'],
  ),
  inward(
    ['src/hosts/files/**'],
    ['**/functions/**', '**/taskpane/**', '**/excel/**', '**/workbench/**', 'node:*'],
  ),
  inward(
    ['src/hosts/starter/**'],
    ['**/taskpane/**', '**/files/**', '**/excel/**', '**/workbench/**', 'node:*'],
  ),
  inward(['src/hosts/excel/**'], ['**/workbench/**', '@univerjs/*', 'node:*']),
  inward(['src/hosts/workbench/**'], ['**/excel/**']),
  {
    files: ['webpack.config.js', '.config/**', 'tests/bench/**'],
    languageOptions: {
      globals: {
        process: 'readonly',
        URL: 'readonly',
        console: 'readonly',
        performance: 'readonly',
      },
    },
  },
  {
    files: ['src/hosts/workbench/server/**', 'src/build/**', 'tests/**', '.config/**'],
    rules: { 'no-console': 'off' },
  },
  {
    // The metadata generator reads parameter types and knows `any`, not `unknown`; arguments.ts checks each.
    files: ['functions/*.ts'],
    rules: { '@typescript-eslint/no-explicit-any': 'off' },
  },
  prettier,
);
