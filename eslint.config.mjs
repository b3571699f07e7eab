/**
 * Lint rules. The first part keeps the folders apart as DEVELOPERS.md draws them; the rest is common care.
 * Run with `npm run lint`.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import js from '@eslint/js';
import jsdoc from 'eslint-plugin-jsdoc';
import officeAddins from 'eslint-plugin-office-addins';
import tseslint from 'typescript-eslint';

const root = path.dirname(fileURLToPath(import.meta.url));
const functionsFolder = path.join(root, 'src', 'functions');

/** Excel's metadata tool takes `any` for arguments that may be of every kind, and nothing else. */
const cellFunctionFiles = readdirSync(functionsFolder)
  .filter((name) => name.endsWith('.ts') && readFileSync(path.join(functionsFolder, name), 'utf8').includes('@customfunction'))
  .map((name) => `src/functions/${name}`);

/** Refuses imports by pattern, each with its reason. */
const noImports = (...patterns) => ({ 'no-restricted-imports': ['error', { patterns }] });
const noGlobals = (message, names) => ({ 'no-restricted-globals': ['error', ...names.map((name) => ({ name, message }))] });

const PAGE = ['window', 'document', 'navigator', 'location', 'history', 'localStorage', 'sessionStorage', 'fetch', 'alert', 'HTMLElement', 'Element', 'Node'];
const OFFICE = ['Office', 'Excel', 'OfficeExtension', 'CustomFunctions'];

const METROLOGY = 'metrology is numbers in, numbers out: it imports itself, @stdlib and ml-*, so that it can be checked and reused without a spreadsheet.';

const folders = [
  {
    files: ['src/metrology/**/*.ts'],
    rules: {
      ...noImports({ regex: '^(?!\\./|@stdlib/|ml-)', message: METROLOGY }),
      ...noGlobals('metrology knows no page and no Office: it must run anywhere.', [...PAGE, ...OFFICE]),
    },
  },
  {
    // One folder down, `../` is still metrology.
    files: ['src/metrology/*/*.ts'],
    rules: noImports({ regex: '^(?!\\./|\\.\\./[^./]|@stdlib/|ml-)', message: METROLOGY }),
  },
  {
    files: ['src/functions/**/*.ts'],
    rules: {
      ...noImports({
        regex: '(^|/)(hosts|taskpane|workbench|worksheets)(/|$)',
        message: 'functions turn cells into numbers and back; every host calls them, so they know none.',
      }),
      ...noGlobals('functions know no page: they also run in node, and in Excel before the pane is there.', PAGE),
    },
  },
  {
    files: ['src/worksheets/**/*.ts'],
    rules: {
      ...noImports({
        regex: '(^|/)(hosts|taskpane|workbench)(/|$)',
        message: 'worksheets plan a sheet as plain data; a host writes it. One plan serves Excel, the grid and a file.',
      }),
      ...noGlobals('worksheets plan a sheet as plain data, without a page or Office.', [...PAGE, ...OFFICE]),
    },
  },
  {
    files: ['src/review/**/*.ts'],
    rules: {
      ...noImports({
        regex: '(^|/)(metrology|functions|hosts|taskpane|workbench)(/|$)',
        message: 'the review computes by a path of its own: it knows sheets as they are read, and nothing of what the sheets compute with.',
      }),
      ...noGlobals('the review runs beside any host, and in node.', [...PAGE, ...OFFICE]),
    },
  },
  {
    files: ['src/hosts/**/*.ts'],
    rules: noImports({
      regex: '(^|/)(metrology|taskpane|workbench)(/|$)',
      message: 'hosts write plans and call functions; what is computed, and who shows it, is not theirs.',
    }),
  },
  {
    // main.ts of each page puts host and pane together, so it alone names them both.
    files: ['src/taskpane/**/*.ts'],
    ignores: ['src/taskpane/main.ts'],
    rules: {
      ...noImports({
        regex: '(^|/)(hosts/(excel|grid|file)|metrology|workbench)(/|$)',
        message: 'the pane knows hosts by their interface (src/hosts/*.ts) only, so that it works beside Excel and beside the grid.',
      }),
    },
  },
  {
    files: ['src/workbench/**/*.ts'],
    rules: {
      ...noImports({
        regex: '(^|/)hosts/excel(/|$)|^@microsoft/office-js',
        message: 'the workbench runs without Office and without a network.',
      }),
      ...noGlobals('the workbench runs without Office.', OFFICE),
    },
  },
];

/** Every rule of the Office plugin as an error. Its set also brings a formatter, which is not used here. */
const officeRules = Object.fromEntries(Object.keys(officeAddins.rules).map((name) => [`office-addins/${name}`, 'error']));

const NO_MARKUP = 'Text from cells must never become markup: build elements and set textContent.';
const noMarkup = {
  'no-restricted-syntax': [
    'error',
    { selector: 'AssignmentExpression[left.property.name=/^(inner|outer)HTML$/]', message: NO_MARKUP },
    { selector: 'CallExpression[callee.property.name=/^(insertAdjacentHTML|createContextualFragment)$/]', message: NO_MARKUP },
  ],
};

export default tseslint.config(
  { ignores: ['node_modules/', 'dist/', 'build/', 'coverage/'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  js.configs.recommended,
  {
    files: ['**/*.ts'],
    extends: [tseslint.configs.recommended],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: root } },
    rules: {
      eqeqeq: 'error',
      // The two checks that need types and find what nothing else does: a promise whose failure no one would hear of.
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: false }],
    },
  },
  { files: [...cellFunctionFiles, 'src/functions/catalogue.ts'], rules: { '@typescript-eslint/no-explicit-any': 'off' } },
  {
    files: ['src/metrology/**/*.ts', 'src/functions/**/*.ts'],
    plugins: { jsdoc },
    rules: {
      'jsdoc/require-jsdoc': ['error', {
        publicOnly: true,
        enableFixer: false,
        require: { FunctionDeclaration: true, ClassDeclaration: true, ArrowFunctionExpression: true },
      }],
      'jsdoc/require-description': ['error', { contexts: ['FunctionDeclaration', 'ClassDeclaration', 'ArrowFunctionExpression'] }],
    },
  },
  {
    // Tests hold published digits as printed, and read data and bundles whose shape they are about to check.
    files: ['test/**/*.ts'],
    rules: { 'no-loss-of-precision': 'off', '@typescript-eslint/no-explicit-any': 'off', '@typescript-eslint/no-require-imports': 'off' },
  },
  { files: ['src/hosts/excel/**/*.ts', 'src/taskpane/**/*.ts'], plugins: { 'office-addins': officeAddins }, rules: officeRules },
  { files: ['src/**/*.ts'], rules: noMarkup },
  ...folders,
  {
    files: ['**/*.{js,cjs}'],
    languageOptions: { sourceType: 'commonjs', globals: { require: 'readonly', module: 'writable', __dirname: 'readonly' } },
    rules: { '@typescript-eslint/no-require-imports': 'off' },
  },
  {
    files: ['**/*.{js,cjs,mjs}'],
    languageOptions: {
      globals: Object.fromEntries(
        ['process', 'console', 'URL', 'Buffer', 'fetch', 'setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'].map((name) => [name, 'readonly']),
      ),
    },
  },
);
