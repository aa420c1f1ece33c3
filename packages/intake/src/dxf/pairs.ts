import { IntakeError } from '../error.js';

/**
 * The pairs of a DXF in text form: a group code on one line, its value on the next. They are kept as numbers into the
 * file's own bytes, not as objects: a file of 20 MB has two million of them.
 */
export interface Pairs {
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly count: number;
  readonly codes: Int16Array;
  /** Where each value starts and ends among the bytes; spaces at its end left out. */
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** The file ends with 0 / EOF. */
  readonly hasEnd: boolean;
}

/** Group codes reach from -5 to 1071 (DXF reference, "Group Codes in Numerical Order"). */
const LOWEST_CODE = -5;
const HIGHEST_CODE = 1071;

/** A stray value is quoted in the refusal up to this length. */
const QUOTED_CHARACTERS = 20;

const LF = 0x0a;
const CR = 0x0d;
const MINUS = 0x2d;
const ZERO = 0x30;
const NINE = 0x39;

/** Line of the file, from 1, on which the group code of a pair stands. */
export function lineOf(pair: number): number {
  return 2 * pair + 1;
}

/** Splits a file into pairs up to 0 / EOF. Throws `dxf-bad-pair`, `dxf-truncated`. */
export function scanPairs(bytes: Uint8Array, file: string): Pairs {
  const most = (countLines(bytes) >> 1) + 1;
  const codes = new Int16Array(most);
  const starts = new Int32Array(most);
  const ends = new Int32Array(most);
  let at = startsWithMark(bytes) ? 3 : 0;
  let count = 0;
  let hasEnd = false;
  while (at < bytes.length && !hasEnd) {
    const lineEnd = endOfLine(bytes, at);
    const code = readCode(bytes, at, lineEnd);
    if (code === undefined) {
      if (isBlank(bytes, at, bytes.length)) break;
      refusePair(bytes, at, lineEnd, count, file);
    }
    const start = afterLineEnd(bytes, lineEnd);
    if (start >= bytes.length && lineEnd === bytes.length) {
      throw new IntakeError('dxf-truncated', {}, { file, line: lineOf(count) });
    }
    const end = endOfLine(bytes, start);
    codes[count] = code!;
    starts[count] = start;
    ends[count] = trimEnd(bytes, start, end);
    hasEnd = code === 0 && isEof(bytes, start, ends[count]!);
    if (!hasEnd) count++;
    at = afterLineEnd(bytes, end);
  }
  return { file, bytes, count, codes, starts, ends, hasEnd };
}

function startsWithMark(bytes: Uint8Array): boolean {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
}

/** Lines end with LF, CR LF or CR. */
function countLines(bytes: Uint8Array): number {
  let lines = 1;
  for (let i = 0; i < bytes.length; i++) {
    const byte = bytes[i];
    if (byte === LF || (byte === CR && bytes[i + 1] !== LF)) lines++;
  }
  return lines;
}

function endOfLine(bytes: Uint8Array, from: number): number {
  let i = from;
  while (i < bytes.length && bytes[i] !== LF && bytes[i] !== CR) i++;
  return i;
}

function afterLineEnd(bytes: Uint8Array, end: number): number {
  return bytes[end] === CR && bytes[end + 1] === LF ? end + 2 : end + 1;
}

function trimEnd(bytes: Uint8Array, start: number, end: number): number {
  let i = end;
  while (i > start && isSpace(bytes[i - 1]!)) i--;
  return i;
}

function isSpace(byte: number): boolean {
  return byte === 0x20 || byte === 0x09;
}

/** The whole number between two places, spaces around it; nothing if it is none or no group code. */
function readCode(bytes: Uint8Array, from: number, to: number): number | undefined {
  let i = from;
  while (i < to && isSpace(bytes[i]!)) i++;
  const isNegative = bytes[i] === MINUS;
  if (isNegative) i++;
  const first = i;
  let n = 0;
  while (i < to && bytes[i]! >= ZERO && bytes[i]! <= NINE && n <= HIGHEST_CODE)
    n = n * 10 + bytes[i++]! - ZERO;
  if (i === first) return undefined;
  while (i < to && isSpace(bytes[i]!)) i++;
  const code = isNegative ? -n : n;
  return i === to && code >= LOWEST_CODE && code <= HIGHEST_CODE ? code : undefined;
}

function isBlank(bytes: Uint8Array, from: number, to: number): boolean {
  for (let i = from; i < to; i++) {
    const byte = bytes[i]!;
    // Substitute and zero: what some programs write after the last line.
    if (!isSpace(byte) && byte !== LF && byte !== CR && byte !== 0x1a && byte !== 0) return false;
  }
  return true;
}

function isEof(bytes: Uint8Array, start: number, end: number): boolean {
  return end - start === 3 && bytes[start] === 0x45 && bytes[start + 1] === 0x4f && bytes[start + 2] === 0x46;
}

function refusePair(bytes: Uint8Array, from: number, to: number, pair: number, file: string): never {
  const shown = bytes.subarray(from, Math.min(to, from + QUOTED_CHARACTERS));
  const text = String.fromCharCode(...shown).replace(/[^ -~]/g, '?');
  // The last line of a file that was cut off is often half a group code or a stray value.
  if (to === bytes.length) throw new IntakeError('dxf-truncated', {}, { file, line: lineOf(pair) });
  throw new IntakeError('dxf-bad-pair', { text }, { file, line: lineOf(pair) });
}
