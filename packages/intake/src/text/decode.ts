import { IntakeError } from '../error.js';
import { MAX_FILE_BYTES } from '../limits.js';

/** A decoder as every engine has it; the core packages know neither Node's nor the browser's types. */
interface Decoder {
  decode(bytes: Uint8Array): string;
}
type DecoderConstructor = new (label: string, options: { fatal: boolean; ignoreBOM: boolean }) => Decoder;

const MEGABYTE = 1024 * 1024;
const SNIFF_BYTES = 1024;

/** Encodings that a file may declare, and the decoder's label for each. */
const ENCODINGS: Readonly<Record<string, string>> = {
  'utf-8': 'utf-8',
  utf8: 'utf-8',
  'us-ascii': 'utf-8',
  ascii: 'utf-8',
  'iso-8859-1': 'windows-1252',
  latin1: 'windows-1252',
  'windows-1252': 'windows-1252',
  cp1252: 'windows-1252',
};

/** Starts of files that people take for a drawing, and what they are. */
const SIGNATURES: readonly { readonly start: readonly number[]; readonly what: string }[] = [
  { start: [0x25, 0x50, 0x44, 0x46], what: 'a PDF' },
  { start: [0x89, 0x50, 0x4e, 0x47], what: 'a PNG picture' },
  { start: [0xff, 0xd8, 0xff], what: 'a JPEG picture' },
  { start: [0x50, 0x4b, 0x03, 0x04], what: 'a ZIP archive' },
  { start: [0x47, 0x49, 0x46, 0x38], what: 'a GIF picture' },
];

/**
 * The text of a drawing file: byte-order marks, UTF-16 of either order, and the encodings in `ENCODINGS`.
 * Throws `empty-file`, `too-large`, `compressed-file`, `binary-file` or `bad-encoding`.
 */
export function decodeText(input: Uint8Array | string, file: string): string {
  if (input.length > MAX_FILE_BYTES) {
    throw new IntakeError(
      'too-large',
      { megabytes: Math.round(input.length / MEGABYTE), limit: MAX_FILE_BYTES / MEGABYTE },
      { file },
    );
  }
  const text = typeof input === 'string' ? input : decodeBytes(input, file);
  const unmarked = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  if (unmarked.trim() === '') throw new IntakeError('empty-file', {}, { file });
  if (unmarked.includes('\u0000')) throw new IntakeError('binary-file', { what: 'binary data' }, { file });
  return unmarked;
}

function decodeBytes(bytes: Uint8Array, file: string): string {
  if (bytes.length === 0) throw new IntakeError('empty-file', {}, { file });
  if (bytes[0] === 0x1f && bytes[1] === 0x8b) throw new IntakeError('compressed-file', {}, { file });
  const known = SIGNATURES.find(({ start }) => start.every((byte, i) => bytes[i] === byte));
  if (known !== undefined) throw new IntakeError('binary-file', { what: known.what }, { file });
  const label = encodingOf(bytes, file);
  if (label === 'utf-8' && bytes.subarray(0, SNIFF_BYTES).includes(0)) {
    throw new IntakeError('binary-file', { what: 'binary data' }, { file });
  }
  try {
    return newDecoder(label).decode(bytes);
  } catch {
    throw new IntakeError('bad-encoding', { encoding: label }, { file });
  }
}

function newDecoder(label: string): Decoder {
  const { TextDecoder } = globalThis as unknown as { TextDecoder: DecoderConstructor };
  return new TextDecoder(label, { fatal: true, ignoreBOM: true });
}

function encodingOf(bytes: Uint8Array, file: string): string {
  const [b0, b1] = bytes;
  if (b0 === 0xff && b1 === 0xfe) return 'utf-16le';
  if (b0 === 0xfe && b1 === 0xff) return 'utf-16be';
  if (b0 === 0xef && b1 === 0xbb && bytes[2] === 0xbf) return 'utf-8';
  if (b0 === 0x3c && b1 === 0) return 'utf-16le';
  if (b0 === 0 && b1 === 0x3c) return 'utf-16be';
  return declaredEncoding(bytes, file) ?? 'utf-8';
}

function declaredEncoding(bytes: Uint8Array, file: string): string | undefined {
  const head = String.fromCharCode(...bytes.subarray(0, 200));
  const match = /^\s*<\?xml[^>]*?encoding\s*=\s*["']([^"']+)["']/.exec(head);
  if (match === null) return undefined;
  const label = ENCODINGS[match[1]!.toLowerCase()];
  if (label === undefined) throw new IntakeError('bad-encoding', { encoding: match[1]! }, { file });
  return label;
}
