import { readPattern } from '@hidebound/intake';
import type { PatternRead } from '@hidebound/intake';
import { leatherError } from '@hidebound/leather';
import type { JobFile } from '../../job/job.js';
import type { OrderInput, ReadPatternFile } from '../desk/read-order.js';
import type { BoardInput, KnownPattern } from '../patterns-tasks.js';

/** Patterns that the worker was given, and what it read of them. */
export interface KeptPatterns {
  bytesOf(pattern: KnownPattern): Uint8Array;
  /** The input with its patterns among its files. */
  withPatterns(input: BoardInput): OrderInput;
  /** Reads the same content the same way once only. */
  readonly read: ReadPatternFile;
}

export function keptPatterns(): KeptPatterns {
  const given = new Map<number, Uint8Array>();
  const reads = new WeakMap<Uint8Array, Map<string, Promise<PatternRead>>>();
  const bytesOf = ({ path, number, bytes }: KnownPattern): Uint8Array => {
    if (bytes !== undefined) given.set(number, bytes);
    const known = given.get(number);
    if (known === undefined) throw leatherError('missing-file', { file: path });
    return known;
  };
  return {
    bytesOf,
    withPatterns: ({ path, files, patterns }) => {
      const all = new Map<string, JobFile>(files);
      for (const pattern of patterns) all.set(pattern.path, { kind: 'pattern', bytes: bytesOf(pattern) });
      return { path, files: all };
    },
    read: (bytes, options) => {
      const known = reads.get(bytes) ?? new Map<string, Promise<PatternRead>>();
      reads.set(bytes, known);
      const key = JSON.stringify(options);
      const read = known.get(key) ?? readPattern(bytes, options);
      known.set(key, read);
      return read;
    },
  };
}
