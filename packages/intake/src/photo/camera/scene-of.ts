import type { MeasuredBars, StatedReference } from '@hidebound/leather';
import { markerPlace } from '@hidebound/leather';
import type { Body } from './bodies.js';
import { refuseBadReference } from './refuse-reference.js';
import type { SeenReferences } from './seen-references.js';
import { sheetBody, sheetSightings } from './sheet-bodies.js';
import type { FloorScene } from './solve-scene.js';
import { statedBody } from './stated-bodies.js';

/** One photo's references: what was found on it, and what a person stated. */
export interface PhotoReferences {
  readonly references: SeenReferences;
  readonly stated?: StatedReference;
  /** How exactly the stated places are known, px each, where they were measured; see `measureStated`. */
  readonly statedDeviationPx?: readonly number[];
}

export interface SolveOptions {
  /** The bars of a sheet as measured after printing; undefined where nobody did. */
  readonly barsOf?: (sheet: number) => MeasuredBars | undefined;
}

export function sceneOf(seen: readonly PhotoReferences[], options: SolveOptions): FloorScene {
  const photos = seen.map(({ references }) => references);
  const sheets = new Set(photos.flatMap(({ markers }) => markers.map(({ id }) => markerPlace(id)!.sheet)));
  const bodies: Body[] = [];
  const bodyOfSheet = new Map<number, number>();
  for (const sheet of [...sheets].sort((a, b) => a - b)) {
    bodyOfSheet.set(sheet, bodies.length);
    bodies.push(sheetBody(sheet, options.barsOf?.(sheet)));
  }
  const sightings = sheetSightings(photos, bodyOfSheet);
  seen.forEach(({ references, stated, statedDeviationPx }, photo) => {
    if (stated === undefined) return;
    refuseBadReference(stated, references.file);
    const made = statedBody(stated, photo, bodies.length, statedDeviationPx ?? []);
    bodies.push(made.body);
    sightings.push(...made.sightings);
  });
  return { seen: photos, bodies, sightings };
}
