import { roundPoint } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import type { DrawnText } from '../drawing/drawn-line.js';
import type { Cells } from './cells.js';
import { LABEL_REACH_MM, SAME_PLACE_MM } from './limits.js';
import type { PageFacts } from './page-facts.js';
import type { Places } from './arrangement.js';
import { boxMiddle, isInBox, moveBox, plus } from './vectors.js';

/** Words of one overlap stand at the same place on both pages, to within this, mm. */
const TWICE_MM = 2;

/** Texts longer than this are no page numbers. */
const PAGE_NUMBER_LETTERS = 16;

/** The texts of all pages in the whole's frame, each once, and how many belong to the paper. */
export function textsOfWhole(
  facts: readonly PageFacts[],
  places: Places,
  cells: Cells,
): { readonly texts: DrawnText[]; readonly furniture: number } {
  const repeated = repeatedTexts(facts);
  const texts: DrawnText[] = [];
  const early: DrawnText[] = [];
  const late: DrawnText[] = [];
  const beside: DrawnText[] = [];
  let furniture = 0;
  for (const [page, place] of places) {
    const own = facts[page]!;
    const window = moveBox(own.window, place);
    for (const text of own.page.texts) {
      const at = roundPoint(plus(text.at, place));
      if (repeated.has(text) || isLabel(text, own)) furniture++;
      else if (!isInBox(at, window, TWICE_MM)) beside.push({ ...text, at });
      else if (cells.boxes.get(page)!.some((box) => isInBox(at, box))) early.push({ ...text, at });
      else late.push({ ...text, at });
    }
  }
  for (const text of [...early, ...late]) if (!completesTwin(text, texts)) texts.push(text);
  // What begins in the margin is the paper's own, unless it is the whole of what a neighbour shows the beginning of.
  for (const text of beside) if (!completesTwin(text, texts)) furniture++;
  return { texts, furniture };
}

/** Whether the text is there already; an edge of the page may have cut off letters of one of the two. */
function completesTwin(text: DrawnText, texts: DrawnText[]): boolean {
  const twin = texts.findIndex((other) => isTwin(text, other));
  if (twin >= 0 && text.text.length > texts[twin]!.text.length) texts[twin] = text;
  return twin >= 0;
}

function isTwin(a: DrawnText, b: DrawnText): boolean {
  const [long, short] = a.text.length >= b.text.length ? [a.text, b.text] : [b.text, a.text];
  return (
    long.startsWith(short) && Math.abs(a.at.x - b.at.x) <= TWICE_MM && Math.abs(a.at.y - b.at.y) <= TWICE_MM
  );
}

/** The label of a mark that other pages have too. */
function isLabel({ text, at }: DrawnText, { figures }: PageFacts): boolean {
  return figures.some(
    ({ label, box }) =>
      label === text.trim() && isNear(at, boxMiddle(box), LABEL_REACH_MM + box.maxX - box.minX),
  );
}

function isNear(a: Point, b: Point, by: number): boolean {
  return Math.abs(a.x - b.x) <= by && Math.abs(a.y - b.y) <= by;
}

/** Texts at one place of several pages that differ in their numbers at most, such as page numbers. */
function repeatedTexts(facts: readonly PageFacts[]): Set<DrawnText> {
  const groups = new Map<string, DrawnText[]>();
  for (const { page } of facts) {
    for (const text of page.texts) {
      const isShort = text.text.length <= PAGE_NUMBER_LETTERS;
      const words = isShort ? text.text.replace(/\d+|\b[A-Z]\d*\b/g, '0') : text.text;
      const cell = (n: number) => Math.round(n / (2 * SAME_PLACE_MM));
      const key = `${words}@${cell(text.at.x)},${cell(text.at.y)}`;
      const list = groups.get(key);
      if (list === undefined) groups.set(key, [text]);
      else list.push(text);
    }
  }
  return new Set([...groups.values()].filter((list) => list.length >= 2).flat());
}
