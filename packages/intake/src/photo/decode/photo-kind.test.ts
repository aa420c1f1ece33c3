import { expect, test } from 'vitest';
import { photoSignature } from './photo-kind.js';

function bytesOf(text: string): Uint8Array {
  return Uint8Array.from(text, (character) => character.charCodeAt(0));
}

/** The first box of such a file (ISO/IEC 14496-12): its size, "ftyp", main brand, version, further brands. */
function typeBox(main: string, further: readonly string[]): Uint8Array {
  const size = 16 + 4 * further.length;
  return bytesOf(`\0\0\0${String.fromCharCode(size)}ftyp${main}\0\0\0\0${further.join('')}\0\0\0\x08mdat`);
}

// Brands: ISO/IEC 23008-12, annex B, and the specification of the AV1 image format, from memory.
test.each([
  ['heic', ['mif1', 'heic'], 'a HEIC'],
  ['heix', ['mif1', 'heix'], 'a HEIC'],
  ['hevc', ['msf1', 'hevc'], 'a HEIC'],
  ['mif1', ['heic'], 'a HEIC'],
  ['mif1', [], 'a HEIF'],
  ['msf1', [], 'a HEIF'],
  ['avif', ['mif1', 'miaf'], 'an AVIF'],
  ['mif1', ['avif'], 'an AVIF'],
])('when the first box names %s with %j, it is %s', (main, further, what) => {
  expect(photoSignature(typeBox(main, further))).toEqual({ kind: 'heic', what });
});

test('when the first box is that of a video, it is no picture of a phone', () => {
  expect(photoSignature(typeBox('isom', ['mp41']))).toEqual({ kind: 'other', what: 'a video' });
});

test('when the box of brands claims to be longer than the file, what is there is read', () => {
  const box = typeBox('mif1', ['heic']);
  box.set([0x7f, 0xff, 0xff, 0xff]);
  expect(photoSignature(box)).toEqual({ kind: 'heic', what: 'a HEIC' });
});

// Signatures: ITU T.81 (JPEG), W3C PNG, the WebP container specification, TIFF 6.0.
test.each([
  ['\xff\xd8\xff\xe0', 'jpeg'],
  ['\x89PNG\r\n\x1a\n\0\0\0\rIHDR', 'png'],
  ['RIFF\x10\0\0\0WEBPVP8 ', 'webp'],
  ['II*\0\x08\0\0\0', 'tiff'],
  ['MM\0*\0\0\0\x08', 'tiff'],
])('when the file begins with %j, it is a %s', (begin, kind) => {
  expect(photoSignature(bytesOf(begin))).toEqual({ kind });
});

test.each([
  ['', 'an empty file'],
  ['RIFF\x10\0\0\0WAVEfmt ', 'something else'],
  ['GIF89a', 'a GIF picture'],
  ['%PDF-1.7', 'a PDF document'],
  ['<svg xmlns="http://www.w3.org/2000/svg"/>', 'a drawing'],
  ['hello', 'something else'],
])('when the file begins with %j, it is %s', (begin, what) => {
  expect(photoSignature(bytesOf(begin))).toEqual({ kind: 'other', what });
});
