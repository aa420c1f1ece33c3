import { distanceBetween, pointToSegment } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import type { DrawnText } from '../drawing/drawn-line.js';
import {
  FOLD_EDGE_MIN_MM,
  FOLD_TEXT_CLEAR_MM,
  FOLD_TEXT_PARALLEL_DEG,
  LETTER_WIDTH_SHARE,
} from '../limits.js';
import { straightStretches } from '../lines/axis.js';
import type { Stretch } from '../lines/axis.js';

/** Words by which a text on a pattern says that the piece is drawn up to a fold (common practice, no source). */
const ASKS_FOR_FOLD =
  /\b(?:cut|place|placed|lay|laid|put)\b[^.;]{0,30}\b(?:on|to|at|along)\s+(?:the\s+)?fold\b/iu;

/** All of a text that names the edge: other texts speak of what is done at a fold line ("stitch to fold"). */
const NAMES_FOLD = /^\W*(?:on\s+(?:the\s+)?fold|fold\s+edge|mirror\s+line|mirror)\W*$/iu;

export function saysOnFold({ text }: DrawnText): boolean {
  return ASKS_FOR_FOLD.test(text) || NAMES_FOLD.test(text);
}

/**
 * The straight edge that a text of the fold stands at: of those that run its way (of all, if its way is not known) the
 * nearest, if the next one is clearly farther away. Nothing where that is not clear.
 */
export function edgeOfText(cut: Curve, text: DrawnText): Stretch | undefined {
  const edges = straightStretches(cut).filter(
    ({ from, to }) => distanceBetween(from, to) >= FOLD_EDGE_MIN_MM,
  );
  const { angleDeg } = text;
  const along = angleDeg === undefined ? [] : edges.filter((edge) => runsAt(edge, angleDeg));
  const places = placesOfText(text);
  const ranked = (along.length > 0 ? along : edges)
    .map((edge) => ({ edge, mm: Math.min(...places.map((p) => pointToSegment(p, edge.from, edge.to))) }))
    .sort((a, b) => a.mm - b.mm);
  const [nearest, next] = ranked;
  if (nearest === undefined) return undefined;
  return next === undefined || next.mm - nearest.mm >= FOLD_TEXT_CLEAR_MM ? nearest.edge : undefined;
}

function runsAt({ from, to }: Stretch, angleDeg: number): boolean {
  const turn = (angleDeg * Math.PI) / 180;
  const sine = Math.sin(turn) * (to.x - from.x) - Math.cos(turn) * (to.y - from.y);
  return Math.abs(sine) <= Math.sin((FOLD_TEXT_PARALLEL_DEG * Math.PI) / 180) * distanceBetween(from, to);
}

/** The start of a text and, where its way and size are known, its middle. */
function placesOfText({ at, text, angleDeg, sizeMm }: DrawnText): Point[] {
  if (angleDeg === undefined || sizeMm === undefined) return [at];
  const half = (LETTER_WIDTH_SHARE * sizeMm * text.length) / 2;
  const turn = (angleDeg * Math.PI) / 180;
  return [at, { x: at.x + half * Math.cos(turn), y: at.y + half * Math.sin(turn) }];
}
