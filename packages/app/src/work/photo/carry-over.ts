import { applyAffine, pointInRing, roundPoint, transformCurveToGrid } from '@hidebound/geometry';
import type { Affine, Point, Polyline } from '@hidebound/geometry';
import { moveFlaw } from '@hidebound/intake/photo';
import { hideRegion } from '@hidebound/leather';
import type { Flaw, Hide } from '@hidebound/leather';

/**
 * A hide that was traced anew, with what a person decided of it before: her marks stay on their places of the leather,
 * and only edge, openings and guesses that nobody confirmed are new. `shift` brings a place of the old hide to the new
 * one's frame. Chalk and possible flaws are taken over where the hide did not reach before.
 */
export function carryOver(before: Hide, traced: Hide, shift: Affine): Hide {
  const open = new Set(before.guessed ?? []);
  const guessed = (traced.guessed ?? []).filter((guess) => open.has(guess));
  const line = (points: Polyline): Polyline => points.map((at) => roundPoint(applyAffine(shift, at)));
  const isNew = newGround(before, shift);
  const flaws = before.flaws.map((flaw) => moveFlaw(flaw, shift));
  const candidates = before.candidates.map((flaw) => moveFlaw(flaw, shift));
  const { backbone: _, guessed: __, ...kept } = before;
  const backbone = open.has('backbone')
    ? traced.backbone
    : before.backbone === undefined
      ? undefined
      : line(before.backbone);
  return {
    ...kept,
    cut: open.has('cut') ? traced.cut : before.cut,
    outline: traced.outline,
    openings: traced.openings,
    ...(backbone === undefined ? {} : { backbone }),
    tightness: before.tightness.map(line),
    zones: before.zones.map((zone) => ({ ...zone, outline: transformCurveToGrid(shift, zone.outline) })),
    flaws: [...flaws, ...renamed(traced.flaws.filter(isNew), flaws)],
    candidates: [...candidates, ...renamed(traced.candidates.filter(isNew), candidates)],
    unsureEdges: traced.unsureEdges,
    leather: {
      ...before.leather,
      readings: before.leather.readings.map(({ at, mm }) => ({ at: roundPoint(applyAffine(shift, at)), mm })),
    },
    area: { ...before.area, measuredMm2: traced.area.measuredMm2! },
    ...(traced.photo === undefined ? {} : { photo: traced.photo }),
    ...(guessed.length === 0 ? {} : { guessed }),
  };
}

/** Whether a mark lies where the hide did not reach before. */
function newGround(before: Hide, shift: Affine): (flaw: Flaw) => boolean {
  const old = hideRegion(before).outer.map((at) => applyAffine(shift, at));
  return ({ shape }) => pointInRing(placeOf(shape), old) === 'outside';
}

function placeOf(shape: Flaw['shape']): Point {
  switch (shape.kind) {
    case 'point':
      return shape.at;
    case 'line':
      return shape.line[0]!;
    case 'area':
      return shape.outline.start;
  }
}

/** "chalk-3", or "chalk-3-new" where that is taken. */
function renamed<F extends Flaw>(flaws: readonly F[], taken: readonly Flaw[]): F[] {
  const names = new Set(taken.map(({ id }) => id));
  return flaws.map((flaw) => {
    let id = flaw.id;
    while (names.has(id)) id = `${id}-new`;
    names.add(id);
    return { ...flaw, id };
  });
}
