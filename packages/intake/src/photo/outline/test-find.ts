import { pointToRing, ringArea } from '@hidebound/geometry';
import type { Ring } from '@hidebound/geometry';
import { newFindings } from '../../findings.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import { loadVision } from '../vision/load-vision.js';
import { findOutlines } from './find-outlines.js';
import type { FoundOutline, OutlineOptions } from './find-outlines.js';
import { drawScene } from './test-scenes.js';
import type { TestScene } from './test-scenes.js';

/** Scenes that several tests look at are drawn once. */
const drawn = new Map<string, StraightPicture>();

function pictureOf(scene: TestScene): StraightPicture {
  const key = JSON.stringify(scene);
  const picture = drawn.get(key) ?? drawScene(scene);
  drawn.set(key, picture);
  return picture;
}

/** Draws the scene and finds what lies in it. */
export async function find(scene: TestScene, options: Partial<OutlineOptions> = {}) {
  const { vision } = await loadVision();
  const findings = newFindings('drawn.png');
  const found = findOutlines(pictureOf(scene), { papers: scene.papers ?? [], ...options }, vision, findings);
  return { pieces: found.pieces, codes: findings.diagnostics.map(({ code }) => code) };
}

/** How far the found outline lies from the drawn one (mm), both ways, and by what share its area differs. */
export function errors(piece: FoundOutline, truth: Ring): { median: number; worst: number; area: number } {
  const away = [
    ...piece.outline.map((p) => pointToRing(p, truth)),
    ...truth.map((p) => pointToRing(p, piece.outline)),
  ].sort((a, b) => a - b);
  return {
    median: away[away.length >> 1]!,
    worst: away[away.length - 1]!,
    area: Math.abs(ringArea(piece.outline) / ringArea(truth) - 1),
  };
}
