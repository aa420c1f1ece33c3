import { atan2Deg } from '@hidebound/geometry';
import type { Affine } from '@hidebound/geometry';
import type { BaseLine, FlawBeside, Measure, PieceSetting } from '@hidebound/leather';

/** A minus as wide as a plus: a hyphen is lost at arm's length. */
const MINUS = '−';

/** A measure in mm: always one decimal, so that columns stand in line. */
export function mmWords(mm: number): string {
  return `${mm < 0 ? MINUS : ''}${Math.abs(mm).toFixed(1)}`;
}

/** True if pieces lie on both sides of the line, so that outs are left or right of it. */
export function hasTwoSides({ kind }: BaseLine): boolean {
  return kind === 'backbone' || kind === 'long axis';
}

/** How outs are written: with a minus beyond a line at the edge, to the left (L) or right (R) of one in the middle. */
export interface OutWriting {
  readonly twoSided: boolean;
  readonly isMirrored: boolean;
}

export function outWords({ outMm }: Pick<Measure, 'outMm'>, { twoSided, isMirrored }: OutWriting): string {
  if (!twoSided || outMm === 0) return mmWords(outMm);
  return `${outMm > 0 === isMirrored ? 'L' : 'R'} ${mmWords(Math.abs(outMm))}`;
}

/** The turn of an arrow against the line: "0.0°", "↻ 12.5°" (clockwise), "↺ 90.0°". */
export function turnWords(turnDeg: number, isMirrored: boolean): string {
  const size = `${Math.abs(turnDeg).toFixed(1)}°`;
  if (turnDeg === 0 || turnDeg === 180) return size;
  return `${turnDeg > 0 === isMirrored ? '↺' : '↻'} ${size}`;
}

/** A size in mm, without needless decimals. */
export function sizeMm(mm: number): string {
  return mm.toFixed(1).replace(/\.0$/, '');
}

/** "cut 12 × 62", "disc Ø 28"; nothing of a card. */
export function byWords({ by }: PieceSetting): string | undefined {
  switch (by.kind) {
    case 'card':
      return undefined;
    case 'rectangle':
      return `cut ${sizeMm(by.widthMm)} × ${sizeMm(by.lengthMm)}`;
    case 'disc':
      return `disc Ø ${sizeMm(by.diameterMm)}`;
  }
}

/** "over 2 stains; scar 12 mm to its left": sides as on the picture, those that the piece lies over first. */
export function flawWords(flaws: readonly FlawBeside[], toDrawing: Affine): string[] {
  const over = new Map<string, number>();
  for (const flaw of flaws) {
    if (flaw.towards === undefined) over.set(nameOf(flaw), (over.get(nameOf(flaw)) ?? 0) + 1);
  }
  return [
    ...[...over].map(([name, count]) => `over ${count > 1 ? `${count} × ` : 'a '}${name}`),
    ...flaws.flatMap((flaw) => {
      if (flaw.towards === undefined) return [];
      const { x, y } = flaw.towards;
      const deg = atan2Deg(toDrawing.b * x + toDrawing.d * y, toDrawing.a * x + toDrawing.c * y);
      return [`${nameOf(flaw)} ${Math.max(1, flaw.distanceMm)} mm ${sideWords(deg)}`];
    }),
  ];
}

/** No kind begins with a vowel. */
function nameOf({ kind, side }: FlawBeside): string {
  return `${kind ?? 'mark'}${side === 'flesh' ? ' (flesh side)' : ''}`;
}

/** The side that an angle on the picture points to, clockwise from the right. */
function sideWords(deg: number): string {
  const quarter = (Math.round(deg / 90) + 4) % 4;
  return ['to its right', 'below it', 'to its left', 'above it'][quarter]!;
}

/** The corners of a rough cut: "39a", "39b", …, "39aa". */
export function cornerName(number: number, index: number): string {
  return `${number}${letters(index)}`;
}

function letters(index: number): string {
  const letter = String.fromCharCode(97 + (index % 26));
  return index < 26 ? letter : letters(Math.floor(index / 26) - 1) + letter;
}
