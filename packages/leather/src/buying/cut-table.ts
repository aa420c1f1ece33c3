import type { CutSizeRule, GradeRule, Span } from '../model/workshop-rules.js';
import { parseAreaSpanMm2 } from '../units/area-span.js';

function feet(min: number, max: number): Span {
  return parseAreaSpanMm2(`${min.toFixed(2)}-${max.toFixed(2)} ft2`);
}

/** Sizes in which cuts and skins are sold. */
export const DEFAULT_CUTS: readonly CutSizeRule[] = [
  {
    name: 'side',
    cut: 'side',
    areaMm2: feet(18, 26),
    lengthMm: { min: 2100, max: 2500 },
    widthMm: { min: 900, max: 1200 },
    source: 'craft suppliers’ size pages (18–22, 21–26 ft²; 7 ft and longer, 3–4 ft deep)',
  },
  {
    name: 'double shoulder',
    cut: 'double shoulder',
    areaMm2: feet(11, 15),
    lengthMm: { min: 800, max: 900 },
    widthMm: { min: 1300, max: 1500 },
    source: 'area: US supplier’s cuts page; lengths from memory',
  },
  {
    name: 'bend',
    cut: 'bend',
    areaMm2: feet(11, 15),
    lengthMm: { min: 1400, max: 1600 },
    widthMm: { min: 700, max: 850 },
    source: 'area: craft supplier’s cuts list; lengths from memory',
  },
];

/** Shares of a hide that are free of flaws, by grade. */
export const DEFAULT_GRADES: readonly GradeRule[] = [
  {
    grade: 'A',
    usableShare: { min: 0.951, max: 1 },
    source: 'SATRA Bulletin, five-point system (A 95.1–100 %)',
  },
  {
    grade: 'B',
    usableShare: { min: 0.901, max: 0.95 },
    source: 'SATRA Bulletin, five-point system (B 90.1–95 %)',
  },
  {
    grade: 'C',
    usableShare: { min: 0.851, max: 0.9 },
    source: 'SATRA Bulletin, five-point system (C 85.1–90 %)',
  },
];
