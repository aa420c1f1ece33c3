import { describe, expect, test } from 'vitest';
import { BARE_HIDE, INK, INK_SOFT, MEANING_COLOURS, PAPER, PIECE } from './palette.js';

type Triple = readonly [number, number, number];

/** sRGB to linear light: IEC 61966-2-1. */
function linear(colour: string): Triple {
  const channel = (at: number): number => {
    const c = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
}

/** Relative luminance and contrast ratio as WCAG 2.2 defines them. */
function contrast(a: string, b: string): number {
  const luminance = (colour: string): number => {
    const [r, g, b] = linear(colour);
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high! + 0.05) / (low! + 0.05);
}

/**
 * Simulated dichromacy: matrices of full severity from Machado, Oliveira and Fernandes, "A physiologically-based model
 * for simulation of color vision deficiency", IEEE TVCG 15(6), 2009.
 */
const VISION: Readonly<Record<string, readonly Triple[]>> = {
  'usual sight': [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

/** CIE 1976 L*a*b* under D65 (CIE 15:2004), from linear sRGB. */
function lab([r, g, b]: Triple): Triple {
  const f = (t: number): number => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);
  const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
  const y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

function seen(colour: string, matrix: readonly Triple[]): Triple {
  const rgb = linear(colour);
  const [r, g, b] = matrix.map((row) =>
    Math.min(1, Math.max(0, row[0] * rgb[0] + row[1] * rgb[1] + row[2] * rgb[2])),
  );
  return lab([r!, g!, b!]);
}

/** Ten times the least difference that an eye sees side by side (about 2): apart even at a distance. */
const LEAST_DISTANCE = 20;

describe.each(Object.entries(VISION))('when seen with %s', (_, matrix) => {
  const named = Object.entries(MEANING_COLOURS);
  const pairs = named.flatMap(([a, colourA], i) =>
    named.slice(i + 1).map(([b, colourB]) => [a, b, colourA, colourB] as const),
  );
  test.each(pairs)('the colours of %s and %s can be told apart', (_a, _b, colourA, colourB) => {
    const a = seen(colourA, matrix);
    const b = seen(colourB, matrix);
    expect(Math.sqrt(a.reduce((sum, each, i) => sum + (each - b[i]!) ** 2, 0))).toBeGreaterThan(
      LEAST_DISTANCE,
    );
  });
});

test('when text is printed in grey, its contrast is at least 4.5 to 1 on every ground', () => {
  for (const ink of [INK, INK_SOFT]) {
    for (const ground of [PAPER, BARE_HIDE, PIECE]) expect(contrast(ink, ground)).toBeGreaterThanOrEqual(4.5);
  }
});

test('when black stands on white, the contrast formula gives 21', () => {
  // WCAG 2.2, definition of contrast ratio: the greatest there is.
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
});
