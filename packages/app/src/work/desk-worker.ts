import { readBundle, writeBundle } from './desk/bundle.js';
import { readFiles } from './desk/read-files.js';
import { readOrder } from './desk/read-order.js';
import { writeFile } from './desk/write-file.js';
import type { DeskTasks } from './desk-tasks.js';
import { serveTasks } from './serve-tasks.js';

serveTasks<DeskTasks>({
  readFiles: (files) => readFiles(files),
  writeFile: ({ file }) => writeFile(file),
  writeBundle: (job) => writeBundle(job),
  readBundle: (file) => readBundle(file),
  readOrder: (input) => readOrder(input),
});
