import { closeSync, openSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { outsideProgram } from '../tools/outside.js';
import { readPbm } from './bitmap.js';

export const poppler = outsideProgram('pdftoppm');

const DPI = 600;

/** Makes a picture of each page, under a name and in an order that tell nothing; gives the names by page of the file. */
export function makePictures(pdf: string, pages: number, folder: string, seed: number): string[] {
  const numbers = shuffled(pages, seed);
  return numbers.map((number, page) => {
    const name = `picture-${String(number + 1).padStart(3, '0')}`;
    makePicture(pdf, page, join(folder, name), DPI);
    return name;
  });
}

/** Makes `${target}.pbm` of a page (from 0) of a file. */
export function makePicture(pdf: string, page: number, target: string, dpi = DPI): void {
  const one = ['-f', String(page + 1), '-l', String(page + 1), '-singlefile'];
  poppler.run(['-mono', '-r', String(dpi), ...one, pdf, target]);
}

/** Makes `${target}.pbm` of a page as a printer makes it that shrinks to a share: smaller, in the middle of the same sheet. */
export function makeShrunkPicture(pdf: string, page: number, target: string, share: number): void {
  makePicture(pdf, page, target);
  const whole = readPbm(`${target}.pbm`);
  makePicture(pdf, page, target, DPI * share);
  const small = readPbm(`${target}.pbm`);
  const sheet = new Uint8Array(whole.bits.length);
  // Whole bytes to the right, so that rows are copied as they are.
  const right = (whole.bytesPerRow - small.bytesPerRow) >> 1;
  const down = (whole.height - small.height) >> 1;
  for (let row = 0; row < small.height; row++) {
    const from = row * small.bytesPerRow;
    sheet.set(small.bits.subarray(from, from + small.bytesPerRow), (row + down) * whole.bytesPerRow + right);
  }
  const file = openSync(`${target}.pbm`, 'w');
  writeSync(file, `P4\n${whole.width} ${whole.height}\n`);
  writeSync(file, sheet);
  closeSync(file);
}

/** The numbers below `count` in an order drawn by a seed. */
export function shuffled(count: number, seed: number): number[] {
  const numbers = Array.from({ length: count }, (_, i) => i);
  const random = seededRandom(seed);
  for (let i = count - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [numbers[i], numbers[j]] = [numbers[j]!, numbers[i]!];
  }
  return numbers;
}

/** Numbers from 0 to 1, the same for the same seed: Lehmer's generator with the factor 48271 and the modulus 2³¹ − 1. */
export function seededRandom(seed: number): () => number {
  let state = (seed % 2147483646) + 1;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
