import js from '@eslint/js';
import prettier from 'eslint-config-prettier';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import { layers } from './lint/layers.js';
import svelteConfig from './svelte.config.js';

export default ts.config(
  {
    ignores: [
      'build/',
      'build-hub/',
      'data/',
      '.svelte-kit/',
      'node_modules/',
      'test-results/',
      'playwright-report/'
    ]
  },
  js.configs.recommended,
  ...ts.configs.recommended,
  ...svelte.configs.recommended,
  prettier,
  ...svelte.configs.prettier,
  {
    languageOptions: { globals: { ...globals.browser, ...globals.node } },
    plugins: { evencourse: { rules: { layers } } },
    rules: {
      'evencourse/layers': 'error',
      'no-undef': 'off',
      eqeqeq: 'error',
      'no-console': 'error',
      'svelte/no-at-html-tags': 'error',
      'svelte/no-navigation-without-resolve': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }]
    }
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: {
      parserOptions: { parser: ts.parser, extraFileExtensions: ['.svelte'], svelteConfig }
    }
  },
  {
    files: ['src/lib/{engine,journal,job,example}/**/*.ts'],
    ignores: ['**/*.test.ts'],
    rules: {
      'no-restricted-globals': [
        'error',
        { name: 'window', message: 'The engine, the journal and the job run without a browser.' },
        { name: 'document', message: 'The engine, the journal and the job run without a browser.' },
        { name: 'indexedDB', message: 'Storage is the only layer that knows a database.' }
      ],
      'no-restricted-properties': [
        'error',
        {
          object: 'Math',
          property: 'random',
          message: 'Random numbers are an argument: take a Random.'
        },
        { object: 'Date', property: 'now', message: 'The clock is an argument: take the time.' }
      ]
    }
  },
  { files: ['scripts/**', 'seeds/**', 'tests/**'], rules: { 'no-console': 'off' } }
);
