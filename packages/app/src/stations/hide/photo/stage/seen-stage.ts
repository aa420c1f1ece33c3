import type { Point } from '@hidebound/geometry';
import { hideToPhoto } from '@hidebound/intake/photo';
import { hideRegion } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import { ringPath } from '../../../../drawing/path-data.js';
import type { Stage } from '../../../../drawing/stage.js';
import { hideAt } from '../../../../job/job.js';
import { hideDesk } from '../bring-in.js';
import { referenceName } from '../cards/found-words.js';
import { layPhoto } from './photo-stage.js';

/** A traced hide's own photo, with the references that were found and the edge as it was traced. */
export function openSeenStage(app: App, stage: Stage): () => void {
  const layer = stage.layer('seen');
  const { bringIn, found } = hideDesk(app);
  const steps = bringIn.get();
  const draw = (): void => {
    layer.clear();
    if (steps?.kind !== 'seen') return;
    const told = found.get().get(steps.path);
    const view = told?.views.find(({ file }) => file === steps.shot.file);
    const hide = hideAt(app.job.get(), steps.path);
    if (view === undefined || hide === undefined) return;
    const size = 15 / stage.view.get().scale;
    const ring = hideRegion(hide).outer.flatMap((place): Point[] => {
      const px = hideToPhoto(view, place);
      return px === undefined ? [] : [px];
    });
    layer.path(ringPath(ring)).attr({ class: 'hide-pen-casing' });
    layer.path(ringPath(ring)).attr({ class: 'hide-stated' });
    for (const { name, ringPx } of view.references) {
      layer.path(ringPath(ringPx)).attr({ class: 'hide-reference' });
      const off = told?.report?.references.find((reference) => reference.name === name)?.residualMm;
      const words = [referenceName(app, name), ...(off === undefined ? [] : [app.measures().deviation(off)])];
      words.forEach((word, i) => {
        const at = middle(ringPx);
        layer
          .plain(word)
          .attr({ class: 'hide-reference-name', x: at.x, y: at.y + (i - 0.3) * 1.3 * size })
          .css('font-size', `${size}px`);
      });
    }
  };
  if (steps?.kind === 'seen') layPhoto(stage, steps.shot);
  const end = stage.view.watch(draw);
  draw();
  return () => {
    end();
    layer.remove();
    stage.setPhoto(undefined);
  };
}

function middle(ring: readonly Point[]): Point {
  return {
    x: ring.reduce((sum, { x }) => sum + x, 0) / ring.length,
    y: ring.reduce((sum, { y }) => sum + y, 0) / ring.length,
  };
}
