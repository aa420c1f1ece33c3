import type { Body, Sighting } from './bodies.js';
import type { Problem, Sight } from './least-squares.js';
import { SLOT, SLOTS } from './unknowns.js';
import type { View } from './unknowns.js';
import { USUAL_DEVIATION, inFloorUnits } from './usual.js';

/** Size of one photo; photos of one size are taken for one camera's. */
export interface PhotoSize {
  readonly width: number;
  readonly height: number;
}

/** Where each unknown stands in the row of all. */
export interface Layout {
  readonly count: number;
  /** First of seven of the lens, the last one its focal length, for each photo. */
  readonly lens: readonly number[];
  /** First of eight of the homography and the spread after them, for each photo. */
  readonly photo: readonly number[];
  /** First of x, y, turn, and three of curl, for each body. */
  readonly body: readonly number[];
  /** First of two of size, for each body. */
  readonly size: readonly number[];
  /** First of two of a rule's zero, for each body; 0 where it has none. */
  readonly slide: readonly number[];
}

const LENS_NUMBERS = 7;

/** Always 0: stands for what a sighting does not depend on. */
const NOTHING = 0;

export function halfDiagonal({ width, height }: PhotoSize): number {
  return Math.hypot(width, height) / 2;
}

export function layOut(photos: readonly PhotoSize[], bodies: readonly Body[]): Layout {
  let count = 1;
  const take = (n: number): number => (count += n) - n;
  const once = (): ((key: string, n: number) => number) => {
    const taken = new Map<string, number>();
    return (key, n) => {
      if (!taken.has(key)) taken.set(key, take(n));
      return taken.get(key)!;
    };
  };
  const lensOf = once();
  const sizeOf = once();
  return {
    lens: photos.map(({ width, height }) => lensOf(`${width}x${height}`, LENS_NUMBERS)),
    photo: photos.map(() => take(9)),
    body: bodies.map(() => take(6)),
    size: bodies.map(({ sizeGroup }) => sizeOf(sizeGroup, 2)),
    slide: bodies.map(({ slides }) => (slides ? take(2) : NOTHING)),
    count,
  };
}

/** The problem in numbers. The body `fixed` stays where it is: the floor's coordinates hang on it. */
export function assemble(
  photos: readonly PhotoSize[],
  bodies: readonly Body[],
  sightings: readonly Sighting[],
  views: readonly View[],
  layout: Layout,
  fixed: number,
): Problem {
  const groups = new Map<string, number>();
  const sights = sightings.map((sighting) => {
    if (!groups.has(sighting.group)) groups.set(sighting.group, groups.size);
    return sightOf(sighting, photos, bodies, layout, groups.get(sighting.group)!);
  });
  return {
    sights,
    views,
    groups: groups.size,
    usual: new Float64Array(layout.count),
    deviations: deviationsOf(photos, bodies, layout, fixed),
    conditions: photos.map((_, photo) => conditionSlots(layout, photo)),
  };
}

function sightOf(
  sighting: Sighting,
  photos: readonly PhotoSize[],
  bodies: readonly Body[],
  layout: Layout,
  group: number,
): Sight {
  const photo = photos[sighting.photo]!;
  const body = bodies[sighting.body]!;
  const radius = halfDiagonal(photo);
  return {
    fixed: {
      onX: inFloorUnits(sighting.on.x),
      onY: inFloorUnits(sighting.on.y),
      spreadX: sighting.spread.x,
      spreadY: sighting.spread.y,
      slideX: sighting.slide.x,
      slideY: sighting.slide.y,
      shareX: sighting.on.x / body.half.x,
      shareY: sighting.on.y / body.half.y,
      stretchX: body.stretch.x,
      stretchY: body.stretch.y,
    },
    photo: sighting.photo,
    slots: slotsOf(layout, sighting.photo, sighting.body),
    x: (sighting.px.x - (photo.width - 1) / 2) / radius,
    y: (sighting.px.y - (photo.height - 1) / 2) / radius,
    sharpness: radius / sighting.deviationPx,
    group,
  };
}

export function slotsOf(layout: Layout, photo: number, body: number): Int32Array {
  const slots = new Int32Array(SLOTS).fill(NOTHING);
  const run = (slot: number, first: number, n: number): void => {
    for (let i = 0; i < n; i++) slots[slot + i] = first === NOTHING ? NOTHING : first + i;
  };
  run(SLOT.homography, layout.photo[photo]!, 8);
  run(SLOT.k1, layout.lens[photo]!, 6);
  run(SLOT.spread, layout.photo[photo]! + 8, 1);
  run(SLOT.x, layout.body[body]!, 6);
  run(SLOT.sizeX, layout.size[body]!, 2);
  run(SLOT.slideX, layout.slide[body]!, 2);
  return slots;
}

/** See `squareness`. */
function conditionSlots({ photo: photos, lens: lenses }: Layout, photo: number): Int32Array {
  const [h, lens] = [photos[photo]!, lenses[photo]!];
  const homography = Array.from({ length: 8 }, (_, i) => h + i);
  return Int32Array.from([...homography, lens + 4, lens + 5, lens + 6]);
}

function deviationsOf(
  photos: readonly PhotoSize[],
  bodies: readonly Body[],
  layout: Layout,
  fixed: number,
): Float64Array {
  const deviations = new Float64Array(layout.count);
  const { k1, k2, p, axis, focal, spreadMm, slideMm } = USUAL_DEVIATION;
  photos.forEach((_, i) => {
    deviations.set([k1, k2, p, p, axis, axis, focal], layout.lens[i]);
    deviations.fill(Infinity, layout.photo[i], layout.photo[i]! + 8);
    deviations[layout.photo[i]! + 8] = inFloorUnits(spreadMm);
  });
  bodies.forEach((body, i) => {
    if (i !== fixed) deviations.fill(Infinity, layout.body[i], layout.body[i]! + 3);
    deviations.fill(inFloorUnits(body.curlMm), layout.body[i]! + 3, layout.body[i]! + 6);
    deviations.set([body.sizeShare.x, body.sizeShare.y], layout.size[i]);
    if (body.slides) deviations.fill(inFloorUnits(slideMm), layout.slide[i], layout.slide[i]! + 2);
  });
  return deviations;
}
