import js from '@eslint/js';
import tseslint from 'typescript-eslint';

/** A member may type "constructor": a table looked up by words is a Map, or a record whose keys are known. */
const NO_WORD_RECORDS = {
  selector:
    ':matches(Program, ExportNamedDeclaration) > VariableDeclaration > VariableDeclarator > Identifier.id ' +
    "TSTypeReference[typeName.name='Record'] > TSTypeParameterInstantiation > TSStringKeyword:first-child",
  message: 'A table looked up by words is a Map (tableOf in bot/ground): a record answers "constructor" too.',
};

/** A function gives what was asked for, or a record whose `problem` is a code: one shape, told by one function. */
const ONE_FAILURE = [
  {
    selector: 'TSPropertySignature[key.name=/^(ok|fault|failure|trouble|refused)$/] > TSTypeAnnotation TSLiteralType',
    message: 'A failure is told by its `problem`, a code (bot/ground/problem.ts); what worked carries no mark.',
  },
  {
    selector: "BinaryExpression[operator='in'][left.value=/^(problem|fault|failure|trouble|refused|error)$/]",
    message: 'isProblem of bot/ground/problem.ts tells a failure from a value.',
  },
];

/** What holds in every room that members' words pass through. */
const SHAPES = [NO_WORD_RECORDS, ...ONE_FAILURE];

// Dependencies point one way: platforms → commands → (triage, pointing, catalogue, sky, reply, store).
const pure = (folder) => ({
  files: [`bot/${folder}/**/*.ts`],
  rules: {
    'no-restricted-imports': [
      'error',
      {
        patterns: [
          {
            regex: '^node:',
            message: `bot/${folder} is pure: no file, network or process.`,
          },
        ],
      },
    ],
    'no-restricted-globals': ['error', 'setTimeout', 'setInterval', 'fetch', 'process', 'console'],
    'no-restricted-syntax': [
      'error',
      ...SHAPES,
      {
        selector: "CallExpression[callee.object.name='Date'][callee.property.name='now']",
        message: 'Time is a parameter here.',
      },
      { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: 'Time is a parameter here.' },
      {
        selector: "CallExpression[callee.object.name='Math'][callee.property.name='random']",
        message: 'Results are deterministic here.',
      },
    ],
  },
});

/** What a reader can hold in the head. A file longer than this says why in an eslint-disable at its head. */
const LIMITS = {
  complexity: ['error', 15],
  'max-params': ['error', 5],
  'max-lines': ['error', { max: 300, skipBlankLines: false, skipComments: false }],
  'max-depth': ['error', 4],
  'no-nested-ternary': 'error',
};

/** The files that still break a limit, and which. This table only shrinks. */
const NOT_YET = {
  'test/bench-of-faults/chain.ts': ['complexity'],
  'test/bench-of-faults/links/contrasts.ts': ['complexity'],
  'test/evening/panel.test.ts': ['max-lines'],
  'test/fuzz/values.test.ts': ['max-lines'],
  'test/homeserver/conversation.test.ts': ['max-lines'],
  'test/homeserver/encrypted.test.ts': ['max-lines'],
  'test/pointing/astray.test.ts': ['max-lines'],
  'test/pointing/pointing-commands.test.ts': ['max-lines'],
  'test/store/store-suite.ts': ['max-lines'],
  'test/store/worker-bench.ts': ['complexity'],
};

const limited = [
  { files: ['{bot,scripts,test}/**/*.{ts,mjs}'], rules: LIMITS },
  ...Object.entries(NOT_YET).map(([file, rules]) => ({
    files: [file],
    rules: Object.fromEntries(rules.map((rule) => [rule, 'off'])),
  })),
];

// A command that reads a member's own rows does it through asking/, which tells the request whose they are.
const marked = {
  files: ['bot/**/*.ts'],
  ignores: ['bot/commands/asking/**'],
  rules: {
    'no-restricted-syntax': [
      'error',
      ...SHAPES,
      {
        selector: "MemberExpression[property.name='unmarked']",
        message: "Only bot/commands/asking reads the store without marking the answer as the asker's.",
      },
    ],
  },
};

export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', 'coverage/', 'data/', 'charts/', '.cache/'] },
  js.configs.recommended,
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: {
      parserOptions: {
        projectService: {
          allowDefaultProject: [
            '*.js',
            '*.mjs',
            'bot/platforms/browser/page/*.js',
            'vitest.config.ts',
            'vitest.homeserver.config.ts',
          ],
        },
        tsconfigRootDir: import.meta.dirname,
      },
    },
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/require-await': 'off',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      'func-style': ['error', 'expression'],
      'no-restricted-exports': ['error', { restrictDefaultExports: { direct: true } }],
    },
  },
  ...limited,
  { files: ['bot/commands/asking/**'], rules: { 'no-restricted-syntax': ['error', ...SHAPES] } },
  { files: ['scripts/**/*.ts'], rules: { 'no-restricted-syntax': ['error', ...ONE_FAILURE] } },
  marked,
  pure('sky'),
  pure('pointing'),
  { files: ['**/*.js', '**/*.mjs', '*.config.ts'], ...tseslint.configs.disableTypeChecked },
  { files: ['*.config.ts', '*.config.js'], rules: { 'no-restricted-exports': 'off' } },
  {
    files: ['bot/platforms/browser/page/*.js'],
    languageOptions: {
      globals: { document: 'readonly', fetch: 'readonly', EventSource: 'readonly', FormData: 'readonly' },
    },
  },
  {
    files: ['**/*.mjs', '*.js'],
    languageOptions: { globals: { process: 'readonly', console: 'readonly', URL: 'readonly' } },
  },
);
