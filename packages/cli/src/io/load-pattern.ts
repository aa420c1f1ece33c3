import { readPatternSvg } from '@hidebound/intake';
import type { PatternRead } from '@hidebound/intake';
import type { PatternReading } from '@hidebound/leather';
import { SIZE_LIMIT_MB, readFileLimited } from './read-file.js';

/** Reads one pattern file as its reading says. */
export function loadPattern(path: string, reading: Omit<PatternReading, 'file'>): PatternRead {
  const bytes = readFileLimited(path, SIZE_LIMIT_MB.pattern);
  return readPatternSvg(bytes, { file: path, reading: { ...reading, file: path } });
}
