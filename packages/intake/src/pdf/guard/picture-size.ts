import { MAX_PICTURE_BYTES, MAX_PICTURE_PIXELS } from '../limits.js';
import type { Filter } from './filters.js';
import { unpackedSize } from './unpack.js';

/**
 * True for a picture whose packed bytes say that it unpacks to no more than a large scan: a JPEG by its frame, a fax
 * page by its width, deflated and plain ones by counting. Whatever can't be told is not safe.
 */
export function isPictureWithin(
  packed: Uint8Array,
  dictionary: string,
  filters: readonly Filter[] | 'picture' | undefined,
): boolean {
  if (filters === undefined) return false;
  if (filters !== 'picture') return unpackedSize(packed, filters, MAX_PICTURE_BYTES) <= MAX_PICTURE_BYTES;
  const names = filterNames(dictionary);
  if (names.length !== 1) return false;
  if (names[0] === '/DCTDecode' || names[0] === '/DCT') return jpegPixels(packed) <= MAX_PICTURE_PIXELS;
  if (names[0] === '/CCITTFaxDecode' || names[0] === '/CCF')
    return faxPixels(dictionary) <= MAX_PICTURE_PIXELS;
  return false;
}

/** Names of a picture's filters as they stand there; none where they stand elsewhere. */
function filterNames(dictionary: string): readonly string[] {
  const [, list, single] = /\/Filter\s*(?:\[([^\]]*)\]|(\/\w+))/.exec(dictionary) ?? [];
  return list === undefined ? (single === undefined ? [] : [single]) : (list.match(/\/\w+/g) ?? []);
}

/** Pixels that a JPEG's frame names, which stands before its data; infinitely many of one without (ITU-T T.81, annex B). */
function jpegPixels(bytes: Uint8Array): number {
  let at = 0;
  while (at < bytes.length && (bytes[at] !== 0xff || bytes[at + 1] !== 0xd8)) at++;
  for (at += 2; at + 9 < bytes.length;) {
    if (bytes[at] !== 0xff) return Infinity;
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker === START_OF_SCAN) return Infinity;
    const isFrame = marker >= 0xc0 && marker <= 0xcf && !NO_FRAMES.has(marker);
    if (isFrame) {
      const height = bytes[at + 5]! * 256 + bytes[at + 6]!;
      return height * (bytes[at + 7]! * 256 + bytes[at + 8]!) || Infinity;
    }
    at += 2 + bytes[at + 2]! * 256 + bytes[at + 3]!;
  }
  return Infinity;
}

const START_OF_SCAN = 0xda;
/** Tables of codes, and a marker that is kept free, among the numbers of frames. */
const NO_FRAMES = new Set([0xc4, 0xc8, 0xcc]);

/** Every size that a fax page names, multiplied (ISO 32000-1, table 11; 1,728 columns where none is named). */
function faxPixels(dictionary: string): number {
  const largest = (name: string, absent: number) =>
    [...dictionary.matchAll(new RegExp(`/${name}\\s+(\\d+)`, 'g'))].reduce(
      (most, match) => Math.max(most, Number(match[1])),
      absent,
    );
  const width = Math.max(largest('Columns', 1728), largest('Width', 1));
  return width * Math.max(largest('Rows', 1), largest('Height', 1));
}
