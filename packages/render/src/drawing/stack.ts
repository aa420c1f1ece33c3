import { composeAffine, scaling, translation } from '@hidebound/geometry';
import { group } from './build.js';
import type { Drawing } from './model.js';

/** A drawing with how many times it is enlarged. */
export interface StackedDrawing {
  readonly drawing: Drawing;
  readonly grow: number;
}

/** Drawings one below the other as one; layers of equal names stay apart. The title is that of the last one. */
export function stackDrawings(drawings: readonly StackedDrawing[]): Drawing {
  let top = 0;
  const layers = drawings.flatMap(({ drawing, grow }, i) => {
    const transform = composeAffine(translation(0, top), scaling(grow));
    top += drawing.heightMm * grow;
    return drawing.layers.map(({ name, elements }) => ({
      name: `${i + 1} ${name}`,
      elements: [group(name, elements, { transform })],
    }));
  });
  return {
    widthMm: Math.max(0, ...drawings.map(({ drawing, grow }) => drawing.widthMm * grow)),
    heightMm: top,
    title: drawings.at(-1)?.drawing.title ?? '',
    layers,
  };
}
