import tseslint from 'typescript-eslint';

/**
 * The layer table: which of our packages each package may import (docs/architecture.md).
 * Type imports count: a type that leaks upwards is a layer that leaks.
 */
const LAYERS = {
  geometry: [],
  leather: ['geometry'],
  intake: ['geometry', 'leather'],
  render: ['geometry', 'leather'],
  cli: ['geometry', 'leather', 'intake', 'render'],
  app: ['geometry', 'leather', 'intake', 'render'],
};
const PACKAGES = Object.keys(LAYERS);
/** Packages that run unchanged in Node and in a browser, and whose results depend on their input alone. */
const CORE = ['geometry', 'leather', 'intake', 'render'];

/** Files of a core package that are its `/node` entry point and may know Node. */
const NODE_ENTRIES = ['packages/*/src/node.ts', 'packages/*/src/node/**/*.ts'];

const NO_CLOCK_NO_DICE = [
  { object: 'Math', property: 'random', message: 'Use the seeded generator of geometry.' },
  { object: 'Date', property: 'now', message: 'Core code has no clock.' },
  { object: 'performance', property: 'now', message: 'Core code has no clock.' },
];

function layerRules() {
  return PACKAGES.map((name) => ({
    files: [`packages/${name}/src/**/*.ts`],
    rules: {
      '@typescript-eslint/no-restricted-imports': ['error', { patterns: layerPatterns(name) }],
    },
  }));
}

function layerPatterns(name) {
  const forbidden = PACKAGES.filter((other) => !LAYERS[name].includes(other));
  const patterns = [
    {
      group: forbidden.flatMap((other) => [
        `@hidebound/${other}`,
        `@hidebound/${other}/*`,
        `**/packages/${other}/**`,
      ]),
      message: `The layer table does not let ${name} import this (docs/architecture.md).`,
    },
  ];
  if (CORE.includes(name)) {
    patterns.push({
      group: ['node:*', 'fs', 'path', 'os', 'crypto', 'worker_threads', 'child_process'],
      message: 'Core packages run in a browser too; what needs Node lives behind a /node entry point.',
    });
  }
  return patterns;
}

export default tseslint.config(
  { ignores: ['**/dist/**', '**/node_modules/**', 'demo-out/**', 'coverage/**'] },
  ...tseslint.configs.recommendedTypeChecked.map((config) => ({ ...config, files: ['**/*.ts'] })),
  {
    files: ['**/*.ts'],
    languageOptions: { parserOptions: { project: './tsconfig.json', tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/restrict-template-expressions': [
        'error',
        { allowNumber: true, allowBoolean: true },
      ],
      '@typescript-eslint/consistent-type-imports': 'error',
      'no-restricted-exports': ['error', { restrictDefaultExports: { direct: true, defaultFrom: true } }],
      'no-restricted-syntax': [
        'error',
        { selector: 'ExportAllDeclaration', message: 'Name what is exported.' },
      ],
      eqeqeq: 'error',
      'prefer-const': 'error',
    },
  },
  {
    files: CORE.map((name) => `packages/${name}/src/**/*.ts`),
    ignores: ['**/*.test.ts', ...NODE_ENTRIES],
    rules: {
      'no-restricted-properties': ['error', ...NO_CLOCK_NO_DICE],
      'no-restricted-syntax': [
        'error',
        { selector: 'ExportAllDeclaration', message: 'Name what is exported.' },
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: 'Core code has no clock.',
        },
      ],
    },
  },
  ...layerRules(),
  {
    // The exact check stands apart from the search: it may share types, constants and robust signs, nothing else.
    files: ['packages/geometry/src/check/**/*.ts'],
    ignores: ['**/*.test.ts'],
    rules: {
      '@typescript-eslint/no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              regex: '^(?!\\./|robust-predicates$|\\.\\./tolerance\\.js$|\\.\\./types/)',
              message: 'The check imports only types, constants and robust predicates.',
            },
          ],
        },
      ],
    },
  },
  {
    files: NODE_ENTRIES,
    rules: { '@typescript-eslint/no-restricted-imports': 'off' },
  },
  {
    files: ['**/*.test.ts', 'tests/**/*.ts'],
    rules: { '@typescript-eslint/no-restricted-imports': 'off' },
  },
  {
    // Search code: engines differ in the last bit of these, so they are kept out (docs/architecture.md, sameness).
    files: ['lane', 'lattice', 'live', 'nest', 'parallel', 'rough', 'separate', 'settle'].map(
      (folder) => `packages/geometry/src/${folder}/**/*.ts`,
    ),
    ignores: ['**/*.test.ts', '**/test-*.ts'],
    rules: {
      'no-restricted-properties': [
        'error',
        ...NO_CLOCK_NO_DICE,
        ...['sin', 'cos', 'tan', 'asin', 'acos', 'atan', 'atan2', 'hypot', 'pow', 'exp', 'log', 'cbrt'].map(
          (property) => ({
            object: 'Math',
            property,
            message: 'Engines differ in its last bit; use the trigonometry of geometry.',
          }),
        ),
      ],
    },
  },
  {
    files: ['vitest.config.ts', 'packages/app/vite.config.ts'],
    rules: { 'no-restricted-exports': 'off' },
  },
);
