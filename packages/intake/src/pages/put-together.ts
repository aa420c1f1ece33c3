import type { PagesReading } from '@hidebound/leather';
import type { Drawing } from '../drawing/drawn-line.js';
import { IntakeError } from '../error.js';
import { tell } from '../findings.js';
import type { Findings } from '../findings.js';
import type { ReadPage } from '../pattern-read.js';
import { tellAlikePages } from './alike-pages.js';
import { pagesApart } from './apart.js';
import type { Places } from './arrangement.js';
import { holdEvenPitch } from './even-pitch.js';
import { findPlaces } from './find-places.js';
import { pagesWithLabelMisses } from './label-misses.js';
import { MAX_SEARCHED_PAGES } from './limits.js';
import { mergeGroup, refuseLooseGrid, tellMerged } from './merge-group.js';
import { factsOf } from './page-facts.js';
import type { PageFacts } from './page-facts.js';
import type { PatternPage } from './page.js';
import { readPages } from './read-pages.js';
import { settle } from './settle.js';
import type { Settled } from './settle.js';
import { stackGroups } from './stack-groups.js';
import { statedGrid } from './stated-grid.js';
import type { StatedGrid } from './stated-grid.js';
import { listPages, roundMm } from './page-words.js';
import { paperOverlap, tellPitches, tellUntold } from './tell-untold.js';
import { holdUntold } from './untold-overlap.js';
import type { UntoldOverlap } from './untold-overlap.js';

/** The drawing that the pages make together, and where each page lies in it. */
export interface PagesTogether {
  readonly drawing: Drawing;
  readonly pages: readonly ReadPage[];
}

/**
 * Puts the pages of a pattern together as the reading says; if it says nothing, by what pages share, and where nothing
 * links them, each stays a drawing of its own. The whole's frame begins at the least x and y of all pages. Throws
 * `IntakeError` for pages that can't be put together as asked, or contradict each other.
 */
export function putPagesTogether(
  pages: readonly PatternPage[],
  reading: PagesReading | undefined,
  findings: Findings,
): PagesTogether {
  const isGrid = reading?.join === 'grid' || (reading?.join === undefined && reading?.columns !== undefined);
  if (pages.length < 2 || reading?.join === 'apart') return pagesApart(pages, findings);
  if (!isGrid && pages.length > MAX_SEARCHED_PAGES) {
    const params = { pages: pages.length, limit: MAX_SEARCHED_PAGES };
    throw new IntakeError('too-many-pages-to-search', params, { file: findings.file });
  }
  const facts = factsOf(pages);
  const grid = isGrid ? statedGrid(facts, reading, findings.file) : undefined;
  const groups =
    grid === undefined ? findPlaces(facts, reading?.join, reading, findings.file) : [grid.places];
  if (groups.length === 0) {
    tellAlikePages(facts, [], false, findings);
    return nothingLinks(pages, reading, findings);
  }
  const wanted = { marks: reading?.join !== 'lines', lines: true };
  const settled = groups.map((places) => settle(facts, linkedOnly(facts, places), wanted));
  refuseWrongJoint(settled, reading, facts, findings.file);
  const isStated = isGrid && reading?.overlapMm !== undefined;
  const even = isStated ? { groups: settled, doubts: [], uneven: [] } : holdEvenPitch(facts, settled, wanted);
  const held = isStated ? { groups: settled, untold: [] } : holdUntold(facts, even.groups, wanted);
  tellOverlap(held.untold, grid?.found, facts, held.groups, findings);
  // An overlap that nothing tells at all is warned of already.
  const doubts = even.doubts.filter(({ axis }) => held.untold.every((one) => one.axis !== axis));
  tellPitches({ ...even, doubts }, facts, held.groups, findings);
  const stacked = stackGroups(facts, held.groups);
  const merged = stacked.map((group) => mergeGroup(facts, group, findings));
  if (isGrid) refuseLooseGrid(merged, findings.file);
  tellAlikePages(facts, stacked, isGrid, findings);
  tellMerged(merged, findings);
  const drawing = {
    lines: merged.flatMap(({ lines }) => lines),
    texts: merged.flatMap(({ texts }) => texts),
  };
  return { drawing, pages: readPages(facts, stacked, isGrid, findings) };
}

/** A blank page has no place in the whole. */
function linkedOnly(facts: readonly PageFacts[], places: Places): Places {
  return new Map([...places].filter(([page]) => !facts[page]!.isBlank));
}

function tellOverlap(
  untold: readonly UntoldOverlap[],
  found: StatedGrid['found'],
  facts: readonly PageFacts[],
  groups: readonly Settled[],
  findings: Findings,
): void {
  if (found === 'unknown') tell(findings, 'warning', 'overlap-not-found');
  else if (untold.length > 0) tellUntold(untold, facts, groups, findings);
  else if (found !== undefined) {
    const across = paperOverlap(facts, groups, 'x') ?? found[0];
    const down = paperOverlap(facts, groups, 'y') ?? found[1];
    tell(findings, 'note', 'overlap-found', { across: roundMm(across), down: roundMm(down) });
  }
}

function nothingLinks(
  pages: readonly PatternPage[],
  reading: PagesReading | undefined,
  findings: Findings,
): PagesTogether {
  const place = { file: findings.file };
  if (reading?.join === 'marks') throw new IntakeError('no-shared-marks', {}, place);
  if (reading?.join === 'lines') throw new IntakeError('no-lines-over-edges', {}, place);
  tell(findings, 'warning', 'pages-apart', { count: pages.length });
  return pagesApart(pages, findings);
}

/** What was asked for must be what the places rest on, and must not speak against them. */
function refuseWrongJoint(
  settled: readonly Settled[],
  reading: PagesReading | undefined,
  facts: readonly PageFacts[],
  file: string,
): void {
  const ties = settled.flatMap(({ meetings }) => meetings.flatMap((meeting) => meeting.ties));
  if (reading?.join === 'marks' && !ties.some(({ kind }) => kind === 'mark'))
    throw new IntakeError('no-shared-marks', {}, { file });
  const contradicted = settled.flatMap(({ meetings }) =>
    meetings.filter((meeting) => meeting.contradictions > meeting.ties.length),
  );
  const apart = pagesWithLabelMisses(facts, settled);
  if (apart.length > 0) throw new IntakeError('pages-do-not-fit', { pages: listPages(apart) }, { file });
  const missed = settled.reduce((sum, one) => sum + one.contradictions, 0);
  if (missed <= ties.length) return;
  const numbers = new Set(contradicted.flatMap(({ a, b }) => [facts[a]!.page.number, facts[b]!.page.number]));
  const pages = listPages([...numbers].sort((a, b) => a - b));
  if (reading?.columns !== undefined) throw new IntakeError('grid-does-not-fit', { missed, pages }, { file });
  throw new IntakeError('pages-do-not-fit', { pages }, { file });
}
