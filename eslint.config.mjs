import js from '@eslint/js';
import hooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

// Domain folders: pure, and imported by everything. Adapters (store, access, config, cli) are not listed.
const core = [
  'quantity',
  'metrology',
  'fastening',
  'fluids',
  'vehicle',
  'statistics',
  'procedure',
  'job',
  'ledger',
  'people',
  'shop',
  'sound',
  'voice',
  'practice',
  'speaking',
  'kiosk',
  'wall',
  'handover',
  'export',
  'record',
  'timeline',
  'outbox',
  'review',
];

export default tseslint.config(
  {
    ignores: [
      '.next/',
      '.build/',
      'node_modules/',
      'next-env.d.ts',
      'models/recipes/',
      '*.config.mjs',
    ],
  },
  js.configs.recommended,
  ...tseslint.configs.strictTypeChecked.map((config) => ({
    ...config,
    files: ['**/*.ts', '**/*.tsx'],
  })),
  {
    files: ['**/*.ts', '**/*.tsx'],
    languageOptions: {
      parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname },
    },
    plugins: { 'react-hooks': hooks },
    rules: {
      'react-hooks/rules-of-hooks': 'error',
      'react-hooks/exhaustive-deps': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_' },
      ],
    },
  },
  {
    files: core.map((folder) => `lib/${folder}/**/*.ts`),
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              group: [
                'react',
                'react-dom',
                'react/*',
                'next',
                'next/*',
                'kysely',
                'libsql',
                'node:*',
                'fs',
                'path',
              ],
              message: 'Domain code knows no framework, database, browser or operating system.',
            },
            {
              group: [
                '@/app/*',
                '@/components/*',
                '@/lib/store*',
                '@/lib/access*',
                '@/lib/config*',
                '@/lib/cli*',
              ],
              message: 'Dependencies point inward.',
            },
          ],
        },
      ],
      'no-restricted-globals': [
        'error',
        'window',
        'document',
        'navigator',
        'fetch',
        'localStorage',
        'indexedDB',
        'process',
        'performance',
        'setTimeout',
        'setInterval',
      ],
      'no-restricted-syntax': [
        'error',
        {
          selector: "CallExpression[callee.object.name='Date'][callee.property.name='now']",
          message: 'Inject the clock.',
        },
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: 'Inject the clock.',
        },
        {
          selector: "CallExpression[callee.object.name='Math'][callee.property.name='random']",
          message: 'Inject ids and chance.',
        },
      ],
    },
  },
  {
    files: ['lib/cli/*.mjs'],
    languageOptions: { globals: { process: 'readonly', console: 'readonly', URL: 'readonly' } },
  },
);
