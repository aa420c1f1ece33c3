import {
  boxUnion,
  boxesTouch,
  createSpatialIndex,
  curveLength,
  flattenCurve,
  growBox,
} from '@hidebound/geometry';
import type { Box, Point } from '@hidebound/geometry';
import { circleOfCurve } from '../lines/circles.js';
import type { Drawing } from '../drawing/drawn-line.js';
import type { PatternPage } from './page.js';
import {
  FIGURE_MAX_LINES,
  FIGURE_MAX_MM,
  FIGURE_MIN_MM,
  FIGURE_SIZE_STEP_MM,
  MARK_ZONE_MM,
} from './limits.js';
import type { PageLines } from './page-lines.js';
import { boxMiddle, heightOf, widthOf } from './vectors.js';

/** A small figure near an edge of a page: lines that touch each other. Marks are such figures, but so are punches. */
export interface Figure {
  readonly at: Point;
  readonly box: Box;
  /** What it looks like, whatever its place. */
  readonly shape: string;
  /** Numbers of its lines. */
  readonly lines: readonly number[];
  /** A text beside it that names it, on every page that has it. */
  readonly label?: string;
  /** It could be a mark: neither a lone straight line nor a plain circle, which patterns have themselves. */
  readonly isSign: boolean;
  /** It points to one side, such as a triangle at the edge that it is for, so the neighbour may have another of its own. */
  readonly leans: boolean;
}

/** Keeps sizes that people draw (multiples of 0.05 mm) away from where rounding tips over. */
const STEP_OFFSET = 0.13;

/** Figures that lean less than this share of their size are even; a triangle with equal sides leans by a seventh. */
const LEAN_MIN = 0.04;

/** Curves of a figure are followed to within this share of its size to see how it leans. */
const LEAN_TOLERANCE = 0.01;

/** Lines of one figure touch or nearly do, mm. */
const TOUCH_MM = 0.1;

/** The small figures near the edges of a page. */
export function figuresOf(page: PatternPage, lines: PageLines): Figure[] {
  return figuresIn(page, lines, (i) => isNearEdge(boxMiddle(lines.boxes[i]!), page));
}

/** The small figures of a drawing. */
export function figuresIn(
  drawing: Drawing,
  lines: PageLines,
  isAsked: (line: number) => boolean = () => true,
): Figure[] {
  const small = lines.boxes.map((_, i) => i).filter((i) => isSmall(lines.boxes[i]!) && isAsked(i));
  return groupsOf(small, lines).flatMap((group) => figureOf(group, drawing, lines) ?? []);
}

function isSmall(box: Box): boolean {
  return widthOf(box) <= FIGURE_MAX_MM && heightOf(box) <= FIGURE_MAX_MM;
}

function isNearEdge({ x, y }: Point, { widthMm, heightMm }: PatternPage): boolean {
  return Math.min(x, y, widthMm - x, heightMm - y) <= MARK_ZONE_MM;
}

/** Lines of one look whose boxes touch, directly or through others. */
function groupsOf(small: readonly number[], { boxes, looks }: PageLines): number[][] {
  const grown = small.map((i) => growBox(boxes[i]!, TOUCH_MM / 2));
  const index = createSpatialIndex(grown);
  const seen = grown.map(() => false);
  return grown.flatMap((_, first) => {
    if (seen[first]) return [];
    seen[first] = true;
    const members = [first];
    for (const member of members) {
      index.query(grown[member]!, (other) => {
        if (seen[other] || looks[small[other]!] !== looks[small[member]!]) return;
        if (!boxesTouch(grown[member]!, grown[other]!)) return;
        seen[other] = true;
        members.push(other);
      });
    }
    return [members.map((i) => small[i]!).sort((a, b) => a - b)];
  });
}

function figureOf(members: readonly number[], page: Drawing, lines: PageLines): Figure | undefined {
  if (members.length > FIGURE_MAX_LINES) return undefined;
  const box = members.map((i) => lines.boxes[i]!).reduce(boxUnion);
  const extent = Math.max(widthOf(box), heightOf(box));
  if (!isSmall(box) || extent < FIGURE_MIN_MM) return undefined;
  const at = boxMiddle(box);
  const step = (mm: number) => Math.round(mm / FIGURE_SIZE_STEP_MM + STEP_OFFSET);
  const parts = members.map((i) => {
    const { curve } = page.lines[i]!;
    const own = lines.boxes[i]!;
    return `${lines.looks[i]!}${curve.closed ? 'o' : '-'}${step(widthOf(own))},${step(heightOf(own))},${step(curveLength(curve) / 2)}`;
  });
  const lean = leanOf(members, page, at, extent);
  return {
    at,
    box,
    shape: `${parts.sort().join(';')};${lean.x},${lean.y}`,
    lines: members,
    isSign: isSign(members, page),
    leans: lean.x !== 0 || lean.y !== 0,
  };
}

/**
 * To which side of its box's middle most of a figure's length lies, across and down: a triangle that points up is another
 * mark than one that points down, which its sizes don't say.
 */
function leanOf(members: readonly number[], page: Drawing, at: Point, extent: number): Point {
  let [length, x, y] = [0, 0, 0];
  for (const i of members) {
    const { curve } = page.lines[i]!;
    const points = flattenCurve(curve, LEAN_TOLERANCE * extent);
    for (let k = 1; k < points.length; k++) {
      const [p, q] = [points[k - 1]!, points[k]!];
      const own = Math.hypot(q.x - p.x, q.y - p.y);
      length += own;
      x += own * ((p.x + q.x) / 2 - at.x);
      y += own * ((p.y + q.y) / 2 - at.y);
    }
  }
  const sideOf = (sum: number) => (Math.abs(sum) < LEAN_MIN * extent * length ? 0 : Math.sign(sum));
  return { x: sideOf(x), y: sideOf(y) };
}

function isSign(members: readonly number[], page: Drawing): boolean {
  if (members.length > 1) return true;
  const { curve } = page.lines[members[0]!]!;
  return curve.closed ? circleOfCurve(curve) === undefined : curve.segments.length > 1;
}
