import { tell } from '../findings.js';
import type { Findings } from '../findings.js';
import type { EvenPages } from './even-pitch.js';
import type { PageFacts } from './page-facts.js';
import { listPages, roundMm } from './page-words.js';
import type { Settled } from './settle.js';
import type { Axis } from './overlaps.js';
import type { UntoldOverlap } from './untold-overlap.js';

/** Places of one column lie this near to each other, mm. */
const ONE_COLUMN_MM = 10;

/** Warns once for each axis along which the overlap was not told, and says how to state it. */
export function tellUntold(
  untold: readonly UntoldOverlap[],
  facts: readonly PageFacts[],
  groups: readonly Settled[],
  findings: Findings,
): void {
  const columns = groups.length === 1 ? columnsOf(groups[0]!) : undefined;
  for (const axis of ['x', 'y'] as const) {
    const one = untold.find((each) => each.axis === axis);
    if (one === undefined) continue;
    const across = axis === 'x' ? one.takenMm : paperOverlap(facts, groups, 'x');
    const down = axis === 'y' ? one.takenMm : paperOverlap(facts, groups, 'y');
    tell(findings, 'warning', 'overlap-not-told', {
      way: axis === 'x' ? 'across' : 'down',
      taken: roundMm(one.takenMm),
      from: one.from,
      across: roundMm(across ?? one.takenMm),
      down: roundMm(down ?? one.takenMm),
      columns: columns ?? 'N',
    });
  }
}

/** Warns of equal pieces at an even distance that leave open how far pages lie over each other, and of pages that don't step evenly. */
export function tellPitches(
  { doubts, uneven }: Omit<EvenPages, 'groups'>,
  facts: readonly PageFacts[],
  groups: readonly Settled[],
  findings: Findings,
): void {
  const columns = groups.length === 1 ? columnsOf(groups[0]!) : undefined;
  for (const axis of ['x', 'y'] as const) {
    const one = doubts.find((each) => each.axis === axis);
    if (one === undefined) continue;
    tell(findings, 'warning', 'pitch-not-told', {
      way: axis === 'x' ? 'across' : 'down',
      pitch: roundMm(one.pitchMm),
      taken: roundMm(one.takenMm),
      other: roundMm(one.otherMm),
      across: roundMm(paperOverlap(facts, groups, 'x') ?? one.takenMm),
      down: roundMm(paperOverlap(facts, groups, 'y') ?? one.takenMm),
      columns: columns ?? 'N',
    });
  }
  if (uneven.length === 0) return;
  const pages = listPages(uneven.map((page) => facts[page]!.page.number));
  tell(findings, 'warning', 'pages-step-unevenly', { pages });
}

function columnsOf({ places }: Settled): number {
  const starts = [...places.values()].map(({ x }) => x).sort((a, b) => a - b);
  return starts.filter((x, i) => i === 0 || x - starts[i - 1]! > ONE_COLUMN_MM).length;
}

/** Of paper, between the first two places that follow each other along the axis. */
export function paperOverlap(
  facts: readonly PageFacts[],
  groups: readonly Settled[],
  axis: Axis,
): number | undefined {
  const sorted = [...(groups[0]?.places ?? [])].sort(([, p], [, q]) => p[axis] - q[axis]);
  const next = sorted.find(([, place]) => place[axis] - sorted[0]![1][axis] > ONE_COLUMN_MM);
  if (next === undefined) return undefined;
  const [first, place] = sorted[0]!;
  const { widthMm, heightMm } = facts[first]!.page;
  return place[axis] + (axis === 'x' ? widthMm : heightMm) - next[1][axis];
}
