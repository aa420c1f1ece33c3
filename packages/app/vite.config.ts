import { defineConfig } from 'vite';
import { contentPolicy } from './build/content-policy.js';
import { demoJob } from './build/demo-job.js';
import { offlineWorker } from './build/offline-worker.js';
import { visionApart } from './build/vision-apart.js';

const vision = visionApart();

// Relative addresses, so that the same build works at the root of `hidebound table` and in any folder of a web host.
export default defineConfig({
  base: './',
  resolve: { conditions: ['source', 'browser', 'module', 'import', 'default'] },
  plugins: [contentPolicy(), demoJob(), vision.page, offlineWorker()],
  worker: {
    format: 'es',
    plugins: () => [vision.worker()],
    rolldownOptions: { checks: { bundlerTimings: false } },
  },
  build: {
    outDir: 'dist/site',
    emptyOutDir: true,
    target: 'es2022',
    // Inlined assets would be data: addresses, which the content policy allows for pictures only.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 12_000,
    reportCompressedSize: false,
    modulePreload: { polyfill: false },
    rolldownOptions: { checks: { bundlerTimings: false } },
  },
});
