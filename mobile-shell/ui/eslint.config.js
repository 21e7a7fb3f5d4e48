// What is looked for beyond the compiler: promises that nobody waits for, types that were given up, and what Svelte warns of.
import svelte from 'eslint-plugin-svelte';
import { defineConfig, globalIgnores } from 'eslint/config';
import typescript from 'typescript-eslint';
import settings from './svelte.config.js';

export default defineConfig(
  globalIgnores(['dist', 'public', 'node_modules']),
  typescript.configs.recommendedTypeChecked,
  svelte.configs.recommended,
  {
    languageOptions: {
      parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname, extraFileExtensions: ['.svelte'] },
    },
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      // Maps, sets and addresses are made anew whenever what they come from changes; none is changed after it was handed over.
      'svelte/prefer-svelte-reactivity': 'off',
      // A space at the edge of an element is written as a string, or it would be lost.
      'svelte/no-useless-mustaches': 'off',
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: typescript.parser, svelteConfig: settings } },
  },
  {
    // To this parser a component is of no known type, and so is what it hands over. `svelte-check` reads them in full.
    files: ['**/*.svelte'],
    rules: {
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
    },
  },
  {
    files: ['**/*.js'],
    extends: [typescript.configs.disableTypeChecked],
  },
);
