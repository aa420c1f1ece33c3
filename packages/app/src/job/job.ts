import type { Article, Hide, Layout, OrderFile } from '@hidebound/leather';
import type { Told } from '../words/told.js';

/** All files of one job, by their path within its folder ("patterns/front.svg"). Plain data that nobody changes. */
export interface Job {
  readonly name: string;
  readonly files: ReadonlyMap<string, JobFile>;
}

/** A file with its content read. What can't be read is kept as it is, and never written over. */
export type JobFile =
  | { readonly kind: 'hide'; readonly hide: Hide }
  | { readonly kind: 'order'; readonly order: OrderFile }
  | { readonly kind: 'article'; readonly article: Article }
  | { readonly kind: 'layout'; readonly layout: Layout }
  /** Texts that the app hands on as they are: the workshop's values, hints, the stock's journal. */
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'pattern'; readonly bytes: Uint8Array }
  | { readonly kind: 'picture'; readonly bytes: Uint8Array }
  | ({ readonly kind: 'unread'; readonly bytes: Uint8Array } & Told);

export type FileOf<K extends JobFile['kind']> = Extract<JobFile, { kind: K }>;

/** What becomes of files: new content, or undefined for one that is taken away. */
export type Edits = ReadonlyMap<string, JobFile | undefined>;

export const NO_FILES: Job = { name: '', files: new Map() };

export function withEdits(job: Job, edits: Edits): Job {
  const files = new Map(job.files);
  for (const [path, file] of edits) {
    if (file === undefined) files.delete(path);
    else files.set(path, file);
  }
  return { ...job, files };
}

/** Files of one kind with their paths, in the order of their paths. */
export function filesOfKind<K extends JobFile['kind']>(
  { files }: Job,
  kind: K,
): readonly (readonly [string, FileOf<K>])[] {
  return [...files]
    .filter((entry): entry is [string, FileOf<K>] => entry[1].kind === kind)
    .sort(([one], [other]) => (one < other ? -1 : 1));
}

/** The hide at a path; undefined where there is none. */
export function hideAt({ files }: Job, path: string | undefined): Hide | undefined {
  const file = path === undefined ? undefined : files.get(path);
  return file?.kind === 'hide' ? file.hide : undefined;
}

export function orderAt({ files }: Job, path: string | undefined): OrderFile | undefined {
  const file = path === undefined ? undefined : files.get(path);
  return file?.kind === 'order' ? file.order : undefined;
}

export function layoutAt({ files }: Job, path: string | undefined): Layout | undefined {
  const file = path === undefined ? undefined : files.get(path);
  return file?.kind === 'layout' ? file.layout : undefined;
}

/** "front", "front-2", "front-3": the first path that no file has. */
export function freePath({ files }: Job, stem: string, ending: string): string {
  for (let number = 1; ; number++) {
    const path = `${stem}${number === 1 ? '' : `-${number}`}${ending}`;
    if (!files.has(path)) return path;
  }
}

/** A path that a file names, seen from the folder of that file: "../a.svg" beside "x/y.yaml" is "a.svg". */
export function pathBeside(file: string, named: string): string {
  const steps = file.split('/').slice(0, -1);
  for (const step of named.split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '.' && step !== '') steps.push(step);
  }
  return steps.join('/');
}
