import type { DrawnText } from '../drawing/drawn-line.js';
import type { Figure } from './figures.js';
import { LABEL_REACH_MM } from './limits.js';
import type { PatternPage } from './page.js';
import { heightOf, widthOf } from './vectors.js';

/** Labels of marks are short: "A1", "12b". */
const LABEL_MAX_LETTERS = 6;

/** Pages that meet in a corner are four: what more of them have is no label of one mark. */
const LABEL_PAGES = 4;

/** A text at one place of so many pages is printed on each. */
const PRINTED_PAGES = 3;

/** Of the labels of one shape of marks, so many are shared at least; those at the edge of the whole are not. */
const SHARED_SHARE = 0.3;

/**
 * Figures with their labels. A short text names the nearest figure beside it, unless it stands at the same place of
 * other pages too (the numbers of a scale). Texts are labels if a fair share of those beside figures of one shape are on
 * two to four pages; then all marks of the shape keep theirs.
 */
export function withLabels(
  figures: readonly (readonly Figure[])[],
  pages: readonly PatternPage[],
): Figure[][] {
  const printed = textPlaces(pages);
  const named = figures.map((list, i) =>
    nameFigures(list, pages[i]!.texts, (text) => printed(text) >= PRINTED_PAGES),
  );
  const pagesOf = new Map<string, Set<number>>();
  named.forEach((list, page) => {
    for (const figure of list) {
      if (figure.label === undefined) continue;
      const known = pagesOf.get(keyOf(figure)) ?? new Set<number>();
      pagesOf.set(keyOf(figure), known.add(page));
    }
  });
  const counts = new Map<string, { all: number; shared: number }>();
  for (const figure of named.flat()) {
    if (!figure.isSign) continue;
    const count = counts.get(figure.shape) ?? { all: 0, shared: 0 };
    const size = figure.label === undefined ? 0 : pagesOf.get(keyOf(figure))!.size;
    counts.set(figure.shape, {
      all: count.all + 1,
      shared: count.shared + (size >= 2 && size <= LABEL_PAGES ? 1 : 0),
    });
  }
  return named.map((list) =>
    list.map(({ label, ...figure }): Figure => {
      const count = counts.get(figure.shape);
      const isScheme = count !== undefined && count.shared >= SHARED_SHARE * count.all;
      return label !== undefined && isScheme ? { ...figure, label } : figure;
    }),
  );
}

function keyOf({ shape, label }: Figure): string {
  return `${label}@${shape}`;
}

/** On how many pages a text stands at its place. */
function textPlaces(pages: readonly PatternPage[]): (text: DrawnText) => number {
  const counts = new Map<string, number>();
  const placeOf = ({ text, at }: DrawnText) => `${text}@${Math.round(at.x)},${Math.round(at.y)}`;
  for (const { texts } of pages)
    for (const key of new Set(texts.map(placeOf))) counts.set(key, (counts.get(key) ?? 0) + 1);
  return (text) => counts.get(placeOf(text)) ?? 0;
}

function nameFigures(
  figures: readonly Figure[],
  texts: readonly DrawnText[],
  isPrinted: (text: DrawnText) => boolean,
): Figure[] {
  const labels = new Map<Figure, { readonly label: string; readonly distance: number }>();
  for (const text of texts) {
    const label = text.text.trim();
    if (label === '' || label.length > LABEL_MAX_LETTERS || isPrinted(text)) continue;
    let nearest: Figure | undefined;
    let least = Infinity;
    for (const figure of figures) {
      const reach = LABEL_REACH_MM + Math.max(widthOf(figure.box), heightOf(figure.box)) / 2;
      const distance = Math.hypot(text.at.x - figure.at.x, text.at.y - figure.at.y);
      if (!figure.isSign || distance > reach || distance >= least) continue;
      least = distance;
      nearest = figure;
    }
    if (nearest === undefined || (labels.get(nearest)?.distance ?? Infinity) <= least) continue;
    labels.set(nearest, { label, distance: least });
  }
  return figures.map((figure) => {
    const label = labels.get(figure)?.label;
    return label === undefined ? figure : { ...figure, label };
  });
}

/** Two figures could be one mark as far as their labels go. */
export function haveOneLabel(a: Figure, b: Figure): boolean {
  return a.label === undefined || b.label === undefined || a.label === b.label;
}
