import { basename, extname } from 'node:path';
import { CliError } from '../cli-error.js';
import type { FileToWrite } from '../io/write-safely.js';
import type { ReadFile } from './read-file.js';

/** All pieces as one pattern drawing; nothing where there is none. Fails with a CliError `bad-use`. */
export async function savedPattern(
  path: string,
  reads: readonly ReadFile[],
): Promise<FileToWrite | undefined> {
  if (extname(path).toLowerCase() !== '.svg') {
    throw new CliError('bad-use', `The pattern ${path} must be named .svg, which is what it is saved as.`);
  }
  refuseNamesTwice(reads);
  const pieces = reads.flatMap(({ read }) => read.pieces);
  if (pieces.length === 0) return undefined;
  const { writePatternSvg } = await import('@hidebound/render');
  return { path, content: writePatternSvg(pieces, { title: basename(path, extname(path)) }) };
}

/** In one drawing each piece has a name of its own, since orders call it by that. */
function refuseNamesTwice(reads: readonly ReadFile[]): void {
  const fileOf = new Map<string, string>();
  for (const { file, read } of reads) {
    for (const { piece } of read.pieces) {
      const other = fileOf.get(piece.name);
      if (other !== undefined && other !== file) {
        throw new CliError(
          'bad-use',
          `Both ${other} and ${file} have a piece "${piece.name}", so they can't be saved as one drawing; save them one by one, or rename it.`,
        );
      }
      fileOf.set(piece.name, file);
    }
  }
}
