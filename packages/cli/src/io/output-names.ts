import { extname } from 'node:path';
import { CliError } from '../cli-error.js';

/** A file must not be named as what it is not. Fails with a CliError `bad-use`. */
export function refuseExtension(
  option: string,
  path: string | undefined,
  wrong: string,
  right: string,
): void {
  if (path === undefined || extname(path).toLowerCase() !== wrong) return;
  throw new CliError(
    'bad-use',
    `${option} ${path} would not be what its name says; let the name end in ${right}.`,
  );
}

/** "sheet.svg" as it is if there is one, "sheet.NAME.svg" where there are several. */
export function nameOneOf(path: string, names: readonly string[], index: number): string {
  if (names.length === 1) return path;
  const extension = extname(path);
  return `${path.slice(0, path.length - extension.length)}.${names[index]!}${extension}`;
}

/** A name as a part of a file name. */
export function fileWord(name: string): string {
  return name.replace(/[^\p{L}\p{N}._-]+/gu, '-');
}
