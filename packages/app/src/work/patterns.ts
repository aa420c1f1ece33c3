import type { FileOf } from '../job/job.js';
import type { KnownPattern, PatternTasks } from './patterns-tasks.js';
import { remote } from './remote.js';
import type { Remote } from './remote.js';

/** The worker that reads patterns, with what it was given already. */
export interface PatternDesk extends Remote<PatternTasks> {
  known(path: string, file: FileOf<'pattern'>): KnownPattern;
}

export function openPatterns(): PatternDesk {
  const desk = remote<PatternTasks>(
    () => new Worker(new URL('./patterns-worker.ts', import.meta.url), { type: 'module', name: 'patterns' }),
  );
  let numbers = new WeakMap<Uint8Array, number>();
  let last = 0;
  const forget = (): void => {
    numbers = new WeakMap();
  };
  return {
    ask: (task, input, options) =>
      desk.ask(task, input, options).catch((error: unknown) => {
        // The worker may have ended, and a new one knows nothing.
        forget();
        throw error;
      }),
    end: () => {
      forget();
      desk.end();
    },
    known: (path, { bytes }) => {
      const number = numbers.get(bytes);
      if (number !== undefined) return { path, number };
      last += 1;
      numbers.set(bytes, last);
      return { path, number: last, bytes };
    },
  };
}
