/** Kinds of picture files that photos are read from. */
export type PhotoKind = 'jpeg' | 'png' | 'webp' | 'tiff';

/** What a file is by its first bytes: a photo that can be read, a kind of its own that can't, or anything else. */
export type PhotoSignature =
  | { readonly kind: PhotoKind }
  /** Of the phone's own kind; `what` with its article: "a HEIC". */
  | { readonly kind: 'heic'; readonly what: string }
  /** `what` with its article: "a PDF document". */
  | { readonly kind: 'other'; readonly what: string };

/** Judges by the signatures that the formats' own specifications give; the name of the file counts for nothing. */
export function photoSignature(bytes: Uint8Array): PhotoSignature {
  const kind = PHOTO_SIGNATURES.find(([, ...parts]) => parts.every((part) => hasPart(bytes, part)))?.[0];
  if (kind !== undefined) return { kind };
  const heic = brandWords(bytes);
  if (heic !== undefined) return { kind: 'heic', what: heic };
  if (bytes.length === 0) return { kind: 'other', what: 'an empty file' };
  const other = OTHER_SIGNATURES.find(([, ...parts]) => parts.every((part) => hasPart(bytes, part)))?.[0];
  return { kind: 'other', what: other ?? 'something else' };
}

/** Bytes, as Latin-1 text, that must stand at a place. */
type SignaturePart = readonly [offset: number, text: string];

const PHOTO_SIGNATURES: readonly (readonly [PhotoKind, ...SignaturePart[]])[] = [
  ['jpeg', [0, '\xff\xd8\xff']],
  ['png', [0, '\x89PNG\r\n\x1a\n']],
  ['webp', [0, 'RIFF'], [8, 'WEBP']],
  ['tiff', [0, 'II*\0']],
  ['tiff', [0, 'MM\0*']],
];

const OTHER_SIGNATURES: readonly (readonly [string, ...SignaturePart[]])[] = [
  ['a GIF picture', [0, 'GIF8']],
  ['a PDF document', [0, '%PDF']],
  ['a drawing', [0, '<svg']],
  ['a text in XML', [0, '<?xml']],
  ['a zip archive', [0, 'PK\x03\x04']],
  ['a BMP picture', [0, 'BM']],
  ['a video', [4, 'ftyp']],
];

function hasPart(bytes: Uint8Array, [offset, text]: SignaturePart): boolean {
  return textAt(bytes, offset, text.length) === text;
}

function textAt(bytes: Uint8Array, offset: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(offset, offset + length));
}

/** Brands of still pictures in the box of ISO/IEC 14496-12 that names a file's kinds (ISO/IEC 23008-12, AV1 image format). */
const BRANDS: readonly (readonly [RegExp, string])[] = [
  [/^(?:avif|avis)$/, 'an AVIF'],
  [/^(?:hei[cxms]|hev[cxms])$/, 'a HEIC'],
  [/^(?:mif[12]|msf1|miaf)$/, 'a HEIF'],
];

/** Longest list of brands that is looked at: files name a handful. */
const MOST_BRANDS = 32;

/** The picture kind that the first box names, its main brand first; nothing if there is none. */
function brandWords(bytes: Uint8Array): string | undefined {
  if (textAt(bytes, 4, 4) !== 'ftyp') return undefined;
  const size = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0);
  const end = Math.min(bytes.length, size, 16 + 4 * MOST_BRANDS);
  const brands = [textAt(bytes, 8, 4)];
  for (let at = 16; at + 4 <= end; at += 4) brands.push(textAt(bytes, at, 4));
  return BRANDS.find(([pattern]) => brands.some((brand) => pattern.test(brand)))?.[1];
}
