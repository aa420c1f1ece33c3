import type { StraightPicture } from '../straight/straight-picture.js';

/** The picture at a whole fraction of its scale, no finer than asked; each pixel is the mean of those it stands for. */
export function reducePicture(picture: StraightPicture, mostPxPerMm: number): StraightPicture {
  const by = Math.max(1, Math.round(picture.pxPerMm / mostPxPerMm));
  if (by === 1) return picture;
  const width = Math.floor(picture.width / by);
  const height = Math.floor(picture.height / by);
  const rgb = new Uint8Array(width * height * 3);
  const seen = new Uint8Array(width * height);
  const sums = new Float64Array(width * 3);
  const unseen = new Uint8Array(width);
  for (let y = 0; y < height; y++) {
    sums.fill(0);
    unseen.fill(0);
    for (let row = y * by; row < (y + 1) * by; row++) {
      let from = row * picture.width;
      for (let x = 0; x < width; x++) {
        for (let k = 0; k < by; k++, from++) {
          sums[3 * x]! += picture.rgb[3 * from]!;
          sums[3 * x + 1]! += picture.rgb[3 * from + 1]!;
          sums[3 * x + 2]! += picture.rgb[3 * from + 2]!;
          if (picture.seen[from] === 0) unseen[x] = 1;
        }
      }
    }
    for (let i = 0; i < 3 * width; i++) rgb[y * width * 3 + i] = Math.round(sums[i]! / (by * by));
    for (let x = 0; x < width; x++) seen[y * width + x] = unseen[x] === 1 ? 0 : 255;
  }
  return { width, height, rgb, seen, pxPerMm: picture.pxPerMm / by, origin: picture.origin };
}
