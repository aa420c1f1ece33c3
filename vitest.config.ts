import { defineConfig } from 'vitest/config';

const resolve = { conditions: ['source'] };
const ssr = { resolve: { conditions: ['source'] } };
// As Node itself does it: a library that has a `then` of its own (the vision library) would else be awaited without end.
const deps = { interopDefault: false };

/** Tests that replace a module (vi.mock), which would reach all that share it. */
const APART = ['tests/cli-worker-fails.test.ts', 'tests/cli-unproven.test.ts'];
const wholeCommands = {
  deps,
  testTimeout: 240_000,
  hookTimeout: 240_000,
  // What a page comes to is waited for as long as it takes on a busy machine.
  expect: { poll: { timeout: 30_000 } },
};

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
          // Modules hold no state, so files share them: loading them anew for each file takes as long as the tests.
          isolate: false,
        },
      },
      {
        resolve,
        ssr,
        test: {
          ...wholeCommands,
          name: 'e2e',
          include: ['tests/**/*.test.ts'],
          exclude: APART,
          isolate: false,
        },
      },
      { resolve, ssr, test: { ...wholeCommands, name: 'apart', include: APART } },
    ],
  },
});
