import type { Point } from '@hidebound/geometry';
import type { App } from '../../../../app/app.js';
import { linePath, ringPath } from '../../../../drawing/path-data.js';
import type { Stage } from '../../../../drawing/stage.js';
import { NO_MARKS, changePhotoSteps, hideDesk, photoSteps, withStroke } from '../bring-in.js';
import type { Four, PhotoSteps, Shot } from '../bring-in.js';
import { openMagnifier } from '../hands/magnifier.js';
import { penHand } from '../hands/pen-hand.js';
import { peekInto, snapped } from '../hands/picture-peek.js';
import type { PicturePeek } from '../hands/picture-peek.js';
import { placesHand } from '../hands/places-hand.js';
import { drawMarks, drawStroke } from './draw-marks.js';

/** Half of a handle, CSS px: a finger's 44 px across. */
const HANDLE_PX = 22;

/** The photo on the table, one unit of the drawing being one pixel, with the places and strokes that are drawn on it. */
export function openPhotoStage(app: App, stage: Stage): () => void {
  const layer = stage.layer('photo');
  const glass = openMagnifier(stage);
  let peek: PicturePeek | undefined;
  let held: { readonly which: number; readonly to: Point } | undefined;
  let line: readonly Point[] = [];

  const placesNow = (steps: PhotoSteps | undefined): Four<Point> | undefined => {
    const shot = steps?.shots[steps.shown];
    if (steps?.stated === undefined || steps.stated.file !== shot?.file || steps.working) return undefined;
    if (steps.pen !== undefined) return undefined;
    return steps.stated.at.map((at, i) => (held?.which === i ? held.to : at)) as unknown as Four<Point>;
  };
  const draw = (): void => {
    layer.clear();
    const steps = photoSteps(app);
    const shot = steps?.shots[steps.shown];
    if (steps === undefined || shot === undefined) return;
    const { scale } = stage.view.get();
    const places = placesNow(steps);
    if (places !== undefined) {
      const lines =
        steps.beside === 'rules'
          ? [linePath(places.slice(0, 2)), linePath(places.slice(2))].join('')
          : ringPath(places);
      layer.path(lines).attr({ class: 'hide-pen-casing' });
      layer.path(lines).attr({ class: 'hide-stated' });
      places.forEach((at, i) => drawHandle(at, i + 1, scale));
    }
    drawMarks(layer, steps.strokes.get(shot.file) ?? NO_MARKS, scale);
    if (line.length > 1 && steps.pen !== undefined) drawStroke(layer, steps.pen, line);
  };
  const drawHandle = ({ x, y }: Point, number: number, scale: number): void => {
    const handle = layer.group().attr({ transform: `translate(${x} ${y}) scale(${1 / scale})` });
    handle
      .circle(2 * HANDLE_PX)
      .center(0, 0)
      .attr({ class: 'hide-handle' });
    handle.path('M-8 0H8M0 -8V8').attr({ class: 'hide-handle-cross' });
    handle.plain(String(number)).attr({ class: 'hide-handle-number', x: 15, y: -15 });
  };
  const show = (): void => {
    const steps = photoSteps(app);
    const shot = steps?.shots[steps.shown];
    if (shot !== undefined && shot.url !== peek?.shot.url) {
      peek = peekInto(shot);
      layPhoto(stage, shot);
    }
    draw();
  };
  const moved = (which: number, to: Point): void => {
    held = undefined;
    glass.hide();
    const steps = photoSteps(app);
    if (steps?.stated === undefined || peek === undefined) return;
    const snug = onPhoto(peek.shot, snapped(peek, to));
    const at = steps.stated.at.map((place, i) => (i === which ? snug : place)) as unknown as Four<Point>;
    changePhotoSteps(app, { stated: { ...steps.stated, at } });
  };

  const ends = [
    hideDesk(app).bringIn.watch(show),
    stage.view.watch(draw),
    stage.lay(
      placesHand(stage, {
        places: () => placesNow(photoSteps(app)),
        moving: (which, to, at) => {
          held = { which, to };
          if (peek !== undefined) glass.show(peek, to, at.screen);
          draw();
        },
        moved,
        letGo: () => {
          held = undefined;
          glass.hide();
          draw();
        },
        describe: (which) => app.say('hide.place', { n: which + 1 }),
      }),
    ),
    stage.lay(
      penHand({
        pen: () => photoSteps(app)?.pen,
        drawing: (now) => {
          line = now;
          draw();
        },
        drawn: (pen, drawn) => {
          line = [];
          const steps = photoSteps(app);
          const shot = steps?.shots[steps.shown];
          if (steps === undefined || shot === undefined) return;
          const on = drawn.map((at) => onPhoto(shot, at));
          const marks = withStroke(steps.strokes.get(shot.file) ?? NO_MARKS, pen, on);
          changePhotoSteps(app, { strokes: new Map([...steps.strokes, [shot.file, marks]]) });
        },
        letGo: () => {
          line = [];
          draw();
        },
      }),
    ),
  ];
  show();
  return () => {
    for (const end of ends) end();
    glass.close();
    layer.remove();
    stage.setPhoto(undefined);
  };
}

/** The photo below the drawing, one unit being one of its pixels; the middle of the first one is (0, 0). */
export function layPhoto(stage: Stage, { url, shrink, width, height }: Shot): void {
  stage.setPhoto({ url, pxPerMm: shrink, origin: { x: -0.5, y: -0.5 } });
  stage.fit({ minX: 0, minY: 0, maxX: width, maxY: height });
}

/** Hints lie on their photo, in hundredths of a pixel. */
function onPhoto({ width, height }: Shot, { x, y }: Point): Point {
  const within = (value: number, most: number): number =>
    Math.round(100 * Math.min(most, Math.max(0, value))) / 100;
  return { x: within(x, width - 1), y: within(y, height - 1) };
}
