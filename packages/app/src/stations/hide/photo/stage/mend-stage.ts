import type { Point } from '@hidebound/geometry';
import { hideRegion } from '@hidebound/leather';
import { regionBox } from '@hidebound/geometry';
import type { App } from '../../../../app/app.js';
import { drawHideInto } from '../../../../drawing/hide-layer.js';
import type { Stage } from '../../../../drawing/stage.js';
import { hideAt } from '../../../../job/job.js';
import { changeMendSteps, hideDesk, mendSteps, withStroke } from '../bring-in.js';
import { penHand } from '../hands/pen-hand.js';
import { drawMarks, drawStroke } from './draw-marks.js';
import { openHidePicture } from './hide-picture.js';

/** The traced edge over the straightened picture, and the strokes that say where it went wrong. */
export function openMendStage(app: App, stage: Stage): () => void {
  const closePicture = openHidePicture(app, stage);
  const hideLayer = stage.layer('hide');
  const layer = stage.layer('mend');
  let line: readonly Point[] = [];
  const drawHide = (): void => {
    const hide = hideAt(app.job.get(), app.place.get().hide);
    if (hide === undefined) hideLayer.clear();
    else drawHideInto(hideLayer, hide, { overPhoto: hide.photo !== undefined, withCandidates: false });
  };
  const draw = (): void => {
    layer.clear();
    const steps = mendSteps(app);
    if (steps === undefined) return;
    drawMarks(layer, steps.marks, stage.view.get().scale);
    if (line.length > 1) drawStroke(layer, steps.pen, line);
  };
  const ends = [
    hideDesk(app).bringIn.watch(draw),
    app.job.watch(drawHide),
    stage.view.watch(draw),
    stage.lay(
      penHand({
        pen: () => (mendSteps(app)?.working === undefined ? mendSteps(app)?.pen : undefined),
        drawing: (now) => {
          line = now;
          draw();
        },
        drawn: (pen, drawn) => {
          line = [];
          const steps = mendSteps(app);
          if (steps !== undefined) changeMendSteps(app, { marks: withStroke(steps.marks, pen, drawn) });
        },
        letGo: () => {
          line = [];
          draw();
        },
      }),
    ),
  ];
  const hide = hideAt(app.job.get(), app.place.get().hide);
  if (hide !== undefined) stage.fit(regionBox(hideRegion(hide)));
  drawHide();
  draw();
  return () => {
    for (const end of ends) end();
    hideLayer.remove();
    layer.remove();
    closePicture();
  };
}
