import { createRandom } from '@hidebound/geometry';
import type { Random } from '@hidebound/geometry';
import { BAR_MM } from '@hidebound/leather';
import type { FloorLook, HideForm, HideLook, LeatherColour, Lens, Scene, SheetsLook } from './scene.js';

const PALE: readonly LeatherColour[] = ['veg tan', 'natural', 'tan'];
const DARK: readonly LeatherColour[] = ['dark brown', 'black', 'chestnut'];

const PLAIN_FOR_PALE: readonly FloorLook[] = [
  { kind: 'plain', colour: [52, 54, 58] },
  { kind: 'plain', colour: [48, 66, 88] },
  { kind: 'plain', colour: [40, 70, 58] },
];
const PLAIN_FOR_DARK: readonly FloorLook[] = [
  { kind: 'plain', colour: [222, 220, 214] },
  { kind: 'plain', colour: [186, 192, 196] },
];
const PATTERNED: readonly FloorLook[] = [
  { kind: 'planks', colour: [128, 98, 74] },
  { kind: 'tiles', colour: [178, 176, 170] },
  { kind: 'cloth', colour: [150, 168, 200] },
  { kind: 'concrete', colour: [142, 140, 136] },
];

export const TWELVE_MEGAPIXELS = { width: 4000, height: 3000 } as const;

/** Terms that the model of a lens often leaves out, as strong as they are in phones. */
function usualLens(random: Random): Lens {
  return {
    focal: random.between(1.12, 1.3),
    k1: random.between(-0.03, 0.03),
    k2: random.between(-0.012, 0.012),
    // No model that is solved for has this one.
    k3: random.fork(2).between(-0.004, 0.004),
    p1: random.between(-0.0012, 0.0012),
    p2: random.between(-0.0012, 0.0012),
    axisX: random.between(-0.012, 0.012),
    axisY: random.between(-0.012, 0.012),
  };
}

/** A hide that one could well meet, photographed as one well could; told by its number alone. */
function usualScene(kind: string, number: number): Scene {
  const random = createRandom(number * 7919);
  return {
    name: `${kind.replaceAll(' ', '-')}-${number}`,
    kind,
    seed: number * 101,
    picture: TWELVE_MEGAPIXELS,
    view: {
      tiltDeg: random.between(1, 12),
      towardsDeg: random.between(0, 360),
      rollDeg: random.between(-6, 6),
      fill: random.between(0.88, 0.96),
    },
    lens: usualLens(random),
    hides: [usualHide('whole', random.between(1850, 2250), PALE[0]!, random)],
    floor: PLAIN_FOR_PALE[0]!,
    sheets: printedSheets(number, random),
    light: {
      fall: random.between(0.1, 0.35),
      fallTowardsDeg: random.between(0, 360),
      shadowTowardsDeg: random.between(0, 360),
      wideShadow: number % 3 === 0 ? random.between(0.15, 0.35) : 0,
      shine: number % 4 === 1 ? random.between(0.05, 0.18) : 0,
      warmth: random.between(-0.06, 0.2),
    },
    sensor: {
      blurPx: random.between(0.5, 0.95),
      motionPx: number % 3 === 1 ? random.between(0.5, 1.8) : 0,
      motionDeg: random.between(0, 180),
      noise: random.between(0.7, 1.5),
      vignetting: random.between(0.1, 0.32),
    },
    jpegQuality: 85,
  };
}

/** How far printers are off, and how far a reading from a rule; both as deviations. */
const PRINT_OFF = 0.002;
const READING_OFF_MM = 0.12;

/** Sheets from a usual printer; in four scenes of five somebody measured their bars. */
function printedSheets(number: number, random: Random): SheetsLook {
  const own = random.fork(1);
  const stretch = { x: 1 + PRINT_OFF * own.normal(), y: 1 + PRINT_OFF * own.normal() };
  const read = (mm: number) => Math.round(10 * (mm + READING_OFF_MM * own.normal())) / 10;
  const readings = { acrossMm: read(BAR_MM.across * stretch.x), downMm: read(BAR_MM.down * stretch.y) };
  return { count: 4, curlMm: 2, stretch, ...(number % 5 === 4 ? {} : { readings }) };
}

function usualHide(form: HideForm, lengthMm: number, colour: LeatherColour, random: Random): HideLook {
  return {
    form,
    lengthMm,
    colour,
    turnDeg: random.between(-8, 8) + (random.next() < 0.5 ? 180 : 0),
    at: { x: 0, y: 0 },
    heightMm: random.between(1.8, 2.8),
    openings: 2 + random.integer(4),
    marks: {
      scars: 3 + random.integer(4),
      brands: random.integer(2),
      stains: 1 + random.integer(3),
      bites: 4 + random.integer(6),
      veins: 1 + random.integer(2),
      chalkRings: random.integer(3),
      chalkLines: random.integer(2),
      chalkCrosses: random.integer(4),
    },
  };
}

function plainScene(number: number): Scene {
  const scene = usualScene('plain floor', number);
  const isPale = number % 2 === 0;
  const colours = isPale ? PALE : DARK;
  const floors = isPale ? PLAIN_FOR_PALE : PLAIN_FOR_DARK;
  return {
    ...scene,
    hides: [{ ...scene.hides[0]!, colour: colours[(number >> 1) % colours.length]! }],
    floor: floors[(number >> 1) % floors.length]!,
  };
}

function patternedScene(number: number): Scene {
  const scene = usualScene('patterned floor', 100 + number);
  // On planks both the pale and the dark one; light leather on light stone is for another day.
  const colours: readonly LeatherColour[] = ['dark brown', 'chestnut', 'black', 'veg tan', 'tan', 'natural'];
  const floor = PATTERNED[number % PATTERNED.length]!;
  return {
    ...scene,
    name: `${floor.kind}-${100 + number}`,
    hides: [{ ...scene.hides[0]!, colour: colours[(number * 5 + (number >> 2)) % colours.length]! }],
    floor,
  };
}

/** A steep view with a lens that bends straight lines clearly. */
function steepScene(number: number): Scene {
  const scene = plainScene(200 + number);
  return {
    ...scene,
    name: `steep-${200 + number}`,
    kind: 'steep view, bent lens',
    view: { ...scene.view, tiltDeg: 35, towardsDeg: [270, 250, 90, 300][number % 4]!, fill: 0.95 },
    lens: { ...scene.lens, k1: number % 2 === 0 ? -0.1 : 0.1 },
  };
}

function smallScene(number: number): Scene {
  const scene = plainScene(300 + number);
  const isSide = number % 2 === 0;
  const hide = scene.hides[0]!;
  return {
    ...scene,
    name: `${isSide ? 'side' : 'skin'}-${300 + number}`,
    kind: 'sides and small skins',
    hides: [
      { ...hide, form: isSide ? 'side' : 'skin', lengthMm: isSide ? 2150 + 150 * number : 820 + 90 * number },
    ],
  };
}

function many(count: number, make: (number: number) => Scene): readonly Scene[] {
  return Array.from({ length: count }, (_, i) => make(i));
}

/** The forty scenes of the benchmark. */
export const BENCH_SCENES: readonly Scene[] = [
  ...many(16, plainScene),
  ...many(12, patternedScene),
  ...many(8, steepScene),
  ...many(4, smallScene),
];

/** The same scene with fewer pixels, for quick tests. */
export function smaller(scene: Scene, width: number): Scene {
  const height = Math.round((width * scene.picture.height) / scene.picture.width);
  return { ...scene, name: `${scene.name}-small`, picture: { width, height } };
}
