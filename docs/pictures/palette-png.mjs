import { deflateSync } from 'node:zlib';

/** Colours are counted in steps of so many, so that near alike ones count as one. */
const STEP = 8;

/**
 * A picture as a PNG file with a palette (ISO/IEC 15948, colour type 3), which for drawings is a fraction of the size
 * of one in full colours. `image.pixels` holds red, green, blue and opacity of each pixel; everything is opaque.
 */
export function writePalettePng({ width, height, pixels }, mostColours) {
  const palette = commonColours(pixels, mostColours);
  const nearest = new Map();
  const rows = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y++) {
    // Each row begins with its filter; 0 leaves it as it is.
    for (let x = 0; x < width; x++) {
      const at = 4 * (y * width + x);
      const colour = (pixels[at] << 16) | (pixels[at + 1] << 8) | pixels[at + 2];
      let index = nearest.get(colour);
      if (index === undefined) {
        index = nearestIndex(palette, colour);
        nearest.set(colour, index);
      }
      rows[y * (width + 1) + 1 + x] = index;
    }
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  // 8 bits a pixel, colours from the palette.
  header.set([8, 3, 0, 0, 0], 8);
  const colours = Buffer.from(palette.flatMap((colour) => channels(colour)));
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('PLTE', colours),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** The colours that occur most, each the most common one of its step. */
function commonColours(pixels, most) {
  const exact = new Map();
  for (let at = 0; at < pixels.length; at += 4) {
    const colour = (pixels[at] << 16) | (pixels[at + 1] << 8) | pixels[at + 2];
    exact.set(colour, (exact.get(colour) ?? 0) + 1);
  }
  const steps = new Map();
  for (const [colour, count] of exact) {
    const key = channels(colour)
      .map((each) => Math.floor(each / STEP))
      .join();
    const known = steps.get(key) ?? { colour, most: 0, count: 0 };
    if (count > known.most) Object.assign(known, { colour, most: count });
    known.count += count;
    steps.set(key, known);
  }
  return [...steps.values()]
    .sort((a, b) => b.count - a.count || a.colour - b.colour)
    .slice(0, most)
    .map((each) => each.colour);
}

function nearestIndex(palette, colour) {
  const [r, g, b] = channels(colour);
  let best = 0;
  let bestSq = Infinity;
  palette.forEach((each, i) => {
    const [r2, g2, b2] = channels(each);
    const distanceSq = (r - r2) ** 2 + (g - g2) ** 2 + (b - b2) ** 2;
    if (distanceSq < bestSq) [best, bestSq] = [i, distanceSq];
  });
  return best;
}

function channels(colour) {
  return [colour >> 16, (colour >> 8) & 255, colour & 255];
}

function chunk(name, data) {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}

/** CRC-32 as PNG asks for it, bit by bit: a picture is small. */
function crc32(bytes) {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}
