import { transformCurve, transformRegion, translation } from '@hidebound/geometry';
import type { Affine } from '@hidebound/geometry';
import { sheetFrame } from '@hidebound/leather';
import type { PageSettings } from '@hidebound/leather';
import type { CardScene, TemplateCard } from './card-scene.js';
import { sceneLine } from './template-scene.js';
import type { TemplateScene } from './template-scene.js';

/** Between cards side by side. */
const GAP_MM = 8;

/** A card as it lies in a strip, its long side down. */
interface Standing {
  readonly scene: CardScene;
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * Shapes that are longer than a sheet, in strips: narrow ones of like length side by side as far as a sheet is wide, so
 * that one row of tiled pages holds several; each of the others by itself.
 */
export function largeCardScenes(settings: PageSettings, cards: readonly TemplateCard[]): TemplateScene[] {
  const standing = cards.map(standUp).sort((a, b) => b.heightMm - a.heightMm);
  const room = roomAcross(settings);
  const strips: Standing[][] = [];
  for (const card of standing) {
    const strip = strips.find((each) => stripWidth(each) + GAP_MM + card.widthMm <= room);
    if (strip === undefined) strips.push([card]);
    else strip.push(card);
  }
  return strips.map(toScene);
}

function standUp(card: TemplateCard): Standing {
  const drawn = [0, 90].map((turn) => {
    const scene = card.draw(turn);
    const { minX, minY, maxX, maxY } = scene.shape.box;
    return { scene, widthMm: maxX - minX, heightMm: maxY - minY };
  });
  return drawn[0]!.heightMm >= drawn[1]!.heightMm ? drawn[0]! : drawn[1]!;
}

/** How wide a strip may be so that its pages lie one below the other. */
function roomAcross(settings: PageSettings): number {
  const frame = sheetFrame(settings, 'upright', { widthMm: 0, heightMm: 0 });
  return frame === undefined ? 0 : frame.window.maxX - frame.window.minX - GAP_MM;
}

function stripWidth(strip: readonly Standing[]): number {
  return strip.reduce((sum, card) => sum + card.widthMm, 0) + GAP_MM * (strip.length - 1);
}

function toScene(strip: readonly Standing[]): TemplateScene {
  let x = 0;
  const moved = strip.map(({ scene, widthMm }) => {
    const { box } = scene.shape;
    const placed = moveCard(scene, translation(x - box.minX, -box.minY));
    x += widthMm + GAP_MM;
    return placed;
  });
  return {
    shapes: moved.map(({ shape }) => shape),
    lines: moved.flatMap(({ lines }) => lines),
    notes: [],
    edges: [],
  };
}

function moveCard({ shape, lines }: CardScene, move: Affine): CardScene {
  const { e: dx, f: dy } = move;
  const { box } = shape;
  return {
    shape: {
      ...shape,
      region: transformRegion(move, shape.region),
      box: { minX: box.minX + dx, minY: box.minY + dy, maxX: box.maxX + dx, maxY: box.maxY + dy },
      inner: shape.inner.map((points) => points.map((p) => ({ x: p.x + dx, y: p.y + dy }))),
    },
    lines: lines.map(({ kind, curve }) => sceneLine(kind, transformCurve(move, curve))),
  };
}
