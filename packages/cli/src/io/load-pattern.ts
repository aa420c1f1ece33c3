import { readPattern } from '@hidebound/intake';
import type { PatternRead } from '@hidebound/intake';
import type { PatternReading } from '@hidebound/leather';
import { refuseOtherKind } from './refuse-other-kind.js';
import { SIZE_LIMIT_MB, readFileLimited } from './read-file.js';

/** Enough to see that a file is no drawing but one of ours. */
const HEAD_BYTES = 4096;

/** Reads one pattern file as its reading says. */
export async function loadPattern(path: string, reading: Omit<PatternReading, 'file'>): Promise<PatternRead> {
  const bytes = readFileLimited(path, SIZE_LIMIT_MB.pattern);
  refuseOtherKind(new TextDecoder().decode(bytes.subarray(0, HEAD_BYTES)), 'pattern', path);
  return readPattern(bytes, { file: path, reading: { ...reading, file: path } });
}
