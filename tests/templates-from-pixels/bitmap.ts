import { readFileSync } from 'node:fs';

/** A picture in pure black and white, eight pixels a byte, the leftmost in the highest bit; 1 is black. */
export interface Bitmap {
  readonly width: number;
  readonly height: number;
  readonly bytesPerRow: number;
  readonly bits: Uint8Array;
}

/** A point, in pixels or mm as said where it is used; y points down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Reads a binary PBM file (type P4). */
export function readPbm(file: string): Bitmap {
  const bytes = readFileSync(file);
  const header = /^P4\s+(\d+)\s+(\d+)\s/.exec(bytes.subarray(0, 64).toString('latin1'));
  if (header === null) throw new Error(`${file} is not a binary PBM file.`);
  const [width, height] = [Number(header[1]), Number(header[2])];
  return { width, height, bytesPerRow: (width + 7) >> 3, bits: bytes.subarray(header[0].length) };
}

/** Whether the pixel that holds this place is black; outside the picture all is white. */
export function isBlack(bitmap: Bitmap, x: number, y: number): boolean {
  const column = Math.floor(x);
  const row = Math.floor(y);
  if (column < 0 || row < 0 || column >= bitmap.width || row >= bitmap.height) return false;
  return ((bitmap.bits[row * bitmap.bytesPerRow + (column >> 3)]! >> (7 - (column & 7))) & 1) === 1;
}

/** Resolution of all pictures. */
export const PX_PER_MM = 600 / 25.4;

/** Pixels to mm, as if the picture had been printed and measured with a true rule. */
export function toMm(px: Point): Point {
  return { x: px.x / PX_PER_MM, y: px.y / PX_PER_MM };
}

export function toPx(mm: Point): Point {
  return { x: mm.x * PX_PER_MM, y: mm.y * PX_PER_MM };
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
