import sharp from 'sharp';
import { expect, test } from 'vitest';
import type { Photo } from '../photo/photo.js';
import { decodePhoto } from './decode-photo.js';
import { photoMegapixels } from './open-picture.js';
import {
  TEST_HEIGHT,
  TEST_WIDTH,
  largestDifference,
  pixelAt,
  plainPicture,
  testPicture,
  testPixels,
} from './test-pictures.js';

async function decoded(picture: { toBuffer(): Promise<Buffer> }): Promise<Photo> {
  return decodePhoto(new Uint8Array(await picture.toBuffer()), 'side.jpg');
}

/** What a good JPEG may change: the board's edges ring a little. */
const JPEG_LOSS = 40;

const pixels = testPixels();

test('when a photo is a PNG, every pixel is as it was stored', async () => {
  const photo = await decoded(testPicture().png());
  expect(photo.file).toBe('side.jpg');
  expect(largestDifference(photo, pixels)).toBe(0);
});

test.each([
  ['lossless WebP', testPicture().webp({ lossless: true }), 0],
  ['TIFF', testPicture().tiff({ compression: 'deflate' }), 0],
  ['PNG of 16 bits', testPicture().toColourspace('rgb16').png(), 1],
  ['JPEG', testPicture().jpeg({ quality: 97, chromaSubsampling: '4:4:4' }), JPEG_LOSS],
  [
    'progressive JPEG',
    testPicture().jpeg({ quality: 97, progressive: true, chromaSubsampling: '4:4:4' }),
    JPEG_LOSS,
  ],
] as const)('when a photo is a %s, it is read alike', async (_, picture, most) => {
  expect(largestDifference(await decoded(picture.clone()), pixels)).toBeLessThanOrEqual(most);
});

// TIFF 6.0 and Exif 2.3, tag 274: where row 0 and column 0 of the stored picture are on the upright one.
const UPRIGHT: readonly (readonly [number, (x: number, y: number) => readonly [number, number]])[] = [
  [1, (x, y) => [x, y]],
  [2, (x, y) => [TEST_WIDTH - 1 - x, y]],
  [3, (x, y) => [TEST_WIDTH - 1 - x, TEST_HEIGHT - 1 - y]],
  [4, (x, y) => [x, TEST_HEIGHT - 1 - y]],
  [5, (x, y) => [y, x]],
  [6, (x, y) => [TEST_HEIGHT - 1 - y, x]],
  [7, (x, y) => [TEST_HEIGHT - 1 - y, TEST_WIDTH - 1 - x]],
  [8, (x, y) => [y, TEST_WIDTH - 1 - x]],
];

test.each(UPRIGHT)(
  'when the camera was held as orientation %i says, the photo is turned upright',
  async (orientation, toUpright) => {
    const photo = await decoded(testPicture().withMetadata({ orientation }).png());
    const isTurned = orientation >= 5;
    expect([photo.width, photo.height]).toEqual(
      isTurned ? [TEST_HEIGHT, TEST_WIDTH] : [TEST_WIDTH, TEST_HEIGHT],
    );
    for (const [x, y] of [
      [3, 5],
      [390, 7],
      [200, 301],
    ] as const) {
      expect(pixelAt(photo, ...toUpright(x, y))).toEqual(pixelAt(pixels, x, y));
    }
  },
);

test('when a picture is transparent, white shows through', async () => {
  const clear = await decoded(testPicture().ensureAlpha(0).png());
  expect(pixelAt(clear, 100, 100)).toEqual([255, 255, 255]);
  const half = await decoded(plainPicture(55, 155, 255).ensureAlpha(0.5).png());
  pixelAt(half, 100, 100).forEach((value, i) => {
    expect(Math.abs(value - [155, 205, 255][i]!)).toBeLessThanOrEqual(1);
  });
});

test.each([
  ['8 bits', 'b-w'],
  ['16 bits', 'grey16'],
])('when a photo is grey, of %s, it has three equal colours', async (_, space) => {
  const photo = await decoded(plainPicture(90, 90, 90).toColourspace(space).png());
  expect(photo.rgb).toHaveLength(TEST_WIDTH * TEST_HEIGHT * 3);
  pixelAt(photo, 50, 60).forEach((value) => expect(Math.abs(value - 90)).toBeLessThanOrEqual(1));
});

test('when a JPEG holds the four inks of printers, no ink is white and colours are not turned round', async () => {
  const of = async (r: number, g: number, b: number): Promise<number[]> =>
    pixelAt(await decoded(plainPicture(r, g, b).toColourspace('cmyk').jpeg({ quality: 100 })), 9, 9);
  expect(await of(255, 255, 255)).toEqual([255, 255, 255]);
  expect(Math.max(...(await of(0, 0, 0)))).toBeLessThan(40);
  const [r = 0, g = 0, b = 0] = await of(200, 60, 60);
  expect(r).toBeGreaterThan(150);
  expect(Math.max(g, b)).toBeLessThan(100);
});

test('when a photo has a profile of wider colours, it is converted by it', async () => {
  const png = await plainPicture(200, 100, 50).withIccProfile('p3').png().toBuffer();
  const stored = [...(await sharp(png, { ignoreIcc: true }).raw().toBuffer()).subarray(0, 3)];
  expect(stored).not.toEqual([200, 100, 50]);
  const photo = await decodePhoto(new Uint8Array(png), 'wide.png');
  sRgbOfP3(stored).forEach((value, i) => {
    expect(Math.abs(pixelAt(photo, 20, 20)[i]! - value)).toBeLessThanOrEqual(2);
  });
});

/** CSS Color 4, section 18 (sample code for conversions), from memory. */
function sRgbOfP3(stored: readonly number[]): number[] {
  const linear = stored.map((value) => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  const times = (rows: readonly (readonly number[])[], column: readonly number[]): number[] =>
    rows.map((row) => row.reduce((sum, value, i) => sum + value * column[i]!, 0));
  const xyz = times(
    [
      [0.4865709, 0.2656677, 0.1982173],
      [0.2289746, 0.6917385, 0.0792869],
      [0, 0.0451134, 1.0439444],
    ],
    linear,
  );
  const rgb = times(
    [
      [3.2409699, -1.5373832, -0.4986108],
      [-0.9692436, 1.8759675, 0.0415551],
      [0.0556301, -0.203977, 1.0569715],
    ],
    xyz,
  );
  return rgb.map((share) =>
    Math.round(255 * (share <= 0.0031308 ? share * 12.92 : 1.055 * share ** (1 / 2.4) - 0.055)),
  );
}

test('when a picture moves, its first frame is read', async () => {
  const frames = [await testPicture().png().toBuffer(), await testPicture().negate().png().toBuffer()];
  const webp = sharp(frames, { join: { animated: true } }).webp({ lossless: true });
  expect(largestDifference(await decoded(webp), pixels)).toBe(0);
});

test.each([0.01, 0.3, 0.6, 0.95, 0.999])('when %d of a file is there, it is refused', async (share) => {
  const pictures = [
    testPicture().jpeg(),
    testPicture().jpeg({ progressive: true }),
    testPicture().png(),
    testPicture().webp(),
    testPicture().tiff(),
  ];
  for (const picture of pictures) {
    const whole = new Uint8Array(await picture.toBuffer());
    // The last 12 bytes of a PNG hold no pixels.
    const part = whole.subarray(0, Math.min(whole.length * share, whole.length - 13));
    await expect(decodePhoto(part, 'part.jpg')).rejects.toMatchObject({
      name: 'IntakeError',
      message: expect.stringMatching(
        /^part\.jpg: (?:The picture is damaged|This is something else)/,
      ) as string,
    });
  }
});

test('when a stretch in the middle of a JPEG was written over, it is refused', async () => {
  const bytes = new Uint8Array(await testPicture().jpeg().toBuffer());
  bytes.fill(0x55, bytes.length >> 1, (bytes.length >> 1) + 40);
  await expect(decodePhoto(bytes, 'hurt.jpg')).rejects.toMatchObject({ code: 'photo-broken' });
});

test('when other things stand behind the picture, as some phones put them there, it is read', async () => {
  const jpeg = await testPicture().jpeg().toBuffer();
  const photo = await decodePhoto(new Uint8Array(Buffer.concat([jpeg, Buffer.alloc(5000, 7)])), 'long.jpg');
  expect(photo.width).toBe(TEST_WIDTH);
});

test('when a picture is of the phone’s own kind, the sentence tells what to set', async () => {
  const box = Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic\0\0\0\x08mdat', 'latin1');
  await expect(decodePhoto(new Uint8Array(box), 'IMG.HEIC')).rejects.toMatchObject({
    code: 'photo-heic',
    message: expect.stringMatching(/camera settings choose JPEG/) as string,
  });
});

test('when a picture has fewer than 300 pixels one way, it is refused', async () => {
  const narrow = new Uint8Array(await testPicture(testPixels(299, 900)).png().toBuffer());
  await expect(decodePhoto(narrow, 'narrow.png')).rejects.toMatchObject({ code: 'photo-too-small' });
  const enough = new Uint8Array(await testPicture(testPixels(300, 300)).png().toBuffer());
  await expect(decodePhoto(enough, 'enough.png')).resolves.toMatchObject({ width: 300, height: 300 });
});

/** More than reading a header takes, far less than the pixels that it promises: 10.8 GB. */
const HEADER_MEMORY = 100e6;

test.each([
  ['PNG', pngClaiming],
  ['JPEG', jpegClaiming],
])(
  'when the header of a %s promises 60,000 × 60,000 pixels, it is refused by that alone',
  async (_, make) => {
    const bytes = await make(60_000);
    const before = process.memoryUsage().rss;
    await expect(decodePhoto(bytes, 'bomb')).rejects.toMatchObject({
      code: 'photo-too-many-pixels',
      params: { width: 60_000, height: 60_000, megapixels: 3600 },
    });
    expect(process.memoryUsage().rss - before).toBeLessThan(HEADER_MEMORY);
  },
);

test('when a picture has just over 100 megapixels, it is refused', async () => {
  const just = await jpegClaiming(10_001);
  await expect(photoMegapixels(just, 'large.jpg')).rejects.toMatchObject({ code: 'photo-too-many-pixels' });
  expect(await photoMegapixels(await jpegClaiming(10_000), 'large.jpg')).toBe(100);
});

/** A small JPEG whose frame header (ITU T.81, B.2.2) promises another size. */
async function jpegClaiming(sidePx: number): Promise<Uint8Array> {
  const jpeg = await testPicture().jpeg().toBuffer();
  for (let at = 2; ; at += 2 + jpeg.readUInt16BE(at + 2)) {
    if (jpeg[at + 1] !== 0xc0 && jpeg[at + 1] !== 0xc2) continue;
    jpeg.writeUInt16BE(sidePx, at + 5);
    jpeg.writeUInt16BE(sidePx, at + 7);
    return new Uint8Array(jpeg);
  }
}

/** A small PNG whose first chunk (W3C PNG, 11.2.2) promises another size, with the checksum that belongs to it. */
async function pngClaiming(sidePx: number): Promise<Uint8Array> {
  const png = await testPicture().png().toBuffer();
  png.writeUInt32BE(sidePx, 16);
  png.writeUInt32BE(sidePx, 20);
  png.writeUInt32BE(crc32(png.subarray(12, 29)), 29);
  return new Uint8Array(png);
}

/** W3C PNG, annex D, bit by bit. */
function crc32(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit++) rest = (rest >>> 1) ^ (rest & 1 ? 0xedb88320 : 0);
  }
  return (rest ^ 0xffffffff) >>> 0;
}
