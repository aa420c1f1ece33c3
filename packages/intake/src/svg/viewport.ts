import type { Affine } from '@hidebound/geometry';

export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Four numbers with width and height above 0, else nothing (SVG 2, section 8.6). */
export function parseViewBox(text: string | undefined): ViewBox | undefined {
  if (text === undefined) return undefined;
  const numbers = text
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [x, y, width, height] = numbers;
  if (numbers.length !== 4 || numbers.some((n) => !Number.isFinite(n))) return undefined;
  return width! > 0 && height! > 0 ? { x: x!, y: y!, width: width!, height: height! } : undefined;
}

/** Shares of the spare room that go before the drawing, by the words of `preserveAspectRatio`. */
const SHARES: Readonly<Record<string, number>> = { min: 0, mid: 0.5, max: 1 };

/**
 * Takes the view box's units to a viewport of the given size at (0, 0) (SVG 2, section 8.2). What
 * `preserveAspectRatio` can't say is taken as `xMidYMid meet`, its default.
 */
export function viewBoxTransform(
  box: ViewBox,
  size: { readonly width: number; readonly height: number },
  preserveAspectRatio: string | undefined,
): Affine {
  const sx = size.width / box.width;
  const sy = size.height / box.height;
  const text = (preserveAspectRatio ?? '').trim();
  if (/^(defer\s+)?none\b/.test(text)) {
    return { a: sx, b: 0, c: 0, d: sy, e: -box.x * sx, f: -box.y * sy };
  }
  const match = /^(?:defer\s+)?x(Min|Mid|Max)Y(Min|Mid|Max)(?:\s+(meet|slice))?$/.exec(text);
  const [, alignX = 'Mid', alignY = 'Mid', fit = 'meet'] = match ?? [];
  const scale = fit === 'slice' ? Math.max(sx, sy) : Math.min(sx, sy);
  const spareX = (size.width - box.width * scale) * SHARES[alignX.toLowerCase()]!;
  const spareY = (size.height - box.height * scale) * SHARES[alignY.toLowerCase()]!;
  return { a: scale, b: 0, c: 0, d: scale, e: spareX - box.x * scale, f: spareY - box.y * scale };
}
