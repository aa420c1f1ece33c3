import type { DrawnText } from '../drawing/drawn-line.js';
import { cornersOf } from './corners.js';
import type { Corner } from './corners.js';
import { drawingWords } from './drawing-words.js';
import { figuresOf } from './figures.js';
import type { Figure } from './figures.js';
import { frameLines } from './frames.js';
import { withLabels } from './mark-labels.js';
import type { PatternPage } from './page.js';
import { pageLines } from './page-lines.js';
import type { PageLines } from './page-lines.js';
import { SEEK_MM } from './limits.js';
import { heightOf, isInBox, widthOf } from './vectors.js';
import { placedFigure, repeatedAmong } from './repeated.js';
import type { Placed } from './repeated.js';
import { repeatedTexts } from './texts.js';
import { windowsOf } from './windows.js';
import type { CutEnd, Side } from './windows.js';
import type { Box } from '@hidebound/geometry';

/** What is known of a page by itself, before it is compared with others. */
export interface PageFacts {
  readonly page: PatternPage;
  readonly lines: PageLines;
  /** Through what the drawing is seen; of a page without margins, its edges. */
  readonly window: Box;
  /** Borders of the window at which lines of any page end. */
  readonly sides: readonly Side[];
  readonly ends: readonly CutEnd[];
  /** The small figures within the window. */
  readonly figures: readonly Figure[];
  /** Sharp turns of long lines. */
  readonly corners: readonly Corner[];
  /** Texts that belong to the drawing, such as names of pieces. */
  readonly words: readonly DrawnText[];
  readonly byShape: ReadonlyMap<string, readonly Figure[]>;
  /** Lines that stand at the same place of other pages too: frames, marks. */
  readonly repeated: ReadonlySet<number>;
  readonly frames: ReadonlySet<number>;
  /** Lines of small figures that may be marks. */
  readonly signs: ReadonlySet<number>;
  readonly isBlank: boolean;
}

/** Reads all pages by themselves; what is on each page at the same place is told by all of them. */
export function factsOf(pages: readonly PatternPage[]): PageFacts[] {
  const base = pages.map((page) => {
    const lines = pageLines(page.lines);
    return { page, lines, figures: figuresOf(page, lines), frames: frameLines(page, lines) };
  });
  const figures = withLabels(
    base.map((one) => one.figures),
    pages,
  );
  const withContent = pages.filter(({ lines }) => lines.length > 0).length;
  const repeated = linesOf(
    repeatedAmong(
      figures.flatMap((list, i) => list.filter((one) => one.isSign).map((one) => placedFigure(i, one))),
      withContent,
    ),
    pages.length,
  );
  const frames = linesOf(
    repeatedAmong(
      base.flatMap(({ frames: own, lines }, page) =>
        own.map((i): Placed => ({ page, kind: lines.looks[i]!, box: lines.boxes[i]!, lines: [i] })),
      ),
      withContent,
    ),
    pages.length,
  );
  const printed = linesOf(printedOnEach(base, withContent), pages.length);
  const signs = figures.map((list) => new Set(list.flatMap((one) => (one.isSign ? one.lines : []))));
  const windows = windowsOf(
    base.map(({ page, lines }, i) => ({
      page,
      lines,
      isFurniture: (line: number) => repeated[i]!.has(line) || frames[i]!.has(line) || printed[i]!.has(line),
      isSign: (line: number) => signs[i]!.has(line),
    })),
  );
  const paperTexts = repeatedTexts(pages);
  return base.map(({ page, lines }, i) => {
    const seen = figures[i]!.filter(({ at }) => isInBox(at, windows[i]!.box, SEEK_MM));
    return {
      page,
      lines,
      window: windows[i]!.box,
      sides: windows[i]!.sides,
      ends: windows[i]!.ends.filter(({ line }) => !frames[i]!.has(line)),
      figures: seen,
      corners: cornersOf(
        page.lines,
        lines.boxes,
        lines.looks,
        windows[i]!.box,
        (line) => frames[i]!.has(line) || repeated[i]!.has(line),
      ),
      words: drawingWords(page.texts, windows[i]!.box, figures[i]!, (text) => paperTexts.has(text)),
      byShape: byShape(seen),
      repeated: repeated[i]!,
      frames: frames[i]!,
      signs: signs[i]!,
      isBlank: page.lines.every((_, line) => repeated[i]!.has(line) || frames[i]!.has(line)),
    };
  });
}

/** A drawing that happens to look alike on most pages, such as a long strap, spans them; what is printed beside it does not. */
const PRINTED_SPAN_SHARE = 0.5;
const PRINTED_PAGE_SHARE = 0.6;

/** Lines that most pages have at one place, such as scales and legends: told apart from the drawing to find its border. */
function printedOnEach(
  pages: readonly { readonly page: PatternPage; readonly lines: PageLines }[],
  withContent: number,
): Placed[] {
  const placed = pages.flatMap(({ page, lines }, number) =>
    lines.boxes.flatMap((box, i): Placed[] => {
      const isLong =
        widthOf(box) > PRINTED_SPAN_SHARE * page.widthMm ||
        heightOf(box) > PRINTED_SPAN_SHARE * page.heightMm;
      return isLong ? [] : [{ page: number, kind: lines.looks[i]!, box, lines: [i] }];
    }),
  );
  return withContent < 3 ? [] : repeatedAmong(placed, withContent, PRINTED_PAGE_SHARE);
}

function byShape(figures: readonly Figure[]): Map<string, Figure[]> {
  const shapes = new Map<string, Figure[]>();
  for (const figure of figures) {
    const list = shapes.get(figure.shape);
    if (list === undefined) shapes.set(figure.shape, [figure]);
    else list.push(figure);
  }
  return shapes;
}

function linesOf(placed: readonly Placed[], pageCount: number): Set<number>[] {
  const sets = Array.from({ length: pageCount }, () => new Set<number>());
  for (const { page, lines } of placed) for (const line of lines) sets[page]!.add(line);
  return sets;
}
