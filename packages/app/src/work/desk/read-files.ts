import { parseArticle, parseHide, parseLayout, parseOrder } from '@hidebound/leather';
import type { JobFile } from '../../job/job.js';
import { kindOfPath } from '../../job/kind-of-path.js';
import { toldError } from '../../words/told.js';
import type { RawFile } from '../desk-tasks.js';

/** Files as the app holds them, by what their names say they are; what is no part of a job is left out. */
export function readFiles(files: readonly RawFile[]): (readonly [string, JobFile])[] {
  return files.flatMap(({ path, bytes }) => {
    const kind = kindOfPath(path);
    return kind === undefined ? [] : [[path, readOne(path, bytes, kind)] as const];
  });
}

function readOne(path: string, bytes: Uint8Array, kind: JobFile['kind']): JobFile {
  try {
    return readAs(path, bytes, kind);
  } catch (error) {
    return { kind: 'unread', bytes, ...toldError(error) };
  }
}

function readAs(path: string, bytes: Uint8Array, kind: JobFile['kind']): JobFile {
  const text = (): string => new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  const named = { file: path };
  switch (kind) {
    case 'hide':
      return { kind, hide: parseHide(text(), named) };
    case 'order':
      return { kind, order: parseOrder(text(), named) };
    case 'article':
      return { kind, article: parseArticle(text(), named) };
    case 'layout':
      return { kind, layout: parseLayout(text(), named) };
    case 'text':
      return { kind, text: text() };
    case 'pattern':
    case 'picture':
      return { kind, bytes };
    case 'unread':
      throw new Error('A file is never unread by its name.');
  }
}
