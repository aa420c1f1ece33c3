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

/** The drawing of one group, with what is told of it. */
export interface MergedGroup {
  readonly lines: readonly DrawnLine[];
  readonly texts: readonly DrawnText[];
  /** Lines of frames, of marks, and beyond the windows, and texts, that were left out. */
  readonly frames: number;
  readonly marks: number;
  readonly beyond: number;
  readonly furniture: number;
  readonly joints: number;
  readonly joinedLines: number;
  /** The page of each end that found no other half. */
  readonly loosePages: readonly number[];
}

/** The drawing of one group of pages: each place taken from one page, cut lines joined, the paper's own signs left out. */
export function mergeGroup(
  facts: readonly PageFacts[],
  { places }: Settled,
  findings: Findings,
): MergedGroup {
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
  const loosePages = joined.looseEnds.map(({ page }) => facts[page]!.page.number);
  return {
    lines,
    texts,
    frames: counts.frames,
    marks: counts.marks + dropped,
    beyond: counts.beyond,
    furniture,
    joints: joined.joints,
    joinedLines: joined.isJoined.filter(Boolean).length,
    loosePages,
  };
}

/** Tells of all groups together what was left out and joined. */
export function tellMerged(groups: readonly MergedGroup[], findings: Findings): void {
  const sum = (of: (group: MergedGroup) => number) => groups.reduce((total, group) => total + of(group), 0);
  const frames = sum((group) => group.frames);
  const marks = sum((group) => group.marks);
  const texts = sum((group) => group.furniture);
  if (frames + marks + texts > 0) tell(findings, 'note', 'page-furniture', { frames, marks, texts });
  const beyond = sum((group) => group.beyond);
  if (beyond > 0) tell(findings, 'note', 'beyond-windows', { count: beyond });
  const joints = sum((group) => group.joints);
  if (joints > 0)
    tell(findings, 'note', 'lines-over-seams', { joints, lines: sum((group) => group.joinedLines) });
  const loose = groups.flatMap(({ loosePages }) => loosePages);
  if (loose.length === 0) return;
  const pages = listPages([...new Set(loose)].sort((a, b) => a - b));
  tell(findings, 'warning', 'page-ends-loose', { count: loose.length, pages });
}
