/** A picture in shades of grey, 0 black to 255 white, row by row. */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

/** Reads a binary PGM file (type P5) of 8 bits. */
export function readPgm(pgm: Buffer): GreyPicture {
  const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 64).toString('latin1'))!;
  return {
    width: Number(header[1]),
    height: Number(header[2]),
    pixels: new Uint8Array(pgm.subarray(header[0].length)),
  };
}

interface BoxMm {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The outer edges of all that is dark within a part of the picture; all in mm. */
export function darkBox(picture: GreyPicture, within: BoxMm, pxPerMm: number): BoxMm {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  const lastRow = Math.min(picture.height, Math.ceil(within.maxY * pxPerMm));
  const lastColumn = Math.min(picture.width, Math.ceil(within.maxX * pxPerMm));
  for (let y = Math.floor(within.minY * pxPerMm); y < lastRow; y++) {
    for (let x = Math.floor(within.minX * pxPerMm); x < lastColumn; x++) {
      if (picture.pixels[y * picture.width + x]! >= DARK_BELOW) continue;
      minX = Math.min(minX, x);
      maxX = Math.max(maxX, x + 1);
      minY = Math.min(minY, y);
      maxY = Math.max(maxY, y + 1);
    }
  }
  return { minX: minX / pxPerMm, minY: minY / pxPerMm, maxX: maxX / pxPerMm, maxY: maxY / pxPerMm };
}

const DARK_BELOW = 128;
