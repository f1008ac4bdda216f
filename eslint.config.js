import js from '@eslint/js';
import tseslint from 'typescript-eslint';

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
      'no-restricted-exports': ['error', { restrictDefaultExports: { direct: true } }],
    },
  },
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
