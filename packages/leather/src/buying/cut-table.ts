import type { CutSizeRule, GradeRule, Span } from '../model/workshop-rules.js';
import { parseAreaSpanMm2 } from '../units/area-span.js';
import { shareOfPercent } from '../units/percent.js';

const LENGTHS_MEMORY = 'lengths from memory, widened to agree with the area';
const SUPPLIER = 'craft supplier’s cuts list';

/** Areas are sold in square feet. */
function feet(min: number, max: number): Span {
  return parseAreaSpanMm2(`${min.toFixed(2)}-${max.toFixed(2)} ft2`);
}

function row(
  name: string,
  cut: CutSizeRule['cut'],
  areaMm2: Span,
  length: readonly [number, number],
  width: readonly [number, number],
  source: string,
): CutSizeRule {
  return {
    name,
    cut,
    areaMm2,
    lengthMm: { min: length[0], max: length[1] },
    widthMm: { min: width[0], max: width[1] },
    source,
  };
}

/** Cuts of cattle hides, and whole skins of other animals, as they are sold. Lengths run along the backbone. */
export const DEFAULT_CUTS: readonly CutSizeRule[] = [
  row(
    'whole hide',
    'whole hide',
    feet(45, 55),
    [2300, 2800],
    [2100, 2600],
    'upholstery and craft suppliers’ size pages (45–55 ft² usual, 35–70 seen; about 8½ × 8 ft)',
  ),
  row(
    'side',
    'side',
    feet(18, 26),
    [2100, 2600],
    [900, 1250],
    'craft suppliers’ size pages (18–22, 21–26 ft²; 7 ft and longer, about 3–4 ft deep)',
  ),
  row(
    'back',
    'back',
    feet(15, 18),
    [1950, 2300],
    [700, 850],
    'area: craft supplier’s size page; length about 2 m: hide merchant’s page; depth from memory, widened to agree',
  ),
  row('bend', 'bend', feet(11, 15), [1400, 1700], [700, 900], `area: ${SUPPLIER}; ${LENGTHS_MEMORY}`),
  row(
    'butt',
    'butt',
    feet(16, 24),
    [1250, 1600],
    [1250, 1600],
    'one measured butt of 1400 × 1400 mm (21 ft²) from a belt maker’s page; range from memory',
  ),
  row(
    'double bend',
    'butt',
    feet(22, 26),
    [1450, 1800],
    [1350, 1600],
    `area: ${SUPPLIER}; lengths from memory`,
  ),
  row('shoulder', 'shoulder', feet(7, 12), [850, 1200], [850, 1250], `area: ${SUPPLIER}; ${LENGTHS_MEMORY}`),
  row(
    'double shoulder',
    'double shoulder',
    feet(11, 15),
    [850, 1100],
    [1400, 1900],
    `area: ${SUPPLIER} and a US supplier’s cuts page; ${LENGTHS_MEMORY}; legs measured with it`,
  ),
  row(
    'belly',
    'belly',
    feet(4, 8),
    [1500, 2100],
    [300, 600],
    `area: craft supplier’s size page; ${LENGTHS_MEMORY}; legs measured with it`,
  ),
  row(
    'kip',
    'whole hide',
    feet(9, 17),
    [1150, 1700],
    [950, 1450],
    'area: craft supplier’s size page; lengths from memory',
  ),
  row(
    'calf skin',
    'whole hide',
    feet(8, 10),
    [1100, 1350],
    [900, 1150],
    'area: fur and hide supplier’s page (baby calf 8–10 ft²); lengths from memory',
  ),
  row(
    'calf side',
    'side',
    feet(12, 14),
    [1650, 2000],
    [750, 1000],
    'area: fur and hide supplier’s page (half hide of calf 12–14 ft²); lengths from memory',
  ),
  row(
    'upholstery calf',
    'whole hide',
    feet(25, 30),
    [1900, 2300],
    [1650, 2000],
    'area: hide supplier’s page (25–30 ft²); lengths from memory',
  ),
  row(
    'goat skin',
    'whole hide',
    feet(4, 7),
    [850, 1150],
    [600, 900],
    `area from memory; ${LENGTHS_MEMORY}; legs measured with it`,
  ),
  row(
    'sheep skin',
    'whole hide',
    feet(5, 9),
    [900, 1250],
    [700, 1000],
    `area from memory; ${LENGTHS_MEMORY}; legs measured with it`,
  ),
  row('pig skin', 'whole hide', feet(8, 14), [1050, 1450], [900, 1250], 'from memory'),
  row(
    'deer skin',
    'whole hide',
    feet(7, 12),
    [1200, 1600],
    [900, 1300],
    'from memory; legs measured with it',
  ),
  row(
    'horse butt',
    'butt',
    feet(6, 9),
    [550, 750],
    [1150, 1500],
    'area: specialist supplier’s page (pairs 6–9 ft²); lengths from memory',
  ),
];

function share(grade: string, min: number, max: number, source: string): GradeRule {
  return { grade, usableShare: { min: shareOfPercent(min), max: shareOfPercent(max) }, source };
}

const FIVE_POINT = 'bulletin of a footwear research body, five-point system';

/**
 * Shares of a hide that are free of flaws, by grade. There is no single legal grade: A to F are the five-point system;
 * rows of other systems have names of their own.
 */
export const DEFAULT_GRADES: readonly GradeRule[] = [
  share('A', 95.1, 100, `${FIVE_POINT} (A 95.1–100 %, reckoned as 97)`),
  share('B', 90.1, 95, `${FIVE_POINT} (B 90.1–95 %, reckoned as 93)`),
  share('C', 85.1, 90, `${FIVE_POINT} (C 85.1–90 %, reckoned as 88)`),
  share('D', 80.1, 85, `${FIVE_POINT} (D 80.1–85 %, reckoned as 83)`),
  share('E', 75.1, 80, `${FIVE_POINT} (E 75.1–80 %, reckoned as 78)`),
  share('F', 70, 75, `${FIVE_POINT} (F 70–75 %, reckoned as 73)`),
  share('belt leather A', 90, 100, 'belt-leather trade page (at most 5 % damaged, at least 90 % usable)'),
  share('belt leather B', 80, 90, 'belt-leather trade page (at most 10 % damaged, at least 80 % usable)'),
  share('belt leather C', 70, 80, 'belt-leather trade page (at most 15 % damaged, at least 70 % usable)'),
];
