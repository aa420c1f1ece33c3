import { roundPoint } from '@hidebound/geometry';
import type { DrawnText } from '../drawing/drawn-line.js';
import type { Cells } from './cells.js';
import { isLabel, isTwin } from './drawing-words.js';
import { SAME_PLACE_MM } from './limits.js';
import type { PatternPage } from './page.js';
import type { PageFacts } from './page-facts.js';
import type { Places } from './arrangement.js';
import { isInBox, moveBox, plus } from './vectors.js';

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
  const repeated = repeatedTexts(facts.map(({ page }) => page));
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
      if (repeated.has(text) || isLabel(text, own.figures)) furniture++;
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

/** Texts at one place of several pages that differ in their numbers at most, such as page numbers. */
export function repeatedTexts(pages: readonly PatternPage[]): Set<DrawnText> {
  const groups = new Map<string, DrawnText[]>();
  for (const { texts } of pages) {
    for (const text of texts) {
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
