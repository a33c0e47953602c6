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

const screens = ['**/taskpane/**', 'lit', '@fluentui/*', '@univerjs/*'];
const outsideTheCore = [
  ...['xlsx', 'starter', 'hosts', 'functions'].map((folder) => `**/${folder}/**`),
  'node:*',
  ...screens,
];

/** Each folder of the domain knows those before it. */
const domainFolders = [
  ...[
    'kernel',
    'batching',
    'money',
    'measure',
    'book',
    'forecast',
    'stock',
    'recipe',
    'cost',
    'sell',
    'accounts',
  ],
  ...['reorder', 'schedule', 'supplies', 'ordering', 'trace', 'now', 'label', 'ledger', 'health'],
];

/** The pane's tasks and looks know nothing of each other. */
const taskFolders = ['pour', 'sell', 'receive', 'count', 'costs', 'reorder', 'now', 'care'];
const outsideThePane = ['**/hosts/**', '**/xlsx/**', '**/starter/**', '@univerjs/*', 'node:*'];

const outsideFunctions = ['**/hosts/**', '**/xlsx/**', '**/starter/**', 'node:*', ...screens];

export default tseslint.config(
  { ignores: ['dist/', 'maps/', 'for-tests/', 'node_modules/'] },
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
    files: ['src/domain/**', 'src/workbook/**', 'src/starter/**', 'functions/**'],
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
    files: ['src/domain/**', 'src/workbook/**', 'src/starter/**'],
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
  ...domainFolders.map((folder, order) =>
    inward(
      [`src/domain/${folder}/**`],
      [
        ...outsideTheCore,
        '**/workbook/**',
        ...domainFolders.slice(order + 1).map((later) => `../${later}/**`),
      ],
    ),
  ),
  inward(['src/workbook/**'], outsideTheCore),
  // Records are plain data; an answer is handed today and its book, so that it rests on what its record says.
  inward(['functions/*.ts'], outsideFunctions),
  inward(['functions/answers/**'], [...outsideFunctions, '**/clock.ts']),
  inward(['functions/records/**'], [...outsideFunctions, '../*.ts', '**/answers/**', '**/src/**']),
  inward(['taskpane/*.ts', 'taskpane/{parts,task}/**'], outsideThePane),
  inward(['taskpane/pictures/**'], [...outsideThePane, '../task/**', '../parts/**']),
  ...taskFolders.map((folder) =>
    inward(
      [`taskpane/${folder}/**`],
      [
        ...outsideThePane,
        ...taskFolders
          .filter((other) => other !== folder)
          .flatMap((other) => [`../${other}/**`, `../../${other}/**`]),
      ],
    ),
  ),
  // Of the functions a file needs to know which of them spill, and nothing else.
  inward(
    ['src/xlsx/**'],
    ['**/hosts/**', '**/starter/**', '**/functions/*.ts', '**/functions/answers/**', ...screens],
  ),
  // The starter is made by the build, and copied by the workbench's server.
  inward(['src/starter/file/**'], ['**/hosts/**', 'node:*', ...screens]),
  inward(
    ['src/starter/*.ts', 'src/starter/{cells,blocks,sheets,demo}/**'],
    ['**/hosts/**', '**/xlsx/**', '**/functions/**', '**/file/**', 'node:*', ...screens],
  ),
  // Among the hosts: files ← excel, workbench ← web, and excel and workbench know nothing of each other.
  inward(
    ['src/hosts/files/**'],
    ['**/functions/**', '**/taskpane/**', '**/excel/**', '**/workbench/**', '**/web/**', 'node:*'],
  ),
  inward(['src/hosts/excel/**'], ['**/workbench/**', '**/web/**', '@univerjs/*', 'node:*']),
  inward(['src/hosts/workbench/**'], ['**/excel/**', '**/web/**']),
  inward(['src/hosts/web/**'], ['**/excel/**', '**/server/**', 'node:*']),
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
  prettier,
);
