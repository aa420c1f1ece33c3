import type { G } from '@svgdotjs/svg.js';
import type { App } from '../../app/app.js';
import type { At, Hand, Stroke } from '../../drawing/hand.js';
import { curvePath, linePath } from '../../drawing/path-data.js';
import type { Stage } from '../../drawing/stage.js';
import { drawnShape, goesAround, nextSizeMm, sizedShape, touchedSpot } from './logic/found-shape.js';
import { benchTable } from './table.js';
import type { FlawInHand } from './table.js';

/** While a flaw is marked: touched, drawn along, or drawn around, each time anew until it is kept. */
export function handOnFlaw(app: App, stage: Stage, sketch: G): Hand {
  const { flaw } = benchTable(app);
  return {
    press: (at) => {
      const now = flaw.get();
      return now === undefined ? undefined : drawFlaw(app, stage, sketch, at);
    },
    tap: ({ place }) => {
      const now = flaw.get();
      if (now === undefined) return false;
      flaw.set({ ...now, shape: touchedSpot(place, now.spotMm) });
      return true;
    },
  };
}

function drawFlaw(app: App, stage: Stage, sketch: G, start: At): Stroke {
  const { flaw } = benchTable(app);
  const drawn = [start.place];
  return {
    move: ({ place }) => {
      drawn.push(place);
      const isAround = goesAround(drawn);
      sketch.clear();
      const path = sketch
        .path(`${linePath(drawn)}${isAround ? 'Z' : ''}`)
        .attr({ class: `sketch ${isAround ? 'is-mark' : 'is-band'}` });
      if (!isAround) path.css('stroke-width', `${flaw.get()?.strokeMm ?? 0}px`);
    },
    end: ({ place }) => {
      drawn.push(place);
      sketch.clear();
      flaw.update((now) => {
        if (now === undefined) return now;
        return { ...now, shape: drawnShape(drawn, stage.view.get().scale, now.strokeMm) ?? now.shape };
      });
    },
    cancel: () => sketch.clear(),
  };
}

/** The flaw in hand as it will be marked. */
export function drawFoundFlaw(layer: G, { shape }: FlawInHand): void {
  switch (shape?.kind) {
    case 'point':
      layer
        .circle(2 * shape.radiusMm)
        .center(shape.at.x, shape.at.y)
        .attr({ class: 'found-flaw' });
      return;
    case 'line':
      layer
        .path(linePath(shape.line))
        .attr({ class: 'found-flaw is-stroke' })
        .css('stroke-width', `${shape.widthMm}px`);
      return;
    case 'area':
      layer.path(curvePath(shape.outline)).attr({ class: 'found-flaw' });
      return;
    case undefined:
  }
}

/** Larger or smaller by a step; the next of its kind begins with the same size. */
export function sizeFlaw(app: App, by: 1 | -1): void {
  benchTable(app).flaw.update((now) => {
    const sizeMm = nextSizeMm(now?.shape, by);
    if (now?.shape === undefined || sizeMm === undefined) return now;
    return {
      ...now,
      ...(now.shape.kind === 'point' ? { spotMm: sizeMm } : { strokeMm: sizeMm }),
      shape: sizedShape(now.shape, sizeMm),
    };
  });
}
