import type { App } from '../../app/app.js';
import type { JobFile } from '../../job/job.js';
import type { OrderRead } from '../../work/desk-tasks.js';

interface Kept {
  readonly path: string;
  readonly files: ReadonlyMap<string, JobFile>;
  readonly read: Promise<OrderRead>;
}

const kept = new WeakMap<App, Kept>();
const KINDS: readonly JobFile['kind'][] = ['order', 'article', 'pattern', 'text'];

/** The order in front with its pieces; read anew only where something that it names has changed. */
export function readOrderInFront(app: App): Promise<OrderRead> | undefined {
  const { order: path } = app.place.get();
  if (path === undefined) return undefined;
  const files = new Map([...app.job.get().files].filter(([, { kind }]) => KINDS.includes(kind)));
  const known = kept.get(app);
  if (known?.path === path && isSame(known.files, files)) return known.read;
  const read = app.desk.ask('readOrder', { path, files });
  kept.set(app, { path, files, read });
  return read;
}

function isSame(one: ReadonlyMap<string, JobFile>, other: ReadonlyMap<string, JobFile>): boolean {
  return one.size === other.size && [...one].every(([path, file]) => other.get(path) === file);
}
