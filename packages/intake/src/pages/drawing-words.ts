import type { Box, Point } from '@hidebound/geometry';
import type { DrawnText } from '../drawing/drawn-line.js';
import type { Figure } from './figures.js';
import { LABEL_REACH_MM } from './limits.js';
import { boxMiddle, isInBox, minus } from './vectors.js';

/** Words of one overlap stand at the same place on both pages, to within this, mm. */
const TWICE_MM = 2;

/** Names of equal pieces are of one size and run one way, to this share and so many degrees; a page's own words are not like them. */
const LIKE_SIZE_SHARE = 0.1;
const LIKE_ANGLE_DEG = 1;

/** Pages with more texts hold instructions or loose letters, which name no pieces and would take long to compare. */
const MAX_WORDS = 200;

/** Texts of a page that belong to the drawing and not to the paper, such as names of pieces. */
export function drawingWords(
  texts: readonly DrawnText[],
  window: Box,
  figures: readonly Figure[],
  isRepeated: (text: DrawnText) => boolean,
): readonly DrawnText[] {
  if (texts.length > MAX_WORDS) return [];
  return texts.filter((text) => isInBox(text.at, window) && !isRepeated(text) && !isLabel(text, figures));
}

/** The label of a mark that other pages have too. */
export function isLabel({ text, at }: DrawnText, figures: readonly Figure[]): boolean {
  return figures.some(
    ({ label, box }) =>
      label === text.trim() && isNear(at, boxMiddle(box), LABEL_REACH_MM + box.maxX - box.minX),
  );
}

/** Words at one place of two pages. */
export interface SharedWords {
  /** The same ones, which either page has once only. */
  readonly twins: number;
  /** Others, which one drawing can't have. */
  readonly clashes: number;
}

/** What the words of two pages say of the second one's frame being shifted so against the first's; `shared` is in the first's frame. */
export function sharedWords(
  a: readonly DrawnText[],
  b: readonly DrawnText[],
  shared: Box,
  shift: Point,
): SharedWords {
  let [twins, clashes] = [0, 0];
  for (const text of a) {
    if (!isInBox(text.at, shared)) continue;
    const moved = { ...text, at: minus(text.at, shift) };
    if (b.some((other) => isTwin(moved, other))) {
      if (isOnce(text, a) && isOnce(text, b)) twins++;
    } else if (b.some((other) => isInItsPlace(moved, other))) clashes++;
  }
  return { twins, clashes };
}

/** The words that the page has once only, by what they say. */
export function wordsOnce(words: readonly DrawnText[]): ReadonlyMap<string, DrawnText> {
  const once = new Map<string, DrawnText>();
  const more = new Set<string>();
  for (const text of words) {
    if (once.has(text.text)) more.add(text.text);
    once.set(text.text, text);
  }
  for (const text of more) once.delete(text);
  return once;
}

function isOnce({ text }: DrawnText, words: readonly DrawnText[]): boolean {
  return words.filter((other) => other.text === text).length === 1;
}

/** One text seen twice; an edge of the page may have cut off letters of one of the two. */
export function isTwin(a: DrawnText, b: DrawnText): boolean {
  const [long, short] = a.text.length >= b.text.length ? [a.text, b.text] : [b.text, a.text];
  return long.startsWith(short) && isNear(a.at, b.at, TWICE_MM);
}

/** Other words where these should be, written alike. */
function isInItsPlace(a: DrawnText, b: DrawnText): boolean {
  if (!isNear(a.at, b.at, TWICE_MM)) return false;
  if (a.angleDeg !== undefined && b.angleDeg !== undefined && !isLikeAngle(a.angleDeg, b.angleDeg))
    return false;
  if (a.sizeMm === undefined || b.sizeMm === undefined) return true;
  return Math.abs(a.sizeMm - b.sizeMm) <= LIKE_SIZE_SHARE * Math.max(a.sizeMm, b.sizeMm);
}

function isLikeAngle(a: number, b: number): boolean {
  const off = Math.abs(a - b) % 360;
  return Math.min(off, 360 - off) <= LIKE_ANGLE_DEG;
}

function isNear(a: Point, b: Point, by: number): boolean {
  return Math.abs(a.x - b.x) <= by && Math.abs(a.y - b.y) <= by;
}
