import type { DrawnLine, DrawnText } from '../drawing/drawn-line.js';
import { noteRepair, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { cellsOf } from './cells.js';
import { partsOfPage } from './cut-to-cells.js';
import { joinParts } from './join-parts.js';
import type { PageFacts } from './page-facts.js';
import { listPages } from './page-words.js';
import { withoutSeamSigns } from './seam-signs.js';
import type { Settled } from './settle.js';
import { textsOfWhole } from './texts.js';
import { boxMiddle, isInBox } from './vectors.js';

/** The drawing of one group of pages: each place taken from one page, cut lines joined, the paper's own signs left out. */
export function mergeGroup(
  facts: readonly PageFacts[],
  { places }: Settled,
  findings: Findings,
): { readonly lines: readonly DrawnLine[]; readonly texts: readonly DrawnText[] } {
  const cells = cellsOf(facts, places);
  const counts = { frames: 0, marks: 0, beyond: 0 };
  const parts = [...places].flatMap(([page, place]) => {
    const own = facts[page]!;
    own.page.lines.forEach((_, i) => {
      if (own.frames.has(i)) counts.frames++;
      else if (own.repeated.has(i)) counts.marks++;
      else if (!isInBox(boxMiddle(own.lines.boxes[i]!), own.window)) counts.beyond++;
    });
    const isPaper = (line: number) => own.frames.has(line) || own.repeated.has(line);
    return partsOfPage(own, page, place, cells.boxes.get(page)!, isPaper);
  });
  const joined = joinParts(parts);
  const { lines, dropped } = withoutSeamSigns(joined, cells.seams);
  const { texts, furniture } = textsOfWhole(facts, places, cells);
  for (const { element, at, sizeMm } of joined.gaps)
    noteRepair(findings, { kind: 'gap joined', element, at, sizeMm });
  const marks = counts.marks + dropped;
  if (counts.frames + marks + furniture > 0)
    tell(findings, 'note', 'page-furniture', { frames: counts.frames, marks, texts: furniture });
  if (counts.beyond > 0) tell(findings, 'note', 'beyond-windows', { count: counts.beyond });
  const over = joined.isJoined.filter(Boolean).length;
  if (over > 0) tell(findings, 'note', 'lines-over-seams', { joints: joined.joints, lines: over });
  if (joined.looseEnds.length > 0) {
    const pages = new Set(joined.looseEnds.map(({ page }) => facts[page]!.page.number));
    tell(findings, 'warning', 'page-ends-loose', {
      count: joined.looseEnds.length,
      pages: listPages([...pages].sort((a, b) => a - b)),
    });
  }
  return { lines, texts };
}
