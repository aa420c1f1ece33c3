import { defineConfig } from 'vitest/config';

const resolve = { conditions: ['source'] };
const ssr = { resolve: { conditions: ['source'] } };
// As Node itself does it: a library that has a `then` of its own (the vision library) would else be awaited without end.
const deps = { interopDefault: false };

export default defineConfig({
  test: {
    projects: [
      {
        resolve,
        ssr,
        test: {
          deps,
          name: 'unit',
          include: ['packages/*/src/**/*.test.ts'],
          testTimeout: 120_000,
          // Modules hold no state, so units share them: loading them anew for each file takes as long as the tests.
          // A test that replaces a module (vi.mock) would reach the others, so it belongs with the end-to-end tests.
          isolate: false,
        },
      },
      {
        resolve,
        ssr,
        test: {
          deps,
          name: 'e2e',
          include: ['tests/**/*.test.ts'],
          testTimeout: 240_000,
          hookTimeout: 240_000,
        },
      },
    ],
  },
});
