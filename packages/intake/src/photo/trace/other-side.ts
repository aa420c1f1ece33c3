import { orientRing, ringCentroid } from '@hidebound/geometry';
import type { Point, Region } from '@hidebound/geometry';
import type { Flaw, Side } from '@hidebound/leather';
import { tell } from '../../findings.js';
import { papersOf } from '../camera/papers-of.js';
import { raisedFloor } from '../camera/raised-floor.js';
import { findChalk } from '../marks/chalk/find-chalk.js';
import { moveFlaw } from '../marks/register/move-flaw.js';
import { registerOtherSide } from '../marks/register/register-other-side.js';
import { findOutlines } from '../outline/find-outlines.js';
import { straighten } from '../straight/straighten.js';
import { hintsForPhoto, hintsOnFloor, joinHints } from './hints-for-photo.js';
import { floorOf, thicknessMm } from './look-at-leather.js';
import type { TraceTools } from './stages.js';
import type { TraceOptions } from './trace-options.js';

/** Marks of the other side, laid onto the one that the hide is traced from. */
export interface LaidOtherSide {
  readonly flaws: readonly Flaw[];
  readonly misfitMm: number;
}

interface KnownSide {
  readonly leather: Region;
  readonly crosses: readonly Point[];
}

/** What is chalked on the other side of the hide, at its place on this side. */
export function layOtherSide(known: KnownSide, options: TraceOptions, tools: TraceTools): LaidOtherSide {
  const { vision, findings, stage } = tools;
  const photos = options.otherSide!;
  const file = photos[0]!.file;
  const floor = raisedFloor(floorOf(photos, options, tools), thicknessMm(options));
  stage('other side');
  const side: Side = options.sideUp === 'grain' ? 'flesh' : 'grain';
  const hints = photos.map((photo, i) =>
    hintsOnFloor(hintsForPhoto(options.hints, photo), floor.cameras[i]!),
  );
  const picture = straighten(photos, floor, {}, vision);
  const papers = papersOf(floor);
  const edge = { papers, hints: joinHints(hints), most: 1 };
  const piece = findOutlines(picture, edge, vision, { ...findings, file }).pieces[0]!;
  const leather = {
    outer: orientRing(piece.outline, 'outer'),
    openings: piece.openings.map((ring) => orientRing(ring, 'opening')),
  };
  const chalk = findChalk(picture, leather, { side }, vision, { ...findings, file });
  const sharedMarks = {
    a: marksOf(known),
    b: marksOf({ leather, crosses: chalk.crosses }),
  };
  const laid = registerOtherSide(known.leather, leather, { photo: file, sharedMarks }, findings);
  const flaws = chalk.flaws.map((flaw) => ({
    ...moveFlaw(flaw, laid.transform),
    side,
    id: `${side}-${flaw.id}`,
  }));
  if (flaws.length > 0) tell(findings, 'note', 'other-side-flaws', { count: flaws.length }, { file });
  return { flaws, misfitMm: laid.misfitMm };
}

/** Crosses and the middles of openings: an opening goes through, a cross is drawn on each side at the same place. */
function marksOf({ leather, crosses }: KnownSide): readonly Point[] {
  return [...crosses, ...leather.openings.map(ringCentroid)];
}
