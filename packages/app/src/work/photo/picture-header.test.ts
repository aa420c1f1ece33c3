import { encodeJpeg } from '@hidebound/intake/node';
import { describe, expect, it } from 'vitest';
import { checkPhoto } from './check-photo.js';
import { pictureHeader } from './picture-header.js';

/** Written by libvips (through sharp), which reads it, too. */
const jpeg = (width: number, height: number) =>
  encodeJpeg({ width, height, rgb: new Uint8Array(width * height * 3).fill(140) }, 85);

const bytesOf = (hex: string): Uint8Array =>
  Uint8Array.from(hex.replaceAll(' ', '').match(/../g)!, (byte) => parseInt(byte, 16));

/** 640 × 481 as the specifications write it: ISO/IEC 15948, 11.2.2, and its last chunk, 11.2.5. */
const PNG = bytesOf(
  '89504e470d0a1a0a 0000000d 49484452 00000280 000001e1 0802000000 00000000 00000000 49454e44 ae426082',
);
/** RFC 9649: RIFF, its length, WEBP, then a header of each kind for 640 × 481, filled up to 30 bytes. */
const WEBP = {
  extended: bytesOf('52494646 16000000 57454250 56503858 0a000000 08000000 7f0200 e00100'),
  // 14 bits of width less one, 14 bits of height less one, after the byte 2f.
  lossless: bytesOf('52494646 16000000 57454250 5650384c 05000000 2f 7f02 7800 0000000000'),
  // RFC 6386, 9.1: three bytes, the start code 9d012a, 14 bits each.
  lossy: bytesOf('52494646 16000000 57454250 56503820 0a000000 000000 9d012a 8002 e101'),
} as const;
const SIZE = { width: 640, height: 481 };

describe('what a picture says of itself', () => {
  it('when a JPEG is whole, its size is told; when it stops in the middle, it is not whole', async () => {
    const bytes = await jpeg(640, 481);
    expect(pictureHeader(bytes, 'jpeg')).toEqual({ size: SIZE, isWhole: true });
    expect(pictureHeader(bytes.slice(0, -2), 'jpeg')).toEqual({ size: SIZE, isWhole: false });
    expect(pictureHeader(bytes.slice(0, 12), 'jpeg').isWhole).toBe(false);
  });

  it('when a PNG has its last chunk, it is whole, and without it, it is not', () => {
    expect(pictureHeader(PNG, 'png')).toEqual({ size: SIZE, isWhole: true });
    expect(pictureHeader(PNG.slice(0, -1), 'png')).toEqual({ size: SIZE, isWhole: false });
    expect(pictureHeader(PNG.slice(0, 20), 'png')).toEqual({ size: undefined, isWhole: false });
  });

  it.each(Object.entries(WEBP))('when a WebP is of the %s kind, its size is told', (_, bytes) => {
    expect(bytes.length).toBe(30);
    expect(pictureHeader(bytes, 'webp')).toEqual({ size: SIZE, isWhole: true });
    const longer = bytes.slice();
    longer[4] = 0x90;
    expect(pictureHeader(longer, 'webp')).toEqual({ size: SIZE, isWhole: false });
  });
});

describe('photos that are refused before anything is decoded', () => {
  const refusal = (bytes: Uint8Array): string => {
    try {
      checkPhoto({ file: 'side.jpg', bytes });
      return 'taken';
    } catch (error) {
      return (error as Error).message;
    }
  };

  it('when the header tells 200 megapixels, it says how many are read', async () => {
    const bytes = (await jpeg(640, 481)).slice();
    const frame = bytes.findIndex((byte, at) => byte === 0xff && bytes[at + 1] === 0xc0);
    const view = new DataView(bytes.buffer);
    view.setUint16(frame + 5, 12_500);
    view.setUint16(frame + 7, 16_000);
    expect(refusal(bytes)).toMatch(/^side\.jpg: The picture has 16,000 × 12,500 pixels, 200 megapixels/);
  });

  it('when it stops in the middle, is a drawing, is empty, or is a preview, it says so', async () => {
    const whole = await jpeg(640, 481);
    expect(refusal(whole.slice(0, 700))).toMatch(/damaged or stops in the middle/);
    expect(refusal(new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg"/>'))).toMatch(
      /This is a drawing, no photo/,
    );
    expect(refusal(new Uint8Array())).toMatch(/This is an empty file/);
    expect(refusal(await jpeg(160, 120))).toMatch(/only 160 × 120/);
    expect(refusal(whole)).toBe('taken');
  });
});
