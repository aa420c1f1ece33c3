import { containingRing, distanceSq, subtractRegions } from '@hidebound/geometry';
import type { Point, QualityRegion, Region } from '@hidebound/geometry';
import type { Flaw, Hide, HideCut, Zone, ZoneKind } from '../model/hide.js';
import type { Effect } from '../model/marks.js';
import { DEEP_FROM, effectOf, gradeOfLooks, zoneKindEffect } from '../parts/effects.js';
import type { EffectDefaults } from '../parts/effects.js';
import { bufferedLine, flawRegions } from './flaw-region.js';

/** How a hide's marks are to be read. */
export interface QualityOptions {
  /** The user's own defaults for kinds of flaws and zones. */
  readonly workshop?: EffectDefaults | undefined;
  /** Unconfirmed candidates count like flaws. */
  readonly avoidCandidates?: boolean;
  /** Pieces are seen from the flesh side too, so that shallow marks of the flesh side count for looks. */
  readonly fleshIsSeen?: boolean;
  /** By how much the distance to the edge is more than that to void places: unsure edges are kept clear of by it too. */
  readonly edgeBeyondVoidMm?: number;
}

/**
 * Every marked place of the hide, as nesting reads it: grade 0, 1, 2 for looks A, B, C. Each region contains the true
 * shape. Ids: `flaw:…`, `zone:…`, `candidate:…`, `cut` (a hide without zones whose cut is one zone, such as a belly)
 * and `unsure-edge:1`. Void regions carry the photo's error at their place. A mark on the flesh side that goes less
 * than a third through does not show on the grain. Zones contain their drawn outline, so that neighbours that share
 * a drawn line leave no gap between them.
 */
export function hideQualities(hide: Hide, options: QualityOptions = {}): QualityRegion[] {
  const candidates = options.avoidCandidates === true ? hide.candidates : [];
  return [
    ...wholeCutZone(hide, options),
    ...hide.zones.map((zone) => zoneQuality(hide, zone, options)),
    ...hide.flaws.map((flaw) => flawQuality(hide, flaw, `flaw:${flaw.id}`, options)),
    ...candidates.map((flaw) => flawQuality(hide, flaw, `candidate:${flaw.id}`, options)),
    ...hide.unsureEdges.map((edge, i) => ({
      id: unsureEdgeId(i + 1),
      areas: bufferedLine(edge.line, edge.offByMm),
      grade: 0,
      weak: false,
      isVoid: true,
      uncertaintyMm: Math.max(0, options.edgeBeyondVoidMm ?? 0),
    })),
  ];
}

const UNSURE_EDGE = 'unsure-edge:';

/** The id of the region around an unsure stretch of the outline; numbers count from 1. */
export function unsureEdgeId(number: number): string {
  return `${UNSURE_EDGE}${number}`;
}

/** True for the region around an unsure stretch of the outline: void, but no flaw. */
export function isUnsureEdge(quality: Pick<QualityRegion, 'id'>): boolean {
  return quality.id.startsWith(UNSURE_EDGE);
}

const ZONE_OF_CUT: Partial<Record<HideCut, ZoneKind>> = {
  bend: 'bend',
  butt: 'bend',
  shoulder: 'shoulder',
  'double shoulder': 'shoulder',
  belly: 'belly',
};

/** The zone that a hide's leather is of where none is drawn, as its cut says; absent where the cut doesn't. */
export function zoneOfCut(hide: Pick<Hide, 'cut'>): ZoneKind | undefined {
  return ZONE_OF_CUT[hide.cut];
}

function wholeCutZone(hide: Hide, options: QualityOptions): QualityRegion[] {
  const kind = zoneOfCut(hide);
  if (kind === undefined) return [];
  const whole = [{ outer: containingRing(hide.outline), openings: [] }];
  const drawn = hide.zones.map(({ outline }) => ({ outer: containingRing(outline), openings: [] }));
  const areas = drawn.length === 0 ? whole : subtractRegions(whole, drawn);
  if (areas.length === 0) return [];
  return [quality('cut', areas, zoneKindEffect(kind, options.workshop), { zone: kind })];
}

function zoneQuality(hide: Hide, zone: Zone, options: QualityOptions): QualityRegion {
  const effect = effectOf(zone, options.workshop);
  const areas = [{ outer: containingRing(zone.outline), openings: [] }];
  const uncertaintyMm = effect.isVoid ? photoErrorAt(hide, ringsMiddle(areas)) : 0;
  return quality(`zone:${zone.id}`, areas, effect, { zone: zone.kind, uncertaintyMm });
}

function flawQuality(hide: Hide, flaw: Flaw, id: string, options: QualityOptions): QualityRegion {
  const effect = effectOf(flaw, options.workshop);
  const isHidden = isShallowFlesh(flaw) && options.fleshIsSeen !== true && flaw.effect?.looks === undefined;
  const areas = flawRegions(flaw.shape);
  return quality(id, areas, isHidden ? { ...effect, looks: 'A' } : effect, {
    uncertaintyMm: effect.isVoid ? photoErrorAt(hide, ringsMiddle(areas)) : 0,
  });
}

function isShallowFlesh(flaw: Flaw): boolean {
  return flaw.side === 'flesh' && flaw.depth !== undefined && flaw.depth < DEEP_FROM;
}

function quality(
  id: string,
  areas: readonly Region[],
  effect: Effect,
  more: { readonly zone?: ZoneKind; readonly uncertaintyMm?: number },
): QualityRegion {
  return {
    id,
    areas,
    grade: gradeOfLooks(effect.looks),
    weak: effect.strength === 'weak',
    isVoid: effect.isVoid,
    uncertaintyMm: more.uncertaintyMm ?? 0,
    ...(more.zone === undefined ? {} : { zone: more.zone }),
  };
}

/**
 * How far off a mark at this place can be, in mm: the estimate nearest to it, never less than the error everywhere;
 * 0 for a hide that was not traced from a photo.
 */
export function photoErrorAt(hide: Pick<Hide, 'photo'>, at: Point): number {
  const { photo } = hide;
  if (photo === undefined) return 0;
  let nearestSq = Infinity;
  let mm = photo.errorMm;
  for (const estimate of photo.errorsAt) {
    const sq = distanceSq(estimate.at, at);
    if (sq >= nearestSq) continue;
    nearestSq = sq;
    mm = Math.max(photo.errorMm, estimate.mm);
  }
  return mm;
}

/** Middle of the corners' box: good enough to find the nearest error estimate. */
function ringsMiddle(areas: readonly Region[]): Point {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const { outer } of areas) {
    for (const { x, y } of outer) {
      minX = Math.min(minX, x);
      maxX = Math.max(maxX, x);
      minY = Math.min(minY, y);
      maxY = Math.max(maxY, y);
    }
  }
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
}
