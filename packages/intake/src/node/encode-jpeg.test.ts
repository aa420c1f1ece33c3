import { expect, test } from 'vitest';
import { decodePhoto } from './decode-photo.js';
import { USUAL_JPEG_QUALITY, encodeJpeg } from './encode-jpeg.js';
import { testPicture, testPixels } from './test-pictures.js';

/** Codes of the segments before the pixels (ITU T.81, B.1.1.3). */
function segments(jpeg: Uint8Array): number[] {
  const codes: number[] = [];
  for (let at = 2; jpeg[at + 1] !== 0xda; at += 2 + (jpeg[at + 2]! << 8) + jpeg[at + 3]!)
    codes.push(jpeg[at + 1]!);
  return codes;
}

/** Segments that only say how the pixels are packed: tables, frame, restarts, and the header of JFIF. */
const PIXELS_ONLY = [0xdb, 0xc4, 0xc0, 0xdd, 0xe0];

test('when pixels are written, the file holds nothing but the picture', async () => {
  const jpeg = await encodeJpeg(testPixels(), USUAL_JPEG_QUALITY);
  expect(segments(jpeg).filter((code) => !PIXELS_ONLY.includes(code))).toEqual([]);
});

test('when a photo knew its place, camera and time, what is written of it does not', async () => {
  const exif = {
    IFD0: { Make: 'an invented camera', DateTime: '2026:01:02 03:04:05' },
    IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' },
  };
  const taken = new Uint8Array(await testPicture().withExif(exif).jpeg().toBuffer());
  expect(segments(taken)).toContain(0xe1);
  const written = await encodeJpeg(await decodePhoto(taken, 'taken.jpg'), USUAL_JPEG_QUALITY);
  expect(segments(written).filter((code) => !PIXELS_ONLY.includes(code))).toEqual([]);
});

test('when pixels are written twice, the bytes are equal', async () => {
  expect(await encodeJpeg(testPixels(), 80)).toEqual(await encodeJpeg(testPixels(), 80));
});

test('when pixels are written and read, each colour is off by little on the whole', async () => {
  const pixels = testPixels();
  const read = await decodePhoto(await encodeJpeg(pixels, 95), 'again.jpg');
  const off =
    pixels.rgb.reduce((sum, value, i) => sum + Math.abs(value - read.rgb[i]!), 0) / pixels.rgb.length;
  expect(off).toBeLessThan(6);
});
