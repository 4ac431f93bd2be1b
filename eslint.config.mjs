import { defineConfig, globalIgnores } from 'eslint/config';
import regexp from 'eslint-plugin-regexp';
import tseslint from 'typescript-eslint';

export default defineConfig(
  globalIgnores(['dist/', 'out/', 'coverage/', '.hosts/', '.bench/']),
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  { files: ['**/*.mjs'], extends: [tseslint.configs.strict, tseslint.configs.stylistic] },
  {
    // What anybody types, or a file holds, comes to these. They are quick for any text, and no text is ever run.
    files: ['{server,client,grammar}/**/*.{ts,mjs}'],
    plugins: { regexp },
    rules: {
      'regexp/no-super-linear-backtracking': ['error', { report: 'potential' }],
      'regexp/no-super-linear-move': ['error', { report: 'potential' }],
      'no-eval': 'error',
      'no-new-func': 'error',
      'no-script-url': 'error',
    },
  },
  // A token is looked for at one place only: where the one before it ends.
  { files: ['grammar/tokens.ts'], rules: { 'regexp/no-super-linear-move': 'off' } },
  {
    files: ['**/*.ts', '**/*.mts'],
    extends: [tseslint.configs.strictTypeChecked, tseslint.configs.stylisticTypeChecked],
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/dot-notation': ['error', { allowIndexSignaturePropertyAccess: true }],
      // by code points, which is what it is used for here
      '@typescript-eslint/no-misused-spread': ['error', { allow: ['string'] }],
      '@typescript-eslint/no-unnecessary-condition': ['error', { allowConstantLoopConditions: 'only-allowed-literals' }],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      // noUncheckedIndexedAccess makes every index doubtful; a loop over an array knows better
      '@typescript-eslint/no-non-null-assertion': 'off',
      // a place of the model is a class, so that nobody copies it by its members; one that is handed out is plain data
      '@typescript-eslint/no-unsafe-class-instance-assignment': 'off',
    },
  },
);
