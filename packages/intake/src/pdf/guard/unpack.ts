import { inflatedSize, isZlib } from './inflate.js';
import type { Filter } from './filters.js';

/** Bytes unpacked; beyond the limit unpacking stops. */
interface Unpacked {
  readonly bytes: Uint8Array;
  readonly size: number;
}

/** Deflated data within deflated data are followed so deep, also where no filter says so. */
const DEEPEST = 4;

/** Of a stream: how many bytes it unpacks to at its largest, and the last of what it unpacks to, if that was asked for. */
export interface UnpackedStream {
  readonly largest: number;
  readonly bytes: Uint8Array;
}

/** How many bytes a stream unpacks to at its largest; a number above `limit` stands for any above it. */
export function unpackedSize(packed: Uint8Array, filters: readonly Filter[], limit: number): number {
  return unpackStream(packed, filters, limit, false).largest;
}

/**
 * Unpacks a stream by its filters one after the other. What is left is taken for deflated if it looks so, since a
 * dictionary elsewhere may say it. Above the limit it stops.
 */
export function unpackStream(
  packed: Uint8Array,
  filters: readonly Filter[],
  limit: number,
  isWanted: boolean,
): UnpackedStream {
  let bytes = packed;
  let largest = 0;
  const steps: readonly Filter[] = [...filters, ...Array<Filter>(DEEPEST).fill('flate')];
  for (const [i, filter] of steps.entries()) {
    if (filter === 'none') continue;
    if (filter === 'flate' && !isZlib(bytes, 0)) break;
    const isNeeded = isWanted || i + 1 !== filters.length;
    const unpacked = filter === 'flate' ? inflate(bytes, limit, isNeeded) : UNPACKERS[filter](bytes, limit);
    largest = Math.max(largest, unpacked.size);
    bytes = unpacked.bytes;
    if (unpacked.size > limit) break;
  }
  return { largest, bytes };
}

/** Counts first, and unpacks only what another filter needs, or what looks deflated again. */
function inflate(bytes: Uint8Array, limit: number, isNeeded: boolean): Unpacked {
  const { size, head } = inflatedSize(bytes, 0, limit, 2);
  if (size > limit || (!isNeeded && !isZlib(head, 0))) return { bytes: head, size };
  return { bytes: inflatedSize(bytes, 0, limit, size).head, size };
}

const UNPACKERS: Readonly<
  Record<'lzw' | 'base 85' | 'hex' | 'runs', (bytes: Uint8Array, limit: number) => Unpacked>
> = { lzw: unpackLzw, 'base 85': unpackBase85, hex: unpackHex, runs: unpackRuns };

/** ISO 32000-1, section 7.4.3: five letters from "!" on are four bytes, "z" is four zeros, "~" the end. */
function unpackBase85(bytes: Uint8Array): Unpacked {
  const out = newGrowing();
  let group: number[] = [];
  const flush = (count: number) => {
    const value = [...group, 84, 84, 84, 84].slice(0, 5).reduce((sum, digit) => sum * 85 + digit, 0);
    for (let i = 0; i < count; i++) add(out, [Math.floor(value / 256 ** (3 - i)) % 256]);
    group = [];
  };
  for (const byte of bytes) {
    if (byte === 0x7e) break;
    if (byte === 0x7a && group.length === 0) add(out, [0, 0, 0, 0]);
    else if (byte >= 0x21 && byte <= 0x75) {
      group.push(byte - 0x21);
      if (group.length === 5) flush(4);
    }
  }
  if (group.length > 1) flush(group.length - 1);
  return unpackedOf(out);
}

/** ISO 32000-1, section 7.4.2. */
function unpackHex(bytes: Uint8Array): Unpacked {
  const out = newGrowing();
  let high = -1;
  for (const byte of bytes) {
    if (byte === 0x3e) break;
    const digit = parseInt(String.fromCharCode(byte), 16);
    if (Number.isNaN(digit)) continue;
    if (high < 0) high = digit;
    else {
      add(out, [high * 16 + digit]);
      high = -1;
    }
  }
  if (high >= 0) add(out, [high * 16]);
  return unpackedOf(out);
}

/** ISO 32000-1, section 7.4.5: a length, then so many bytes as they are, or one byte so many times. */
function unpackRuns(bytes: Uint8Array, limit: number): Unpacked {
  const out = newGrowing();
  for (let i = 0; i < bytes.length && out.size <= limit;) {
    const length = bytes[i]!;
    if (length === 128) break;
    if (length < 128) add(out, bytes.subarray(i + 1, i + 2 + length));
    else add(out, new Uint8Array(257 - length).fill(bytes[i + 1] ?? 0));
    i += length < 128 ? length + 2 : 2;
  }
  return unpackedOf(out);
}

const LZW_CLEAR = 256;
const LZW_END = 257;
const LZW_MOST_BITS = 12;

/** ISO 32000-1, section 7.4.4, with codes that lengthen one early, as is the default. */
function unpackLzw(bytes: Uint8Array, limit: number): Unpacked {
  const out = newGrowing();
  let table: Uint8Array[] = [];
  let before: Uint8Array | undefined;
  let width = 9;
  let [hold, bits] = [0, 0];
  for (const byte of bytes) {
    hold = ((hold << 8) | byte) & 0xffffff;
    bits += 8;
    if (bits < width) continue;
    const code = (hold >> (bits - width)) & ((1 << width) - 1);
    bits -= width;
    if (code === LZW_END || out.size > limit) break;
    if (code === LZW_CLEAR) {
      [table, before, width] = [[], undefined, 9];
      continue;
    }
    const known = code < LZW_CLEAR ? Uint8Array.of(code) : table[code - LZW_END - 1];
    if (known === undefined && before === undefined) break;
    const entry: Uint8Array = known ?? longer(before!, before![0]!);
    add(out, entry);
    if (before !== undefined && table.length < 4096 - LZW_END - 1) table.push(longer(before, entry[0]!));
    before = entry;
    width = Math.min(LZW_MOST_BITS, Math.max(9, Math.floor(Math.log2(table.length + LZW_END + 2)) + 1));
  }
  return unpackedOf(out);
}

function longer(bytes: Uint8Array, last: number): Uint8Array {
  const result = new Uint8Array(bytes.length + 1);
  result.set(bytes);
  result[bytes.length] = last;
  return result;
}

/** Bytes that come in parts. */
interface Growing {
  size: number;
  store: Uint8Array;
}

function newGrowing(): Growing {
  return { size: 0, store: new Uint8Array(1 << 12) };
}

function add(growing: Growing, part: ArrayLike<number>): void {
  const size = growing.size + part.length;
  if (size > growing.store.length) {
    const larger = new Uint8Array(Math.max(growing.store.length * 2, size));
    larger.set(growing.store.subarray(0, growing.size));
    growing.store = larger;
  }
  growing.store.set(part, growing.size);
  growing.size = size;
}

function unpackedOf({ store, size }: Growing): Unpacked {
  return { bytes: store.subarray(0, size), size };
}
