import { MARKERS_PER_SHEET, markerCorners } from '@hidebound/leather';
import { createRandom } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { floorTile } from './floor-tile.js';
import { hideOutline } from './hide-outline.js';
import { laySheets, paperRing } from './lay-sheets.js';
import { leatherMap } from './leather-map.js';
import { inventMarks } from './marks.js';
import { photograph } from './photograph.js';
import { aimCamera, project } from './pinhole.js';
import type { HideTruth, PinholeCamera, Scene, SceneTruth, SheetTruth } from './scene.js';
import { develop } from './sensor.js';
import type { SimulatedPicture } from './sensor.js';
import { drawSheet } from './sheet-picture.js';
import type { SheetPicture } from './sheet-picture.js';
import { placeOnFloor } from './sheet-surface.js';
import type { SheetSurface } from './sheet-surface.js';

export interface SimulatedPhoto extends SimulatedPicture {
  readonly truth: SceneTruth;
}

export interface RenderOptions {
  /** Printed sheets to lay instead of ones drawn from the plan alone. */
  readonly sheetPicture?: (sheet: number) => SheetPicture;
}

/** Maps are made at one of these, px/mm: finer than the photo sees. */
const MAP_SCALES = [0.5, 1, 2, 4] as const;
const FLOOR_SIDE = 4096;
/** Small pictures show little of the floor; less of it is made for them. */
const SMALL_FLOOR_SIDE = 2048;
const SMALL_PICTURE_PX = 3e6;

/** A scene as its photo and what is true of it. */
export function renderScene(scene: Scene, options: RenderOptions = {}): SimulatedPhoto {
  return renderStage(scene, setStage(scene, options));
}

/** Where everything lies, and the camera over it. */
export interface SetStage {
  readonly hides: readonly HideTruth[];
  readonly sheets: readonly SheetSurface[];
  readonly camera: PinholeCamera;
}

/** A scene's looks with everything laid as the stage says: the first hide looks as the scene's first, and so on. */
export function renderStage(scene: Scene, { hides, sheets, camera }: SetStage): SimulatedPhoto {
  const pxPerMm = mapScale(camera, hides);
  const leathers = scene.hides.map((look, i) =>
    leatherMap(look, hides[i]!, scene.light, pxPerMm, scene.seed + 100 * (i + 1)),
  );
  const side = camera.width * camera.height < SMALL_PICTURE_PX ? SMALL_FLOOR_SIDE : FLOOR_SIDE;
  const floor = floorTile(scene.floor, side, pxPerMm, scene.seed + 50);
  const seen = photograph({ camera, floor, leathers, sheets, light: scene.light });
  const picture = develop(seen, camera, scene.sensor, scene.light, scene.seed + 60);
  return { ...picture, truth: { hides, sheets: sheets.map((sheet) => sheetTruth(sheet, camera)), camera } };
}

/** Where everything lies and how the camera sees it, without making a picture. */
export function setStage(scene: Scene, options: RenderOptions = {}): SetStage {
  const hides = scene.hides.map((look, i): HideTruth => {
    const seed = scene.seed + 17 * (i + 1);
    const { outline, backbone } = hideOutline(look, seed);
    const { openings, marks } = inventMarks(look, outline, createRandom(seed + 5));
    return { outline, openings, backbone, marks, heightMm: look.heightMm };
  });
  const laid = laySheets(
    scene.sheets.count,
    hides.map(({ outline }) => outline),
    scene.seed + 3,
  );
  const random = createRandom(scene.seed + 4);
  const sheets = laid.map((sheet): SheetSurface => {
    const highest = random.integer(4);
    const lifts = [0, 1, 2, 3].map(
      (corner) => scene.sheets.curlMm * (corner === highest ? 1 : random.next()),
    );
    const picture = (options.sheetPicture ?? drawSheet)(sheet.sheet);
    return { laid: sheet, picture, lifts, stretch: scene.sheets.stretch };
  });
  const all: readonly Point[] = [...hides.flatMap(({ outline }) => outline), ...laid.flatMap(paperRing)];
  return { hides, sheets, camera: aimCamera(scene, all) };
}

/** What the photo resolves best, and half as fine again. */
function mapScale(camera: PinholeCamera, hides: readonly HideTruth[]): number {
  const best = Math.max(
    ...hides.flatMap(({ outline }) =>
      outline.map((point) => {
        const here = project(camera, { ...point, z: 0 });
        const right = project(camera, { x: point.x + 1, y: point.y, z: 0 });
        return Math.hypot(right.x - here.x, right.y - here.y);
      }),
    ),
  );
  return MAP_SCALES.find((scale) => scale >= 1.15 * best) ?? MAP_SCALES[MAP_SCALES.length - 1]!;
}

function sheetTruth(surface: SheetSurface, camera: PinholeCamera): SheetTruth {
  const { sheet, x, y, turnDeg } = surface.laid;
  return {
    sheet,
    x,
    y,
    turnDeg,
    liftsMm: surface.lifts,
    paper: paperRing(surface.laid),
    cornersPx: Array.from({ length: MARKERS_PER_SHEET }, (_, place) => ({
      place,
      corners: markerCorners(place).map((corner) => project(camera, placeOnFloor(surface, corner))),
    })),
  };
}
