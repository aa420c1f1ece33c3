import type { Point } from '@hidebound/geometry';
import { tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { lookOf } from './look.js';
import type { PageFacts } from './page-facts.js';
import { listPages } from './page-words.js';
import type { Settled } from './settle.js';

/** Places of the same thing drawn twice by one program agree to this, mm. */
const SAME_PLACE_MM = 0.01;

/**
 * Warns of pages that show one and the same drawing: one of them may be in the file twice. Nothing is told of pages that have
 * got places of their own in one whole by what they share, as those of a long strap have, or by the grid that was stated.
 */
export function tellAlikePages(
  facts: readonly PageFacts[],
  groups: readonly Settled[],
  isStated: boolean,
  findings: Findings,
): void {
  const byDrawing = new Map<string, number[]>();
  facts.forEach((one, i) => {
    const drawing = one.isBlank ? undefined : drawingOf(one);
    if (drawing !== undefined) byDrawing.set(drawing, [...(byDrawing.get(drawing) ?? []), i]);
  });
  for (const pages of byDrawing.values()) {
    if (pages.length < 2 || groups.some((group) => haveOwnPlaces(pages, group, isStated))) continue;
    const numbers = pages.map((i) => facts[i]!.page.number);
    tell(findings, 'warning', 'pages-alike', { pages: listPages(numbers) });
  }
}

/** All of the pages lie in the group, each where more speaks for it than against it, or where it was stated to. */
function haveOwnPlaces(pages: readonly number[], { places, meetings }: Settled, isStated: boolean): boolean {
  return pages.every((page) => {
    if (!places.has(page)) return false;
    const own = meetings.filter(({ a, b }) => a === page || b === page);
    const ties = own.reduce((sum, meeting) => sum + meeting.ties.length, 0);
    const contradictions = own.reduce((sum, meeting) => sum + meeting.contradictions, 0);
    return isStated || ties > contradictions;
  });
}

/** All lines of the drawing as a text; nothing if they are all straight, since a long strap looks alike on its pages. */
function drawingOf({ page, frames }: PageFacts): string | undefined {
  const own = page.lines.filter((_, i) => !frames.has(i));
  if (
    own.every(
      ({ curve }) => !curve.closed && curve.segments.length === 1 && curve.segments[0]!.kind === 'line',
    )
  )
    return undefined;
  const at = ({ x, y }: Point) => `${Math.round(x / SAME_PLACE_MM)},${Math.round(y / SAME_PLACE_MM)}`;
  const texts = own.map((line) => {
    const points = line.curve.segments.map(({ to }) => at(to));
    return `${lookOf(line)} ${at(line.curve.start)} ${points.join(' ')}`;
  });
  return texts.sort().join('\n');
}
