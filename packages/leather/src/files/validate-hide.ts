import {
  createSpatialIndex,
  curveCorners,
  findSelfCrossing,
  flattenCurve,
  pointInRing,
  pointToRing,
  regionsArea,
  ringArea,
  ringBox,
  ringDistance,
  ringInRing,
  unionRegions,
} from '@hidebound/geometry';
import type { Curve, Point, Polyline, Ring } from '@hidebound/geometry';
import type { DiagnosticPlace } from '../model/diagnostic.js';
import type { Flaw, Hide } from '../model/hide.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { SMALLEST_AREA_MM2 } from './schema/limits.js';
import type { KeyPath } from './text/text-tree.js';

/** Says where a path of the hide file is. Reads the text anew, so it is asked only once something is wrong. */
export type WhereOf = (path: KeyPath) => DiagnosticPlace;
type Where = () => DiagnosticPlace;

/**
 * Proves that a hide can be worked with: outline and openings closed, once around and with some area; openings
 * within the outline and apart; every flaw, zone and reading on the hide (a part cut from another hide may still
 * carry its parent's); ids told apart. Judged on chords within 0.05 mm of the curves.
 * @throws LeatherError with the place on the hide, in mm
 */
export function validateHide(hide: Hide, where: WhereOf): void {
  const outline = closedRing(hide.outline, 'the outline', () => where(['outline']));
  const openings = hide.openings.map((opening, i) =>
    closedRing(opening, `opening ${i + 1}`, () => where(['openings', i])),
  );
  refuseOpeningsOutside(outline, openings, where);
  refuseOpeningsThatMeet(openings, where);
  refuseShortLines(hide, where);
  refuseRepeatedIds(hide, where);
  const marks = [
    ...hide.flaws.map((flaw, i) => ({ flaw, path: ['flaws', i] as KeyPath })),
    ...hide.candidates.map((flaw, i) => ({ flaw, path: ['candidates', i] as KeyPath })),
  ];
  for (const { flaw, path } of marks)
    validateFlaw(flaw, outline, () => where(path), hide.parent !== undefined);
  validateZones(hide, outline, where);
  if (hide.parent === undefined) refuseReadingsOutside(hide, outline, where);
}

/** The ring of a closed curve that runs once around some area. */
function closedRing(curve: Curve, what: string, place: Where): Ring {
  const ring = openedRing(curve, what, place);
  const crossing = findSelfCrossing(ring);
  if (ring.length < 3) throw leatherError('hide-no-area', { what }, place());
  if (crossing !== undefined) {
    throw leatherError('hide-outline-crosses', { what }, { ...place(), point: crossing.place });
  }
  if (Math.abs(ringArea(ring)) < SMALLEST_AREA_MM2) throw leatherError('hide-no-area', { what }, place());
  return ring;
}

/** The corners of a closed curve, the first not repeated. */
function openedRing(curve: Curve, what: string, place: Where): Ring {
  if (!curve.closed) throw leatherError('hide-open-line', { what }, place());
  return flattenCurve(curve).slice(0, -1);
}

function refuseOpeningsOutside(outline: Ring, openings: readonly Ring[], where: WhereOf): void {
  openings.forEach((opening, i) => {
    if (ringInRing(opening, outline)) return;
    const point = opening.find((corner) => pointInRing(corner, outline) === 'outside') ?? opening[0]!;
    throw leatherError('hide-opening-outside', { index: i + 1 }, { ...where(['openings', i]), point });
  });
}

function refuseOpeningsThatMeet(openings: readonly Ring[], where: WhereOf): void {
  const boxes = openings.map((ring) => ringBox(ring));
  const index = createSpatialIndex(boxes);
  boxes.forEach((box, i) => {
    index.query(box, (j) => {
      if (j <= i || ringDistance(openings[i]!, openings[j]!) > 0) return;
      const point = openings[j]![0]!;
      const params = { index: i + 1, other: j + 1 };
      throw leatherError('hide-openings-overlap', params, { ...where(['openings', j]), point });
    });
  });
}

function refuseShortLines(hide: Hide, where: WhereOf): void {
  if (hide.backbone !== undefined) refuseShortLine(hide.backbone, 'the backbone', () => where(['backbone']));
  hide.tightness.forEach((line, i) =>
    refuseShortLine(line, `tightness stroke ${i + 1}`, () => where(['tightness', i])),
  );
  hide.unsureEdges.forEach(({ line }, i) =>
    refuseShortLine(line, `unsure edge ${i + 1}`, () => where(['unsureEdges', i, 'line'])),
  );
}

function refuseShortLine(line: Polyline, what: string, place: Where): void {
  const start = line[0]!;
  if (line.every((p) => p.x === start.x && p.y === start.y)) {
    throw leatherError('hide-short-line', { what }, { ...place(), point: start });
  }
}

function refuseRepeatedIds(hide: Hide, where: WhereOf): void {
  const seen = new Set<string>();
  const admit = (id: string, what: string, path: KeyPath) => {
    if (seen.has(id)) throw leatherError('hide-duplicate-id', { what, id: quoteValue(id) }, where(path));
    seen.add(id);
  };
  hide.flaws.forEach((flaw, i) => admit(flaw.id, 'flaws', ['flaws', i, 'id']));
  hide.candidates.forEach((flaw, i) => admit(flaw.id, 'flaws', ['candidates', i, 'id']));
  seen.clear();
  hide.zones.forEach((zone, i) => admit(zone.id, 'zones', ['zones', i, 'id']));
}

/** Marks and readings that lie beside the hide altogether; the file of a hide that was not cut from another is refused with them. */
export interface MarksBeside {
  /** Ids of flaws, of possible flaws and of zones; numbers of readings, from 0. */
  readonly flaws: readonly string[];
  readonly candidates: readonly string[];
  readonly zones: readonly string[];
  readonly readings: readonly number[];
}

/** What would lie beside a hide, as `parseHide` judges it: what an outline that was drawn anew leaves outside. */
export function marksBeside(hide: Hide): MarksBeside {
  const outline = flattenCurve(hide.outline).slice(0, -1);
  const isOff = (flaw: Flaw): boolean => !flawMeetsHide(flaw, outline);
  const zoneIsOff = ({ outline: edge }: Hide['zones'][number]): boolean =>
    ringDistance(flattenCurve(edge).slice(0, -1), outline) > 0;
  return {
    flaws: hide.flaws.filter(isOff).map(({ id }) => id),
    candidates: hide.candidates.filter(isOff).map(({ id }) => id),
    zones: hide.zones.filter(zoneIsOff).map(({ id }) => id),
    readings: hide.leather.readings.flatMap(({ at }, i) =>
      pointInRing(at, outline) === 'outside' ? [i] : [],
    ),
  };
}

function validateFlaw(flaw: Flaw, outline: Ring, place: Where, mayLieOutside: boolean): void {
  const id = quoteValue(flaw.id);
  const { effect } = flaw;
  const isWhole =
    effect?.isVoid === true ||
    (effect?.looks !== undefined && effect.strength !== undefined && effect.isVoid !== undefined);
  if (flaw.kind === undefined && !isWhole) throw leatherError('hide-flaw-without-effect', { id }, place());
  if (flaw.shape.kind === 'line') refuseShortLine(flaw.shape.line, `flaw ${id}`, place);
  if (flaw.shape.kind === 'area') refuseFlatPatch(flaw.shape.outline, `flaw ${id}`, place);
  if (!mayLieOutside && !flawMeetsHide(flaw, outline)) {
    throw leatherError('hide-flaw-outside', { id }, { ...place(), point: flawStart(flaw) });
  }
}

/** A patch drawn by hand may cross itself; what counts is that something lies within it. */
function refuseFlatPatch(outline: Curve, what: string, place: Where): Ring {
  const ring = openedRing(outline, what, place);
  const areas = ring.length < 3 ? [] : unionRegions([{ outer: ring, openings: [] }]);
  if (regionsArea(areas) === 0)
    throw leatherError('hide-no-area', { what }, { ...place(), point: outline.start });
  return ring;
}

function flawMeetsHide(flaw: Flaw, outline: Ring): boolean {
  const { shape } = flaw;
  switch (shape.kind) {
    case 'point':
      return pointInRing(shape.at, outline) !== 'outside' || pointToRing(shape.at, outline) <= shape.radiusMm;
    case 'line':
      return ringDistance(thereAndBack(shape.line), outline) <= shape.widthMm / 2;
    case 'area':
      return ringDistance(flattenCurve(shape.outline).slice(0, -1), outline) === 0;
  }
}

/** A line as a ring of no area. */
function thereAndBack(line: Polyline): Ring {
  return [...line, ...line.slice(1, -1).reverse()];
}

function flawStart(flaw: Flaw): Point {
  const { shape } = flaw;
  if (shape.kind === 'point') return shape.at;
  return shape.kind === 'line' ? shape.line[0]! : curveCorners(shape.outline)[0]!;
}

function validateZones(hide: Hide, outline: Ring, where: WhereOf): void {
  hide.zones.forEach((zone, i) => {
    const id = quoteValue(zone.id);
    const place = () => where(['zones', i]);
    const ring = refuseFlatPatch(zone.outline, `zone ${id}`, place);
    if (hide.parent === undefined && ringDistance(ring, outline) > 0) {
      throw leatherError('hide-zone-outside', { id }, { ...place(), point: zone.outline.start });
    }
  });
}

function refuseReadingsOutside(hide: Hide, outline: Ring, where: WhereOf): void {
  hide.leather.readings.forEach(({ at }, i) => {
    if (pointInRing(at, outline) !== 'outside') return;
    const place = { ...where(['leather', 'readings', i]), point: at };
    throw leatherError('hide-reading-outside', { index: i + 1 }, place);
  });
}
