import type { UnplacedReason } from '@hidebound/geometry';
import type { CuttingStep, Hide, ThicknessRange } from '@hidebound/leather';

export type LengthUnit = 'mm' | 'in';

/** Half filled: the mirrored one of two. */
export const MIRRORED_SIGN = '◐';

const MM_PER_INCH = 25.4;
const MM2_PER_FT2 = 304.8 * 304.8;
const MM2_PER_DM2 = 1e4;
const MM2_PER_M2 = 1e6;

/** A length on the hide: whole mm, or inches to a tenth. */
export function lengthWords(mm: number, unit: LengthUnit): string {
  return unit === 'in' ? `${(mm / MM_PER_INCH).toFixed(1)} in` : `${Math.round(mm)} mm`;
}

/** Two lengths with one unit: "640 × 410 mm". */
export function sizeWords(a: number, b: number, unit: LengthUnit): string {
  const [long, short] = a >= b ? [a, b] : [b, a];
  return unit === 'in'
    ? `${(long / MM_PER_INCH).toFixed(1)} × ${(short / MM_PER_INCH).toFixed(1)} in`
    : `${Math.round(long)} × ${Math.round(short)} mm`;
}

/** "2.0–2.4 mm", with ounces of leather (1/64 in) behind where inches are wanted. */
export function thicknessWords(range: ThicknessRange, unit: LengthUnit): string {
  const span = (min: number, max: number, digits: number): string =>
    min === max ? min.toFixed(digits) : `${min.toFixed(digits)}–${max.toFixed(digits)}`;
  const mm = `${span(range.minMm, range.maxMm, 1)} mm`;
  if (unit === 'mm') return mm;
  const oz = (n: number): number => (n * 64) / MM_PER_INCH;
  return `${span(oz(range.minMm), oz(range.maxMm), 1)} oz (${mm})`;
}

/** The metric unit that suits an area: dm² below 1 m². */
export function areaUnit(mm2: number): 'm²' | 'dm²' {
  return mm2 >= MM2_PER_M2 ? 'm²' : 'dm²';
}

/** An area without its unit, in m², dm² or ft². */
export function areaFigure(mm2: number, unit: 'm²' | 'dm²' | 'ft²'): string {
  switch (unit) {
    case 'm²':
      return (mm2 / MM2_PER_M2).toFixed(3);
    case 'dm²':
      return (mm2 / MM2_PER_DM2).toFixed(1);
    case 'ft²':
      return (mm2 / MM2_PER_FT2).toFixed(2);
  }
}

/** A share as a percentage with one decimal. */
export function percentWords(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

/** "1 : 8.5, reduced; not a template", or "1 : 1, true scale". */
export function scaleWords(denominator: number): string {
  return denominator === 1 ? '1 : 1, true scale' : `1 : ${trimZeros(denominator)}, reduced; not a template`;
}

function trimZeros(n: number): string {
  return n.toFixed(2).replace(/\.?0+$/, '');
}

/** "side, veg tan, natural, 3.0–3.5 mm, lot 7". */
export function hideWords(hide: Hide, unit: LengthUnit): string {
  const { tannage, finish, colour, thickness } = hide.leather;
  return [
    hide.cut,
    tannage,
    finish,
    colour,
    thickness === undefined ? undefined : thicknessWords(thickness, unit),
    hide.lot === undefined ? undefined : lotWords(hide.lot),
  ]
    .filter((word) => word !== undefined && word !== '')
    .join(', ');
}

/** "lot 7", also where the lot's own name begins with the word. */
function lotWords(lot: string): string {
  return /^lot\b/i.test(lot) ? lot : `lot ${lot}`;
}

/** Why a piece was not laid, short enough for a list. */
export const UNPLACED_WORDS: Readonly<Record<UnplacedReason, string>> = {
  'larger-than-every-sheet': 'larger than every hide of its leather',
  'no-sheet-allowed': 'no hide of its leather in the order',
  'no-room': 'no room left',
  'no-leather-good-enough': 'no place good enough in looks, strength and zone',
  'direction-unknown': 'the hide does not show its direction',
  thickness: 'no hide of its thickness',
  'set-incomplete': 'its set could not be laid whole',
  'not-tried': 'not tried before the run was stopped',
};

/** What is done in a step of the cutting order. */
export function stepWords(step: CuttingStep): string {
  switch (step.kind) {
    case 'straight edge':
      return 'straight first cut';
    case 'lane':
      return `straps side by side${step.of === undefined ? '' : `, lane ${step.of}`}`;
    case 'rough cut':
      return `rough cut${step.of === undefined ? '' : ` ${step.of}`}`;
    case 'block':
      return 'block for the table';
    case 'piece':
      return 'piece';
  }
}
