import type { MakeTasks } from './make-tasks.js';
import { drawSheet } from './making/draw-sheet.js';
import { saveSheet } from './making/save-sheet.js';
import { serveTasks } from './serve-tasks.js';

serveTasks<MakeTasks>({
  draw: (wish) => drawSheet(wish),
  save: (wish) => saveSheet(wish),
});
