import { PX_PER_MM, isBlack, median, readPbm, toPx } from './bitmap.js';
import type { Bitmap } from './bitmap.js';
import type { LayoutSample, LineKind } from './layout-lines.js';
import { moved, movedBack } from './pose.js';
import type { Pose } from './pose.js';
import type { PageReading } from './read-page.js';

/** One place of the layout looked at on one page. */
export interface Measured {
  readonly sample: LayoutSample;
  readonly page: number;
  /** From where the layout has it to the middle of the line in the pixels, across the line, mm; undefined: nothing black there. */
  readonly off: number | undefined;
  /** True: more than one line, or something else, lies there, so that nothing can be said. */
  readonly isHidden: boolean;
}

/** What lies within this of a window's edge is not looked at, mm: a line may be cut off there. */
const WINDOW_INSET = 0.5;
const STEP = 0.01;
/** A line may be broader or narrower than others of its kind by this, mm: about three pixels' edges. */
const BREADTH_OFF = 0.1;

/** Looks at every sample on every page whose window shows it, `reach` mm to both sides of where the layout has it. */
export function measureLines(
  readings: readonly PageReading[],
  poses: ReadonlyMap<number, Pose>,
  samples: readonly LayoutSample[],
  layoutAt: Pose,
  reach: number,
  fileOf: (reading: PageReading) => string,
): Measured[] {
  const looks = [...poses].flatMap(([page, pose]) => {
    const reading = readings[page]!;
    const bitmap = readPbm(fileOf(reading));
    return samples.flatMap((sample) => {
      const stretches = blackAcross(bitmap, reading, pose, sample, layoutAt, reach);
      return stretches === undefined ? [] : [{ sample, page, stretches }];
    });
  });
  const breadths = new Map<LineKind, number>();
  for (const kind of ['cut line', 'hide edge'] as const) {
    const single = looks.filter((look) => look.sample.kind === kind && look.stretches.length === 1);
    if (single.length > 0)
      breadths.set(kind, median(single.map(({ stretches: [one] }) => one![1] - one![0])));
  }
  return looks.map(({ sample, page, stretches }) => {
    const [one] = stretches;
    if (one === undefined) return { sample, page, off: undefined, isHidden: false };
    const [from, to] = one;
    const isHidden =
      stretches.length > 1 ||
      from <= -reach + STEP ||
      to >= reach - STEP ||
      Math.abs(to - from - breadths.get(sample.kind)!) > BREADTH_OFF;
    return { sample, page, off: (from + to) / 2, isHidden };
  });
}

/** Black stretches across the line, mm from where the layout has it; undefined where the page doesn't show the place. */
function blackAcross(
  bitmap: Bitmap,
  reading: PageReading,
  pose: Pose,
  sample: LayoutSample,
  layoutAt: Pose,
  reach: number,
): (readonly [number, number])[] | undefined {
  const place = movedBack(pose, moved(layoutAt, sample));
  const beyond = reading.figures.halfOverlap - WINDOW_INSET - reach;
  const { topLeft, bottomRight } = reading.crosses;
  if (place.x < topLeft.x - beyond || place.x > bottomRight.x + beyond) return undefined;
  if (place.y < topLeft.y - beyond || place.y > bottomRight.y + beyond) return undefined;
  const across = moved(
    { x: 0, y: 0, turn: layoutAt.turn - pose.turn },
    { x: sample.acrossX, y: sample.acrossY },
  );
  const { x, y } = toPx(place);
  const stretches: [number, number][] = [];
  let was = false;
  for (let d = -reach; d <= reach; d += STEP) {
    const is = isBlack(bitmap, x + d * across.x * PX_PER_MM, y + d * across.y * PX_PER_MM);
    if (is && !was) stretches.push([d - STEP / 2, d]);
    if (is) stretches[stretches.length - 1]![1] = d + STEP / 2;
    was = is;
  }
  return stretches;
}
