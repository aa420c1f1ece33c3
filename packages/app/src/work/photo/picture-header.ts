import type { PhotoKind } from '@hidebound/intake/photo';

/** What a picture file says of itself before anything of it is decoded. */
export interface PictureHeader {
  /** As stored, before it is turned upright; undefined where the header is damaged. */
  readonly size: { readonly width: number; readonly height: number } | undefined;
  /** False where the file stops before its own end. */
  readonly isWhole: boolean;
}

/** Reads the header of a JPEG, PNG or WebP file by the formats' own specifications. */
export function pictureHeader(bytes: Uint8Array, kind: Exclude<PhotoKind, 'tiff'>): PictureHeader {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  switch (kind) {
    case 'jpeg':
      return jpegHeader(view);
    case 'png':
      return pngHeader(view);
    case 'webp':
      return webpHeader(view);
  }
}

const START_OF_SCAN = 0xda;
const END_OF_IMAGE = 0xd9;

/** ITU-T T.81, annex B: segments up to the scan; a frame's header is FFC0 to FFCF but for tables (C4, C8, CC). */
function jpegHeader(view: DataView): PictureHeader {
  let size: PictureHeader['size'];
  let at = 2;
  while (at + 9 < view.byteLength) {
    if (view.getUint8(at) !== 0xff) break;
    const marker = view.getUint8(at + 1);
    // Fill bytes may stand before a marker.
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)) {
      size = { width: view.getUint16(at + 7), height: view.getUint16(at + 5) };
    }
    if (marker === START_OF_SCAN) return { size, isWhole: endsAfter(view, at) };
    at += 2 + view.getUint16(at + 2);
  }
  return { size, isWhole: false };
}

/** Within a scan FF is followed by 0 or a restart; the first other thing that ends the image is its end. */
function endsAfter(view: DataView, from: number): boolean {
  for (let at = view.byteLength - 2; at > from; at--) {
    if (view.getUint8(at) === 0xff && view.getUint8(at + 1) === END_OF_IMAGE) return true;
  }
  return false;
}

const IHDR_SIZE_AT = 16;
const PNG_SIGNATURE_BYTES = 8;
/** Length, type and checksum of a chunk without content. */
const CHUNK_FRAME_BYTES = 12;

/** ISO/IEC 15948: the size stands in the first chunk, and the chunk IEND is the last one. */
function pngHeader(view: DataView): PictureHeader {
  if (view.byteLength < IHDR_SIZE_AT + 8) return { size: undefined, isWhole: false };
  const size = { width: view.getUint32(IHDR_SIZE_AT), height: view.getUint32(IHDR_SIZE_AT + 4) };
  let at = PNG_SIGNATURE_BYTES;
  while (at + CHUNK_FRAME_BYTES <= view.byteLength) {
    if (textAt(view, at + 4) === 'IEND') return { size, isWhole: true };
    at += CHUNK_FRAME_BYTES + view.getUint32(at);
  }
  return { size, isWhole: false };
}

const RIFF_FRAME_BYTES = 8;

/** RFC 9649: the extended header, the lossless one, or the key frame of the lossy one (RFC 6386, 9.1). */
function webpHeader(view: DataView): PictureHeader {
  if (view.byteLength < 30) return { size: undefined, isWhole: false };
  const isWhole = view.getUint32(4, true) + RIFF_FRAME_BYTES <= view.byteLength;
  return { size: webpSize(view), isWhole };
}

function webpSize(view: DataView): PictureHeader['size'] {
  switch (textAt(view, 12)) {
    case 'VP8X':
      return { width: 1 + threeBytes(view, 24), height: 1 + threeBytes(view, 27) };
    case 'VP8L': {
      const bits = view.getUint32(21, true);
      return { width: 1 + (bits & 0x3fff), height: 1 + ((bits >> 14) & 0x3fff) };
    }
    case 'VP8 ':
      return { width: view.getUint16(26, true) & 0x3fff, height: view.getUint16(28, true) & 0x3fff };
    default:
      return undefined;
  }
}

function threeBytes(view: DataView, at: number): number {
  return view.getUint16(at, true) + (view.getUint8(at + 2) << 16);
}

function textAt(view: DataView, at: number): string {
  return String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));
}
