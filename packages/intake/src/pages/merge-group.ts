import type { DrawnLine, DrawnText } from '../drawing/drawn-line.js';
import type { Point } from '@hidebound/geometry';
import { IntakeError } from '../error.js';
import { noteRepair, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import type { Places } from './arrangement.js';
import { cellsOf } from './cells.js';
import { partsOfPage } from './cut-to-cells.js';
import { withoutDrawnTwice } from './drawn-twice.js';
import { joinParts } from './join-parts.js';
import { SEEK_MM } from './limits.js';
import type { PageFacts } from './page-facts.js';
import { isJoinLine, isOwnPage, isOwnSign } from './own-signs.js';
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
  /** Lines of our own templates' signs. */
  readonly signs: number;
  readonly furniture: number;
  readonly joints: number;
  readonly joinedLines: number;
  /** The page of each end that found no other half. */
  readonly loosePages: readonly number[];
  /** Ends of parts at the edges of pages' windows. */
  readonly cutEnds: number;
  /** Those of the ends without another half that lie beside another page. */
  readonly looseBetween: number;
}

/** The drawing of one group of pages: each place taken from one page, cut lines joined, the paper's own signs left out. */
export function mergeGroup(
  facts: readonly PageFacts[],
  { places }: Settled,
  findings: Findings,
): MergedGroup {
  const cells = cellsOf(facts, places);
  const counts = { frames: 0, marks: 0, beyond: 0, signs: 0 };
  const isOwn = [...places.keys()].some((page) => isOwnPage(facts[page]!.page));
  const parts = [...places].flatMap(([page, place]) => {
    const own = facts[page]!;
    own.page.lines.forEach((line, i) => {
      if (own.frames.has(i)) counts.frames++;
      else if (own.repeated.has(i)) counts.marks++;
      else if (!isInBox(boxMiddle(own.lines.boxes[i]!), own.window)) counts.beyond++;
      else if (isOwn && isOwnSign(line)) counts.signs++;
    });
    const isPaper = (line: number) =>
      own.frames.has(line) || own.repeated.has(line) || (isOwn && isOwnSign(own.page.lines[line]!));
    return partsOfPage(own, page, place, cells.boxes.get(page)!, isPaper);
  });
  const joined = joinParts(withoutDrawnTwice(parts, cells.seams));
  const { lines: unmarked, dropped } = withoutSeamSigns(joined, cells.seams);
  const lines = isOwn ? unmarked.filter((line) => !isJoinLine(line, cells.seams)) : unmarked;
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
    signs: counts.signs + unmarked.length - lines.length,
    furniture,
    joints: joined.joints,
    joinedLines: joined.isJoined.filter(Boolean).length,
    loosePages,
    cutEnds: joined.cutEnds,
    looseBetween: joined.looseEnds.filter(({ page, at }) => isBesideAnother(at, page, facts, places)).length,
  };
}

/** The place lies on another page's paper, or no farther from it than the page's own margins. */
function isBesideAnother(at: Point, page: number, facts: readonly PageFacts[], places: Places): boolean {
  const { window, page: own } = facts[page]!;
  const margins = [window.minX, window.minY, own.widthMm - window.maxX, own.heightMm - window.maxY];
  const reach = Math.max(0, ...margins) + SEEK_MM;
  return [...places].some(([other, { x, y }]) => {
    const { widthMm, heightMm } = facts[other]!.page;
    const paper = { minX: x, minY: y, maxX: x + widthMm, maxY: y + heightMm };
    return other !== page && isInBox(at, paper, reach);
  });
}

/** So many ends without another half, this share of all, and so many of them between pages, speak against a stated grid. */
const LOOSE_ENDS = 6;
const LOOSE_SHARE = 0.5;
const LOOSE_BETWEEN = 3;

/**
 * A stated grid in which most cut lines do not go on from page to page is not how the pages lie. Ends at the edge of the
 * whole speak against it only beside such between pages: whoever takes some of the pages leaves lines that go on nowhere.
 */
export function refuseLooseGrid(groups: readonly MergedGroup[], file: string): void {
  const sum = (of: (group: MergedGroup) => number) => groups.reduce((total, group) => total + of(group), 0);
  const loose = sum(({ loosePages }) => loosePages.length);
  const between = sum(({ looseBetween }) => looseBetween);
  const all = sum(({ cutEnds }) => cutEnds);
  if (loose < LOOSE_ENDS || loose <= LOOSE_SHARE * all || between < LOOSE_BETWEEN) return;
  const pages = listPages([...new Set(groups.flatMap(({ loosePages }) => loosePages))].sort((a, b) => a - b));
  throw new IntakeError('grid-does-not-fit', { missed: loose, pages }, { file });
}

/** Tells of all groups together what was left out and joined. */
export function tellMerged(groups: readonly MergedGroup[], findings: Findings): void {
  const sum = (of: (group: MergedGroup) => number) => groups.reduce((total, group) => total + of(group), 0);
  const frames = sum((group) => group.frames);
  const marks = sum((group) => group.marks);
  const texts = sum((group) => group.furniture);
  const signs = sum((group) => group.signs);
  if (frames + marks + texts + signs > 0)
    tell(findings, 'note', 'page-furniture', { frames, marks, texts, signs });
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
