import type { Point } from '@hidebound/geometry';
import { tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { lookOf } from './look.js';
import type { PageFacts } from './page-facts.js';
import { listPages } from './page-words.js';

/** Places of the same thing drawn twice by one program agree to this, mm. */
const SAME_PLACE_MM = 0.01;

/** Warns of pages that show one and the same drawing: one of them may be in the file twice. */
export function tellAlikePages(facts: readonly PageFacts[], findings: Findings): void {
  const byDrawing = new Map<string, number[]>();
  for (const one of facts) {
    const drawing = one.isBlank ? undefined : drawingOf(one);
    if (drawing === undefined) continue;
    byDrawing.set(drawing, [...(byDrawing.get(drawing) ?? []), one.page.number]);
  }
  for (const numbers of byDrawing.values())
    if (numbers.length > 1) tell(findings, 'warning', 'pages-alike', { pages: listPages(numbers) });
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
