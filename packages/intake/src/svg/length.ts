import { MM_PER_INCH, PX_PER_INCH } from '../limits.js';

/** What lengths are measured against: the nearest viewport in its own units, the font size, and the px of this file. */
export interface LengthFrame {
  readonly width: number;
  readonly height: number;
  readonly fontSize: number;
  /** px to the inch: 96 by the standard. */
  readonly pxPerInch: number;
}

export type LengthAxis = 'x' | 'y' | 'other';

/** mm of each absolute unit (CSS Values 4, section 6.2); an inch is 25.4 mm by international agreement. */
const MM_OF: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: MM_PER_INCH,
  pt: MM_PER_INCH / 72,
  pc: MM_PER_INCH / 6,
};

/** CSS: "medium" at most user agents; SVG files that rely on it are rare. */
export const DEFAULT_FONT_SIZE = 16;

export interface WrittenLength {
  readonly value: number;
  /** In small letters; empty for a bare number. */
  readonly unit: string;
}

/** "12.5mm" → 12.5 and "mm"; nothing if it isn't a number with an optional unit. */
export function splitLength(text: string): WrittenLength | undefined {
  const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(%|[a-z]*)\s*$/i.exec(text);
  return match === null ? undefined : { value: Number(match[1]), unit: match[2]!.toLowerCase() };
}

/** True for a unit that has a size of its own, whatever a px is. */
export function isPhysicalUnit(unit: string): boolean {
  return Object.hasOwn(MM_OF, unit);
}

/** A length in user units (px), or nothing if it can't be read. Percentages: SVG 2, section 8.9. */
export function resolveLength(text: string, frame: LengthFrame, axis: LengthAxis): number | undefined {
  const length = splitLength(text);
  if (length === undefined) return undefined;
  const { value, unit } = length;
  switch (unit) {
    case '':
    case 'px':
      return value;
    case '%':
      return (value / 100) * percentBase(frame, axis);
    case 'em':
      return value * frame.fontSize;
    case 'rem':
      return value * DEFAULT_FONT_SIZE;
    case 'ex':
    case 'ch':
      return (value * frame.fontSize) / 2;
    default:
      return isPhysicalUnit(unit) ? (value * MM_OF[unit]! * frame.pxPerInch) / MM_PER_INCH : undefined;
  }
}

function percentBase(frame: LengthFrame, axis: LengthAxis): number {
  if (axis === 'x') return frame.width;
  if (axis === 'y') return frame.height;
  return Math.sqrt((frame.width * frame.width + frame.height * frame.height) / 2);
}

/** A frame in which only units with a size of their own, px and em mean anything. */
export function plainFrame(pxPerInch: number = PX_PER_INCH): LengthFrame {
  return { width: 0, height: 0, fontSize: DEFAULT_FONT_SIZE, pxPerInch };
}
