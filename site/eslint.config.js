import js from '@eslint/js';
import prettier from 'eslint-config-prettier';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

export default ts.config(
  {
    ignores: [
      'dist/',
      'dist-single/',
      'node_modules/',
      'src/generated/',
      'public/wasm_exec.js',
      'tests/browser/',
    ],
  },
  js.configs.recommended,
  ...ts.configs.strict,
  ...svelte.configs.recommended,
  prettier,
  ...svelte.configs.prettier,
  {
    languageOptions: { globals: { ...globals.browser } },
    rules: {
      eqeqeq: 'error',
      'no-console': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser, extraFileExtensions: ['.svelte'], svelteConfig } },
  },
  {
    files: ['*.config.ts', '*.config.js', 'scripts/**', 'vite/**'],
    languageOptions: { globals: { ...globals.node } },
  },
  { files: ['scripts/**'], rules: { 'no-console': 'off' } },
  // One way in: pictures are drawn from values handed to them and never ask the engine or change the job.
  {
    files: ['src/chart/**'],
    rules: {
      'no-restricted-imports': [
        'error',
        { patterns: ['**/engine/*', '**/state/*', '**/form/*', '**/page/*'] },
      ],
    },
  },
  {
    files: ['src/engine/**'],
    rules: {
      'no-restricted-imports': [
        'error',
        { patterns: ['**/state/*', '**/form/*', '**/page/*', '**/chart/*'] },
      ],
    },
  },
);
