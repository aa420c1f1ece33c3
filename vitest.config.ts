import { defineConfig } from 'vitest/config';

const resolve = { conditions: ['source'] };
const ssr = { resolve: { conditions: ['source'] } };
/** Modules hold no state, so test files share them: half of the time would go into loading them anew for each. */
const isolate = false;

export default defineConfig({
  test: {
    projects: [
      {
        resolve,
        ssr,
        test: { name: 'unit', include: ['packages/*/src/**/*.test.ts'], testTimeout: 120_000, isolate },
      },
      {
        resolve,
        ssr,
        test: {
          name: 'e2e',
          include: ['tests/**/*.test.ts'],
          testTimeout: 240_000,
          hookTimeout: 240_000,
          isolate,
        },
      },
    ],
  },
});
