import { writeFileSync } from 'node:fs';
import { BENCH_SCENES, encodePhoto, renderScene, smaller } from './camera/index.js';
import type { Point } from '@hidebound/geometry';
import type { Scene, SimulatedPhoto } from './camera/index.js';
import { ROOT } from './cli-support.js';

/** Small enough to be rendered in seconds, large enough that markers have four pixels a field. */
export const TEST_WIDTH = 2000;

/** A scene of the benchmark by its name, with fewer pixels. */
export function sceneNamed(name: string, width: number = TEST_WIDTH): Scene {
  const scene = BENCH_SCENES.find((each) => each.name === name);
  if (scene === undefined) throw new Error(`There is no scene ${name}.`);
  return smaller(scene, width);
}

/** Renders a scene into a JPEG file. */
export async function photograph(scene: Scene, file: string): Promise<SimulatedPhoto> {
  const photo = renderScene(scene);
  writeFileSync(file, await encodePhoto(photo, scene.jpegQuality, ROOT));
  return photo;
}

/** The same picture with some of its reference sheets painted over with what lies beside them. */
export function withoutSheets(photo: SimulatedPhoto, isGone: (sheet: number) => boolean): SimulatedPhoto {
  const rgb = photo.rgb.slice();
  for (const { sheet, cornersPx } of photo.truth.sheets) {
    if (!isGone(sheet)) continue;
    paintBox(
      rgb,
      photo,
      cornersPx.flatMap(({ corners }) => corners),
    );
  }
  return { ...photo, rgb };
}

/** Markers keep this share of their own size free around them. */
const AROUND = 0.25;

function paintBox(rgb: Uint8Array, { width, height }: SimulatedPhoto, points: readonly Point[]): void {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const room = AROUND * Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  const [left, right] = [
    Math.max(0, Math.floor(Math.min(...xs) - room)),
    Math.min(width - 1, Math.ceil(Math.max(...xs) + room)),
  ];
  const [top, bottom] = [
    Math.max(0, Math.floor(Math.min(...ys) - room)),
    Math.min(height - 1, Math.ceil(Math.max(...ys) + room)),
  ];
  const from = (top * width + left) * 3;
  const colour = rgb.slice(from, from + 3);
  for (let y = top; y <= bottom; y++)
    for (let x = left; x <= right; x++) rgb.set(colour, (y * width + x) * 3);
}

export async function writePhoto(photo: SimulatedPhoto, file: string): Promise<void> {
  writeFileSync(file, await encodePhoto(photo, 85, ROOT));
}

/** The picture without what lies below a line: as if the camera had been held higher. */
export function cutBelow(photo: SimulatedPhoto, height: number): SimulatedPhoto {
  return { ...photo, height, rgb: photo.rgb.slice(0, photo.width * height * 3) };
}

/** A round spot of blown-out light. */
export function withGlare(photo: SimulatedPhoto, at: Point, radius: number): SimulatedPhoto {
  const rgb = photo.rgb.slice();
  for (let y = 0; y < photo.height; y++) {
    for (let x = 0; x < photo.width; x++) {
      if (Math.hypot(x - at.x, y - at.y) < radius)
        rgb.fill(255, (y * photo.width + x) * 3, (y * photo.width + x + 1) * 3);
    }
  }
  return { ...photo, rgb };
}
