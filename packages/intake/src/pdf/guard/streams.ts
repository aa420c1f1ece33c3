import { IntakeError } from '../../error.js';
import {
  LOOSELY_PACKED_BYTES,
  MAX_FORM_CHAINS,
  MAX_FUNCTION_SAMPLES,
  MAX_INFLATED_BYTES,
  MAX_LOCKED_STREAM_BYTES,
  MAX_OBJECTS,
  MAX_OBJECT_STREAM_BYTES,
  MAX_PACKING_RATIO,
  MAX_STREAM_BYTES,
} from '../limits.js';
import { filtersOf } from './filters.js';
import type { Filter } from './filters.js';
import { countWord, findStreams, mentionsEncryption, openObject } from './find-streams.js';
import type { FoundStream } from './find-streams.js';
import { isZlib } from './inflate.js';
import { isPictureWithin } from './picture-size.js';
import { unpackStream } from './unpack.js';

/** A copy of the file that is safe to be parsed, and what was taken out of it. */
export interface GuardedBytes {
  readonly data: Uint8Array;
  readonly pictures: number;
  /** Streams that are packed in a way that is not followed. */
  readonly unread: number;
  readonly isLocked: boolean;
}

/**
 * Looks at every stream before the file is parsed, because the parser unpacks whole streams at once: what would unpack
 * too far is refused. Pictures and tiled fillings, which hold no lines of the drawing, are emptied in place: the first
 * need never be unpacked, and what a filling draws can't be stopped while it is parsed. With `keepsPictures`, those stay
 * that are told to unpack to no more than a large scan.
 */
export function guardStreams(bytes: Uint8Array, file: string, keepsPictures = false): GuardedBytes {
  const data = new Uint8Array(bytes);
  const guard: Guard = {
    data,
    file,
    keepsPictures,
    isLocked: mentionsEncryption(bytes),
    hasDrawnLetters: countWord(bytes, '/Type3') > 0,
    chains: 1,
    pictures: 0,
    unread: 0,
    unpacked: 0,
  };
  for (const stream of findStreams(bytes)) guardStream(guard, stream);
  if (guard.hasDrawnLetters && guard.chains > MAX_FORM_CHAINS) {
    throw new IntakeError('pdf-too-many-forms', { limit: MAX_FORM_CHAINS }, { file });
  }
  return guard;
}

interface Guard {
  readonly data: Uint8Array;
  readonly file: string;
  /** Pictures that can be looked into are left in. */
  readonly keepsPictures: boolean;
  readonly isLocked: boolean;
  /** Letters of a font are drawings (type 3): what they draw can't be stopped while it is parsed, as with fillings. */
  hasDrawnLetters: boolean;
  /** The product of how many forms each form draws. */
  chains: number;
  pictures: number;
  unread: number;
  unpacked: number;
}

function guardStream(guard: Guard, stream: FoundStream): void {
  const { dictionary } = stream;
  if (/\/Subtype\s*\/Image\b/.test(dictionary)) {
    guard.pictures++;
    if (guard.keepsPictures) {
      if (isSafePicture(guard, stream)) return;
      takeWidth(guard, stream);
    }
    return empty(guard, stream, 'broken');
  }
  const filters = filtersOf(dictionary, (number, generation) => openObject(guard.data, number, generation));
  if (filters === 'picture') return empty(guard, stream, 'broken');
  if (filters === undefined || isUnfollowable(filters, dictionary)) {
    guard.unread++;
    return empty(guard, stream, 'broken');
  }
  if (/\/PatternType\s*1\b/.test(dictionary) && !guard.isLocked) {
    return empty(guard, stream, filters.length === 0 ? 'blank' : 'deflated');
  }
  checkObjects(guard, dictionary);
  checkSamples(guard, dictionary);
  if (guard.isLocked && !/\/Type\s*\/XRef\b/.test(dictionary)) return checkLocked(guard, stream, filters);
  checkSize(guard, stream, filters);
}

function isSafePicture(guard: Guard, stream: FoundStream): boolean {
  if (guard.isLocked) return false;
  const filters = filtersOf(stream.dictionary, (number, generation) =>
    openObject(guard.data, number, generation),
  );
  return isPictureWithin(guard.data.subarray(stream.start, endOf(stream)), stream.dictionary, filters);
}

/** A picture without a width is not shown; emptied alone it would be black. */
function takeWidth({ data }: Guard, { start, dictionary }: FoundStream): void {
  const width = [...'/Width'].map((letter) => letter.charCodeAt(0));
  for (let at = start; at > Math.max(0, start - 2 * dictionary.length - width.length); at--) {
    if (width.every((code, k) => data[at + k] === code)) {
      data[at + 1] = 'w'.charCodeAt(0);
      return;
    }
  }
}

/** What comes between two unpackings could hide the second one. */
function isUnfollowable(filters: readonly Filter[], dictionary: string): boolean {
  return filters.filter((filter) => filter !== 'none').length > 1 && dictionary.includes('/Predictor');
}

function checkSize(guard: Guard, stream: FoundStream, filters: readonly Filter[]): void {
  const { dictionary, start } = stream;
  const limit = isOfObjects(dictionary) ? MAX_OBJECT_STREAM_BYTES : MAX_STREAM_BYTES;
  // Deflated data know where they end, so that an "endstream" among them hides nothing.
  const end = isZlib(guard.data, start) ? guard.data.length : endOf(stream);
  const isForm = /\/Subtype\s*\/Form\b/.test(dictionary);
  const isWanted = isForm || isOfObjects(dictionary);
  const { largest, bytes } = unpackStream(guard.data.subarray(start, end), filters, limit, isWanted);
  guard.unpacked += largest;
  if (largest > limit || isPackedTooTight(largest, endOf(stream) - start)) throw tooFar(guard, limit);
  if (guard.unpacked > MAX_INFLATED_BYTES) throw tooFar(guard, MAX_INFLATED_BYTES);
  if (isForm)
    guard.chains *= Math.max(1, countWord(bytes.subarray(0, largest || endOf(stream) - start), 'Do'));
  else if (isWanted && countWord(bytes, '/Type3') > 0) guard.hasDrawnLetters = true;
}

/** Drawings repeat themselves a little; floods of one thing pack a hundred times and more. */
function isPackedTooTight(size: number, packed: number): boolean {
  return size > LOOSELY_PACKED_BYTES && size > MAX_PACKING_RATIO * packed;
}

function tooFar({ file }: Guard, limit: number): IntakeError {
  return new IntakeError('pdf-inflates-too-far', { limit: limit / 2 ** 20 }, { file });
}

/** Where the data end: at the next "endstream", or later where the dictionary says so. */
function endOf({ dictionary, start, end }: FoundStream): number {
  const length = /\/Length\s+(\d+)(?!\s+\d+\s+R)/.exec(dictionary)?.[1];
  return Math.max(end, start + Number(length ?? 0));
}

/** Object streams and tables of places (ISO 32000-1, sections 7.5.7 and 7.5.8). */
function isOfObjects(dictionary: string): boolean {
  return /\/Type\s*\/(?:ObjStm|XRef)\b/.test(dictionary);
}

/** How many objects a stream of objects, or a table of their places, says that it holds. */
function checkObjects({ file }: Guard, dictionary: string): void {
  if (!isOfObjects(dictionary)) return;
  const index = /\/Index\s*\[([^\]]*)\]/.exec(dictionary)?.[1]?.trim().split(/\s+/).map(Number) ?? [];
  const counts = [
    ...index.filter((_, i) => i % 2 === 1),
    ...[...dictionary.matchAll(/\/(?:Size|N)\s+(\d+)/g)].map((match) => Number(match[1])),
  ];
  if (counts.every((count) => count <= MAX_OBJECTS)) return;
  throw new IntakeError('pdf-too-many-objects', { limit: MAX_OBJECTS }, { file });
}

/** A sampled function is a table in memory of as many values as it says, whatever its stream holds. */
function checkSamples({ file }: Guard, dictionary: string): void {
  if (!/\/FunctionType\s+0\b/.test(dictionary)) return;
  const sizes = /\/Size\s*\[([^\]]*)\]/.exec(dictionary)?.[1]?.trim().split(/\s+/).map(Number) ?? [];
  if (sizes.reduce((product, size) => product * Math.max(1, size), 1) <= MAX_FUNCTION_SAMPLES) return;
  throw new IntakeError('pdf-inflates-too-far', { limit: MAX_FUNCTION_SAMPLES / 1e6 }, { file });
}

/** Of a locked stream only its packed size is known. Those that are packed twice are not unpacked at all. */
function checkLocked(guard: Guard, stream: FoundStream, filters: readonly Filter[]): void {
  const packed = endOf(stream) - stream.start;
  const unpackers = filters.filter((filter) => filter !== 'none').length;
  if (unpackers > 1) {
    guard.unread++;
    return empty(guard, stream, 'broken');
  }
  if (unpackers === 0 || packed <= MAX_LOCKED_STREAM_BYTES) return;
  const megabytes = Math.round(packed / 2 ** 18) / 4;
  throw new IntakeError('pdf-locked-too-large', { megabytes }, { file: guard.file });
}

/** An end mark of both text filters, and nothing that starts deflated data. */
const BROKEN = [0x7e, 0x3e];
const SPACE = 0x20;
/** Deflated data of nothing: a last block with fixed codes that holds its end alone (RFC 1950, RFC 1951). */
const DEFLATED_NOTHING = [0x78, 0x9c, 0x03, 0x00, 0x00, 0x00, 0x00, 0x01];

/** Overwrites a stream, so that its place in the file stays: so that it can't be unpacked, or unpacks to nothing. */
function empty({ data }: Guard, stream: FoundStream, how: 'broken' | 'blank' | 'deflated'): void {
  const end = Math.min(data.length, endOf(stream));
  const { start } = stream;
  if (how === 'deflated' && end - start < DEFLATED_NOTHING.length) return;
  for (let i = start; i < end; i++) data[i] = how === 'broken' ? BROKEN[(i - start) % 2]! : SPACE;
  if (how === 'deflated') data.set(DEFLATED_NOTHING, start);
}
