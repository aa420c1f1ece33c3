import { decideHide } from '@hidebound/leather';
import type { Hide, HideGuess } from '@hidebound/leather';
import type { Point, Polyline } from '@hidebound/geometry';
import { polylineNearest, roundPoint } from '@hidebound/geometry';

/** A backbone that was drawn is no guess any more; a belly has none. */
export function withBackbone(hide: Hide, line: Polyline): Hide {
  return { ...confirmed(hide, 'backbone'), backbone: line };
}

export function withBackboneTurned(hide: Hide): Hide {
  return hide.backbone === undefined ? hide : withBackbone(hide, [...hide.backbone].reverse());
}

export function withoutBackbone(hide: Hide): Hide {
  const { backbone: _, ...rest } = confirmed(hide, 'backbone');
  return rest;
}

/** A guess from the photo that a person found right. */
export function confirmed(hide: Hide, guess: HideGuess): Hide {
  if (hide.guessed?.includes(guess) !== true) return hide;
  return decideHide(hide, { take: [], drop: [], confirm: [guess] }).hide;
}

export function withTightness(hide: Hide, line: Polyline): Hide {
  return { ...hide, tightness: [...hide.tightness, line] };
}

export function withoutTightness(hide: Hide, index: number): Hide {
  return { ...hide, tightness: hide.tightness.filter((_, i) => i !== index) };
}

/** The number of the line that is nearest to a place, within reach (mm). */
export function nearestLine(lines: readonly Polyline[], place: Point, reachMm: number): number | undefined {
  let best: number | undefined;
  let least = reachMm;
  lines.forEach((line, i) => {
    const { distance } = polylineNearest(line, place);
    if (distance > least) return;
    least = distance;
    best = i;
  });
  return best;
}

export function withReading(hide: Hide, at: Point, mm: number): Hide {
  return withReadings(hide, [...hide.leather.readings, { at: roundPoint(at), mm }]);
}

export function withReadingChanged(hide: Hide, index: number, mm: number): Hide {
  return withReadings(
    hide,
    hide.leather.readings.map((reading, i) => (i === index ? { ...reading, mm } : reading)),
  );
}

export function withoutReading(hide: Hide, index: number): Hide {
  return withReadings(
    hide,
    hide.leather.readings.filter((_, i) => i !== index),
  );
}

function withReadings(hide: Hide, readings: Hide['leather']['readings']): Hide {
  return { ...hide, leather: { ...hide.leather, readings } };
}

export function nearestReading(hide: Hide, place: Point, reachMm: number): number | undefined {
  return nearestLine(
    hide.leather.readings.map(({ at }) => [at]),
    place,
    reachMm,
  );
}
