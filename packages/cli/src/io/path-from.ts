import { relative, resolve, sep } from 'node:path';

/** A path as files hold it: relative, with "/". */
export function pathFrom(folder: string, file: string): string {
  return relative(resolve(folder), file).split(sep).join('/');
}
