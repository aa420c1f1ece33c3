import { circleCurve, curveFromPolyline } from '@hidebound/geometry';
import type { Curve, QualityRegion, Region } from '@hidebound/geometry';
import { gradeOfLooks, hideQualities } from '@hidebound/leather';
import type { Flaw, Hide, Workshop, Zone } from '@hidebound/leather';

/** Looks B as a grade. */
const SECOND_GRADE = gradeOfLooks('B');

/** What a mark means at the bench. */
export interface MarkMeaning {
  readonly never: boolean;
  /** Looks B: seen, but not on the best faces. */
  readonly second: boolean;
  /** Looks C: only where hidden. */
  readonly hidden: boolean;
  /** Nothing that bears load. */
  readonly weak: boolean;
}

/** A flaw or zone as it is drawn. */
export interface HideMark {
  /** What it is called on the picture: "scar", "scar, flesh side", "belly". */
  readonly label: string;
  readonly meaning: MarkMeaning;
  /** In the hide's frame. */
  readonly curves: readonly Curve[];
  readonly regions: readonly Region[];
}

export interface HideMarks {
  readonly flaws: readonly HideMark[];
  readonly zones: readonly HideMark[];
  /** Stretches along the outline that are known only roughly. */
  readonly unsure: readonly Region[];
}

/** Every flaw, zone and unsure edge of the hide with what it means. */
export function hideMarks(hide: Hide, workshop?: Workshop): HideMarks {
  const qualities = hideQualities(hide, { workshop });
  const byId = new Map(qualities.map((quality) => [quality.id, quality]));
  return {
    flaws: hide.flaws.map((flaw) => flawMark(flaw, byId.get(`flaw:${flaw.id}`))),
    zones: hide.zones.map((zone) => zoneMark(zone, byId.get(`zone:${zone.id}`))),
    unsure: qualities
      .filter((quality) => quality.id.startsWith('unsure-edge:'))
      .flatMap((quality) => quality.areas),
  };
}

/** The meaning in words: "only where hidden, weak"; "anywhere" if it means nothing in particular. */
export function meaningWords(meaning: MarkMeaning): string {
  const words = [
    ...(meaning.never ? ['never here'] : []),
    ...(meaning.second ? ['not on the best faces'] : []),
    ...(meaning.hidden ? ['only where hidden'] : []),
    ...(meaning.weak ? ['weak'] : []),
  ];
  return words.length === 0 ? 'anywhere' : words.join(', ');
}

function flawMark(flaw: Flaw, quality: QualityRegion | undefined): HideMark {
  const regions = quality?.areas ?? [];
  const side = flaw.side === 'flesh' ? ', flesh side' : '';
  return {
    label: `${flaw.kind ?? 'mark'}${side}`,
    meaning: meaningOf(quality),
    curves: flawCurves(flaw, regions),
    regions,
  };
}

function zoneMark(zone: Zone, quality: QualityRegion | undefined): HideMark {
  return {
    label: zone.kind,
    meaning: meaningOf(quality),
    curves: [zone.outline],
    regions: quality?.areas ?? [],
  };
}

/** Never here says it all: the others are then left out. */
function meaningOf(quality: QualityRegion | undefined): MarkMeaning {
  if (quality?.isVoid !== false) return { never: true, second: false, hidden: false, weak: false };
  return {
    never: false,
    second: quality.grade === SECOND_GRADE,
    hidden: quality.grade > SECOND_GRADE,
    weak: quality.weak,
  };
}

/** The true shape where it is drawn as one, the derived region of a line with a width. */
function flawCurves(flaw: Flaw, regions: readonly Region[]): Curve[] {
  const { shape } = flaw;
  if (shape.kind === 'area') return [shape.outline];
  if (shape.kind === 'point' && shape.radiusMm > 0) return [circleCurve(shape.at, shape.radiusMm)];
  return regions.flatMap((region) =>
    [region.outer, ...region.openings].map((ring) => curveFromPolyline(ring, true)),
  );
}
