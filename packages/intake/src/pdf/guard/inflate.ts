/** What deflated data unpack to. */
export interface Inflated {
  /** Bytes that they unpack to, or more than the limit: then it stopped there. */
  readonly size: number;
  /** The first of these bytes: as many as were asked for. */
  readonly head: Uint8Array;
}

/** True for data that start as zlib data do: method 8, a header that is a multiple of 31, no preset dictionary (RFC 1950). */
export function isZlib(bytes: Uint8Array, at: number): boolean {
  const [method, flags] = [bytes[at], bytes[at + 1]];
  if (method === undefined || flags === undefined) return false;
  return (method & 0x0f) === 8 && (method * 256 + flags) % 31 === 0 && (flags & 0x20) === 0;
}

/**
 * Counts what zlib data unpack to without unpacking more of them than asked for: a match of 258 bytes costs one step,
 * so a bomb is told in the time that its packed bytes take. Stops beyond the limit, at the data's end, or where they are
 * broken. RFC 1951.
 */
export function inflatedSize(bytes: Uint8Array, at: number, limit: number, headBytes = 0): Inflated {
  const run: Run = { bytes, at: at + 2, hold: 0, bits: 0, size: 0, limit, head: new Uint8Array(headBytes) };
  let isLast = false;
  while (!isLast && run.size <= limit) {
    isLast = takeBits(run, 1) === 1;
    if (!inflateBlock(run, takeBits(run, 2))) break;
  }
  return { size: run.size, head: run.head.subarray(0, Math.min(run.size, headBytes)) };
}

interface Run {
  readonly bytes: Uint8Array;
  at: number;
  hold: number;
  bits: number;
  size: number;
  readonly limit: number;
  /** The first bytes, kept as far as its length; matches that reach before what is kept are not followed. */
  readonly head: Uint8Array;
}

/** Bits from the least one on; -1 at the end of the data. */
function takeBits(run: Run, count: number): number {
  while (run.bits < count) {
    if (run.at >= run.bytes.length) return -1;
    run.hold |= run.bytes[run.at++]! << run.bits;
    run.bits += 8;
  }
  const value = run.hold & ((1 << count) - 1);
  run.hold >>>= count;
  run.bits -= count;
  return value;
}

function inflateBlock(run: Run, kind: number): boolean {
  if (kind === 0) return copyStored(run);
  if (kind === 1) return followCodes(run, FIXED_LITERALS, FIXED_DISTANCES);
  if (kind !== 2) return false;
  const codes = readCodes(run);
  return codes !== undefined && followCodes(run, codes.literals, codes.distances);
}

function copyStored(run: Run): boolean {
  run.at -= run.bits >> 3;
  run.hold = run.bits = 0;
  const { bytes, at } = run;
  if (at + 4 > bytes.length) return false;
  const length = bytes[at]! + bytes[at + 1]! * 256;
  if (length !== (~(bytes[at + 2]! + bytes[at + 3]! * 256) & 0xffff)) return false;
  const data = bytes.subarray(at + 4, at + 4 + length);
  const room = run.head.length - run.size;
  if (room > 0) run.head.set(data.subarray(0, room), run.size);
  run.at = at + 4 + length;
  run.size += data.length;
  return data.length === length;
}

/** A canonical Huffman code: how many codes of each length, and their symbols in order. */
interface Code {
  readonly counts: Uint16Array;
  readonly symbols: Uint16Array;
  /** Symbol and length of every short code, by its bits as they come. */
  readonly short: Uint16Array;
}

/** Codes up to this length are looked up; longer ones are rare and followed bit by bit. */
const SHORT_BITS = 9;
const MAX_BITS = 15;

function codeOf(lengths: ArrayLike<number>): Code {
  const counts = new Uint16Array(MAX_BITS + 1);
  for (let i = 0; i < lengths.length; i++) counts[lengths[i]!]!++;
  counts[0] = 0;
  const offsets = new Uint16Array(MAX_BITS + 2);
  const next = new Uint16Array(MAX_BITS + 2);
  for (let bits = 1; bits <= MAX_BITS; bits++) {
    offsets[bits + 1] = offsets[bits]! + counts[bits]!;
    next[bits + 1] = (next[bits]! + counts[bits]!) << 1;
  }
  const symbols = new Uint16Array(lengths.length);
  const short = new Uint16Array(1 << SHORT_BITS);
  for (let symbol = 0; symbol < lengths.length; symbol++) {
    const bits = lengths[symbol]!;
    if (bits === 0) continue;
    symbols[offsets[bits]!++] = symbol;
    if (bits <= SHORT_BITS) fillShort(short, reversed(next[bits]!, bits), bits, symbol);
    next[bits]!++;
  }
  return { counts, symbols, short };
}

function fillShort(short: Uint16Array, code: number, bits: number, symbol: number): void {
  for (let i = code; i < short.length; i += 1 << bits) short[i] = symbol * 16 + bits;
}

function reversed(code: number, bits: number): number {
  let result = 0;
  for (let i = 0; i < bits; i++) result |= ((code >> i) & 1) << (bits - 1 - i);
  return result;
}

/** The next symbol, or -1 at the end of the data or for a code that stands for nothing. */
function takeSymbol(run: Run, { counts, symbols, short }: Code): number {
  while (run.bits < MAX_BITS && run.at < run.bytes.length) {
    run.hold |= run.bytes[run.at++]! << run.bits;
    run.bits += 8;
  }
  const found = short[run.hold & ((1 << SHORT_BITS) - 1)]!;
  if (found !== 0 && (found & 15) <= run.bits) {
    run.hold >>>= found & 15;
    run.bits -= found & 15;
    return found >> 4;
  }
  let code = 0;
  let first = 0;
  let index = 0;
  for (let bits = 1; bits <= Math.min(MAX_BITS, run.bits); bits++) {
    code |= (run.hold >> (bits - 1)) & 1;
    const count = counts[bits]!;
    if (code - first < count) {
      run.hold >>>= bits;
      run.bits -= bits;
      return symbols[index + code - first]!;
    }
    index += count;
    first = (first + count) << 1;
    code <<= 1;
  }
  return -1;
}

const LENGTH_BASE = [
  3, 4, 5, 6, 7, 8, 9, 10, 11, 13, 15, 17, 19, 23, 27, 31, 35, 43, 51, 59, 67, 83, 99, 115, 131, 163, 195,
  227, 258,
];
const LENGTH_BITS = [0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 0];
const DISTANCE_BASE = [
  1, 2, 3, 4, 5, 7, 9, 13, 17, 25, 33, 49, 65, 97, 129, 193, 257, 385, 513, 769, 1025, 1537, 2049, 3073, 4097,
  6145, 8193, 12289, 16385, 24577,
];
const END_OF_BLOCK = 256;

function followCodes(run: Run, literals: Code, distances: Code): boolean {
  while (run.size <= run.limit) {
    const symbol = takeSymbol(run, literals);
    if (symbol < 0) return false;
    if (symbol < END_OF_BLOCK) {
      if (run.size < run.head.length) run.head[run.size] = symbol;
      run.size++;
    } else if (symbol === END_OF_BLOCK) return true;
    else if (!copyMatch(run, symbol - END_OF_BLOCK - 1, distances)) return false;
  }
  return true;
}

function copyMatch(run: Run, lengthCode: number, distances: Code): boolean {
  const base = LENGTH_BASE[lengthCode];
  if (base === undefined) return false;
  const length = base + Math.max(0, takeBits(run, LENGTH_BITS[lengthCode]!));
  const distanceCode = takeSymbol(run, distances);
  const distanceBase = DISTANCE_BASE[distanceCode];
  if (distanceBase === undefined) return false;
  const distance = distanceBase + Math.max(0, takeBits(run, Math.max(0, (distanceCode >> 1) - 1)));
  if (distance > run.size) return false;
  const end = Math.min(run.size + length, run.head.length);
  for (let i = run.size; i < end; i++) run.head[i] = run.head[i - distance]!;
  run.size += length;
  return true;
}

/** Order in which a block gives the lengths of its code of code lengths. */
const LENGTHS_ORDER = [16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15];

function readCodes(run: Run): { readonly literals: Code; readonly distances: Code } | undefined {
  const literalCount = takeBits(run, 5) + 257;
  const distanceCount = takeBits(run, 5) + 1;
  const lengthCount = takeBits(run, 4) + 4;
  const lengthLengths = new Uint8Array(LENGTHS_ORDER.length);
  for (let i = 0; i < lengthCount; i++) lengthLengths[LENGTHS_ORDER[i]!] = Math.max(0, takeBits(run, 3));
  const lengthCode = codeOf(lengthLengths);
  const lengths = new Uint8Array(literalCount + distanceCount);
  for (let i = 0; i < lengths.length;) {
    const symbol = takeSymbol(run, lengthCode);
    if (symbol < 0) return undefined;
    if (symbol < 16) lengths[i++] = symbol;
    else {
      const [bits, least] = REPEATS[symbol - 16]!;
      const value = symbol === 16 ? lengths[i - 1] : 0;
      const count = least + takeBits(run, bits);
      if (value === undefined || i + count > lengths.length) return undefined;
      lengths.fill(value, i, i + count);
      i += count;
    }
  }
  return {
    literals: codeOf(lengths.subarray(0, literalCount)),
    distances: codeOf(lengths.subarray(literalCount)),
  };
}

/** Extra bits and least count of the symbols that repeat a length: the one before, a few zeros, many zeros. */
const REPEATS = [
  [2, 3],
  [3, 3],
  [7, 11],
] as const;

const FIXED_LITERALS = codeOf(
  Array.from({ length: 288 }, (_, i) => (i < 144 ? 8 : i < 256 ? 9 : i < 280 ? 7 : 8)),
);
const FIXED_DISTANCES = codeOf(new Uint8Array(30).fill(5));
