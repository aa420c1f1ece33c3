import type { Ring } from '@hidebound/geometry';

/**
 * A mask of the pixels whose middle lies within the rings, 255 within and 0 without. Rings in pixels from the picture's
 * top left corner (the first pixel's middle is 0.5, 0.5). `even-odd` leaves openings open, `any` fills every ring.
 */
export function fillRings(
  rings: readonly Ring[],
  width: number,
  height: number,
  rule: 'even-odd' | 'any',
): Uint8Array {
  const mask = new Uint8Array(width * height);
  if (rule === 'even-odd') fillTogether(rings, mask, width, height);
  else for (const ring of rings) fillTogether([ring], mask, width, height);
  return mask;
}

function fillTogether(rings: readonly Ring[], mask: Uint8Array, width: number, height: number): void {
  const rows = crossingsByRow(rings, height);
  rows.forEach((crossings, j) => {
    if (crossings === undefined) return;
    crossings.sort((one, other) => one - other);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const from = Math.max(0, Math.ceil(crossings[k]! - 0.5));
      const to = Math.min(width, Math.ceil(crossings[k + 1]! - 0.5));
      if (to > from) mask.fill(255, j * width + from, j * width + to);
    }
  });
}

/** Where the rings cross the middle of each row of pixels. */
function crossingsByRow(rings: readonly Ring[], height: number): (number[] | undefined)[] {
  const rows: (number[] | undefined)[] = Array.from({ length: height }, () => undefined);
  for (const ring of rings) {
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      const [high, low] = a.y <= b.y ? [a, b] : [b, a];
      const first = Math.max(0, Math.ceil(high.y - 0.5));
      const last = Math.min(height, Math.ceil(low.y - 0.5));
      for (let j = first; j < last; j++) {
        const share = (j + 0.5 - high.y) / (low.y - high.y);
        (rows[j] ??= []).push(high.x + share * (low.x - high.x));
      }
    });
  }
  return rows;
}
