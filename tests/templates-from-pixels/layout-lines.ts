import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import type { CurveText, HideText, LayoutText, Pair } from './layout-text.js';
import type { Point } from './bitmap.js';
import { moved } from './pose.js';

/** What a line of the layout is; each kind is drawn with a width of its own. */
export type LineKind = 'cut line' | 'hide edge';

/** A place on a line of the layout: mm on the hide, with the unit vector across the line. */
export interface LayoutSample extends Point {
  readonly kind: LineKind;
  readonly of: string;
  readonly acrossX: number;
  readonly acrossY: number;
}

/** Reads a layout and a hide of it, and samples the cut lines of its pieces and its own edge every so many mm. */
export function layoutSamples(layoutFile: string, hideId: string, everyMm: number): LayoutSample[] {
  const layout = JSON.parse(readFileSync(layoutFile, 'utf8')) as LayoutText;
  const hideFile = layout.hides.find(({ id }) => id === hideId)!.file;
  const hide = JSON.parse(readFileSync(resolve(dirname(layoutFile), hideFile), 'utf8')) as HideText;
  const edges = [hide.outline, ...(hide.openings ?? [])].flatMap((curve) =>
    samplesAlong(curve, everyMm).map((at) => ({ ...at, kind: 'hide edge' as const, of: 'the hide' })),
  );
  const cuts = layout.placements
    .filter((placement) => placement.hide === hideId)
    .flatMap((placement) => {
      const { article, piece, mirrored, x, y, rotationDeg } = placement;
      const { shape } = layout.pieces.find((one) => one.article === article && one.piece === piece)!;
      const pose = { x, y, turn: (rotationDeg * Math.PI) / 180 };
      const flip = mirrored ? -1 : 1;
      return [shape.cut, ...shape.cutOuts].flatMap((curve) =>
        samplesAlong(curve, everyMm).map((at) => {
          const across = moved({ x: 0, y: 0, turn: pose.turn }, { x: flip * at.acrossX, y: at.acrossY });
          return {
            ...moved(pose, { x: flip * at.x, y: at.y }),
            acrossX: across.x,
            acrossY: across.y,
            kind: 'cut line' as const,
            of: `${article}/${piece}`,
          };
        }),
      );
    });
  return [...edges, ...cuts];
}

type Across = Omit<LayoutSample, 'kind' | 'of'>;

/** Straight bits that a curved run is divided into. */
const BITS = 200;

function samplesAlong({ start, segments }: CurveText, everyMm: number): Across[] {
  const points: Pair[] = [start];
  let from = start;
  for (const segment of segments) {
    const { to } = segment;
    const isCurved = segment.via !== undefined || segment.handles !== undefined;
    for (let i = 1; i <= (isCurved ? BITS : 1); i++) {
      const t = isCurved ? i / BITS : 1;
      if (segment.via !== undefined) points.push(onArc(from, segment.via, to, t));
      else if (segment.handles !== undefined) points.push(onBezier(from, segment.handles, to, t));
      else points.push(to);
    }
    from = to;
  }
  const samples: Across[] = [];
  let next = everyMm / 2;
  for (let i = 0; i + 1 < points.length; i++) {
    const [[ax, ay], [bx, by]] = [points[i]!, points[i + 1]!];
    const length = Math.hypot(bx - ax, by - ay);
    for (; next < length; next += everyMm) {
      const t = next / length;
      const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
      samples.push({ x: ax + t * (bx - ax), y: ay + t * (by - ay), acrossX: -uy, acrossY: ux });
    }
    next -= length;
  }
  return samples;
}

function onBezier(from: Pair, handles: readonly [Pair, Pair], to: Pair, t: number): Pair {
  const s = 1 - t;
  const along = (i: 0 | 1): number =>
    s * s * s * from[i] + 3 * s * s * t * handles[0][i] + 3 * s * t * t * handles[1][i] + t * t * t * to[i];
  return [along(0), along(1)];
}

/** A place on the arc from one point through another to a third: the circle through them, the way that passes `via`. */
function onArc(from: Pair, via: Pair, to: Pair, t: number): Pair {
  const [ax, ay, bx, by] = [via[0] - from[0], via[1] - from[1], to[0] - from[0], to[1] - from[1]];
  const double = 2 * (ax * by - ay * bx);
  const cx = from[0] + (by * (ax * ax + ay * ay) - ay * (bx * bx + by * by)) / double;
  const cy = from[1] + (ax * (bx * bx + by * by) - bx * (ax * ax + ay * ay)) / double;
  const angleOf = ([x, y]: Pair): number => Math.atan2(y - cy, x - cx);
  const whole = (angle: number): number => (angle + 4 * Math.PI) % (2 * Math.PI);
  const begin = angleOf(from);
  const forth = whole(angleOf(to) - begin);
  const sweep = whole(angleOf(via) - begin) <= forth ? forth : forth - 2 * Math.PI;
  const radius = Math.hypot(from[0] - cx, from[1] - cy);
  const angle = begin + t * sweep;
  return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
}
