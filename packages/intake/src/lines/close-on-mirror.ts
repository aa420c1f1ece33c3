import { arcCentre, createSpatialIndex, curveBox, curveEndPoints, growBox } from '@hidebound/geometry';
import type { Box, Curve } from '@hidebound/geometry';
import type { LineRole } from '@hidebound/leather';
import { JOIN_MM, PUNCH_MAX_DIAMETER_MM } from '../limits.js';
import type { Stretch } from './axis.js';
import { axisOnEdge, boxOf, commonAxis, edgesOf, stretchOfMirror } from './mirror-line.js';
import type { Edges } from './mirror-line.js';
import type { RoleLine } from './role-line.js';

/** Lines of these roles bound an area, so that half of one is closed along the mirror line. */
const AREA_ROLES = new Set<LineRole>(['cut', 'cut-out', 'punch', 'face']);

interface Mirror {
  readonly stretch: Stretch;
  readonly box: Box;
}

/**
 * Open outlines with both ends on a mirror line are closed by a straight line along it: halves drawn without their
 * fold edge. Of lines without a role only the widest one at a mirror line is an outline, and only where no other
 * outline ends there; half circles up to the size of a punch are holes.
 */
export function closeOnMirrors(lines: readonly RoleLine[]): RoleLine[] {
  const mirrors = mirrorsAmong(lines);
  if (mirrors.length === 0) return [...lines];
  const index = createSpatialIndex(mirrors.map(({ box }) => box));
  const closed = new Set<number>();
  const widest = new Map<number, { readonly line: number; readonly widthMm: number }>();
  lines.forEach((line, i) => {
    if (line.role === 'mirror' || line.curve.closed) return;
    const mirror = mirrorUnder(line.curve, mirrors, index);
    if (mirror === undefined) return;
    if ((line.role !== undefined && AREA_ROLES.has(line.role)) || isHalfHole(line)) closed.add(i);
    else if (line.role === undefined) {
      const { start, end } = curveEndPoints(line.curve);
      const widthMm = Math.hypot(end.x - start.x, end.y - start.y);
      if (widthMm > (widest.get(mirror)?.widthMm ?? 0)) widest.set(mirror, { line: i, widthMm });
    }
  });
  const outlines = [...lines.keys()].filter((i) => canBeOutline(lines[i]!, closed.has(i)));
  const known = new Map<number, Edges>();
  const edges = (i: number): Edges => {
    const own = known.get(i) ?? edgesOf(closedStraight(lines[i]!.curve));
    known.set(i, own);
    return own;
  };
  const near = createSpatialIndex(outlines.map((i) => curveBox(lines[i]!.curve)));
  for (const [mirror, { line }] of widest) {
    const { stretch, box } = mirrors[mirror]!;
    let isTaken = false;
    near.query(box, (k) => (isTaken = axisOnEdge(edges(outlines[k]!), stretch) !== undefined));
    if (!isTaken) closed.add(line);
  }
  return lines.map((line, i) => (closed.has(i) ? { ...line, curve: closedStraight(line.curve) } : line));
}

function mirrorsAmong(lines: readonly RoleLine[]): Mirror[] {
  return lines.flatMap(({ role, curve }) => {
    const stretch = role === 'mirror' ? stretchOfMirror(curve) : undefined;
    return stretch === undefined ? [] : [{ stretch, box: growBox(curveBox(curve), JOIN_MM) }];
  });
}

/** Number of the mirror line on which both ends of the open curve lie. */
function mirrorUnder(
  curve: Curve,
  mirrors: readonly Mirror[],
  index: ReturnType<typeof createSpatialIndex>,
): number | undefined {
  const { start, end } = curveEndPoints(curve);
  const gap = { from: start, to: end };
  let found: number | undefined;
  index.query(boxOf(gap), (m) => {
    if (commonAxis(gap, mirrors[m]!.stretch) === undefined) return;
    if (found === undefined || m < found) found = m;
  });
  return found;
}

/** One or more arcs or cubics that bulge half a punch off the mirror line, of role none. */
function isHalfHole({ role, curve }: RoleLine): boolean {
  if (role !== undefined) return false;
  const { start, end } = curveEndPoints(curve);
  if (Math.hypot(end.x - start.x, end.y - start.y) > PUNCH_MAX_DIAMETER_MM) return false;
  const [only] = curve.segments;
  if (curve.segments.length !== 1 || only?.kind !== 'arc') return false;
  const circle = arcCentre(start, only.via, end);
  return circle !== 'straight' && Math.abs(Math.abs(circle.sweepDeg) - 180) < 1;
}

function canBeOutline({ role, curve }: RoleLine, isClosedNow: boolean): boolean {
  return curve.closed ? role === undefined || role === 'cut' : role === 'cut' && isClosedNow;
}

function closedStraight(curve: Curve): Curve {
  if (curve.closed) return curve;
  return { ...curve, segments: [...curve.segments, { kind: 'line', to: curve.start }], closed: true };
}
