import { readBundle, writeBundle } from './desk/bundle.js';
import { readFiles } from './desk/read-files.js';
import { writeFile } from './desk/write-file.js';
import type { DeskTasks } from './desk-tasks.js';
import { serveTasks } from './serve-tasks.js';

serveTasks<DeskTasks>({
  readFiles: (files) => readFiles(files),
  writeFile: ({ file }) => writeFile(file),
  writeBundle: (job) => writeBundle(job),
  readBundle: (file) => readBundle(file),
  // What reads patterns is large, and loads when a pattern is first read.
  readOrder: async (input) => (await import('./desk/read-order.js')).readOrder(input),
});
