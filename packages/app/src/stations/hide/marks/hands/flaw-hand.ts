import type { Point } from '@hidebound/geometry';
import { roundPoint } from '@hidebound/geometry';
import type { Flaw, FlawShape } from '@hidebound/leather';
import type { At, Hand, Stroke } from '../../../../drawing/hand.js';
import { curvePath, linePath } from '../../../../drawing/path-data.js';
import { changeHide, hideNow } from '../change-hide.js';
import { changedFlaw, movedShape, resizedShape, sizeOf, withFlaw } from '../logic/flaws.js';
import { sizeFromHandle, sizeHandle } from '../logic/size-handle.js';
import { markDistance, nearestMark } from '../logic/nearest-mark.js';
import { strokeAround, strokeLine } from '../logic/stroke.js';
import { choose, marksTable, setTool } from '../table.js';
import { clearSketch, drawStroke, reachMm, sketchCircle, sketchPath } from './work.js';
import type { Work } from './work.js';

/** Marking flaws, and taking hold of those that are there. Without the tool in hand nothing is drawn. */
export function flawHand(work: Work): Hand {
  const { app } = work;
  const isDrawing = (): boolean => marksTable(app).get().tool === 'flaws';
  return {
    press: (at) => grip(work, at) ?? (isDrawing() ? drawFlaw(work, at) : undefined),
    tap: (at) => {
      const near = nearestMark(hideNow(app)?.flaws ?? [], at.place, reachMm(work, at));
      if (near !== undefined) choose(app, { kind: 'flaw', id: near.id, isFresh: false });
      else if (isDrawing() && marksTable(app).get().flaw.way === 'spot') addSpot(work, at.place);
      else if (marksTable(app).get().chosen === undefined) return false;
      else choose(app, undefined);
      return true;
    },
    longPress: (at) => {
      const near = nearestMark(hideNow(app)?.flaws ?? [], at.place, reachMm(work, at));
      if (near !== undefined) choose(app, { kind: 'flaw', id: near.id, isFresh: false });
      return near !== undefined;
    },
    describe: (at) => {
      const near = nearestMark(hideNow(app)?.flaws ?? [], at.place, reachMm(work, at));
      return near === undefined ? undefined : app.say('marks.describeFlaw', { name: near.id });
    },
  };
}

/** The flaw that was chosen by a tap. */
function heldFlaw({ app }: Work): Flaw | undefined {
  const { chosen } = marksTable(app).get();
  if (chosen?.kind !== 'flaw' || chosen.isFresh) return undefined;
  return hideNow(app)?.flaws.find(({ id }) => id === chosen.id);
}

/** Takes hold of the chosen flaw: at its handle for its size, else to move it. */
function grip(work: Work, at: At): Stroke | undefined {
  const flaw = heldFlaw(work);
  if (flaw === undefined) return undefined;
  const reach = reachMm(work, at);
  const handle = sizeHandle(flaw.shape);
  if (handle !== undefined && Math.hypot(at.place.x - handle.x, at.place.y - handle.y) <= reach)
    return resize(work, flaw);
  return markDistance(at.place, flaw.shape) <= reach ? carry(work, flaw, at.place) : undefined;
}

function carry(work: Work, flaw: Flaw, from: Point): Stroke {
  const shapeAt = ({ place }: At): FlawShape =>
    movedShape(flaw.shape, { x: place.x - from.x, y: place.y - from.y });
  return reshape(work, flaw, shapeAt, 'marks.undo.flawMoved');
}

function resize(work: Work, flaw: Flaw): Stroke {
  const shapeAt = ({ place }: At): FlawShape => resizedShape(flaw.shape, sizeFromHandle(flaw.shape, place));
  return reshape(work, flaw, shapeAt, 'marks.undo.flawSized');
}

function reshape(
  work: Work,
  { id }: Flaw,
  shapeAt: (at: At) => FlawShape,
  label: 'marks.undo.flawMoved' | 'marks.undo.flawSized',
): Stroke {
  return {
    move: (at) => sketchShape(work, shapeAt(at)),
    end: (at) => {
      clearSketch(work);
      const shape = shapeAt(at);
      changeHide(work.app, label, (hide) => changedFlaw(hide, id, (flaw) => ({ ...flaw, shape })));
      rememberSize(work, shape);
    },
    cancel: () => clearSketch(work),
  };
}

function sketchShape(work: Work, shape: FlawShape): void {
  switch (shape.kind) {
    case 'point':
      return sketchCircle(work, shape.at, shape.radiusMm, 'is-mark');
    case 'line':
      return sketchPath(work, linePath(shape.line), 'is-band', shape.widthMm);
    case 'area':
      return sketchPath(work, curvePath(shape.outline), 'is-mark');
  }
}

function drawFlaw(work: Work, start: At): Stroke {
  const { app, stage } = work;
  const { way, widthMm } = marksTable(app).get().flaw;
  const { scale } = stage.view.get();
  if (way === 'spot') return drawSpot(work, start.place);
  if (way === 'stroke')
    return drawStroke(work, start, {
      style: 'is-band',
      widthMm,
      done: (drawn) => {
        const line = strokeLine(drawn, scale);
        if (line !== undefined) addFlaw(work, { kind: 'line', line, widthMm });
      },
    });
  return drawStroke(work, start, {
    style: 'is-mark',
    closes: true,
    done: (drawn) => {
      const outline = strokeAround(drawn, scale);
      if (outline !== undefined) addFlaw(work, { kind: 'area', outline });
    },
  });
}

/** From its middle to its rim. */
function drawSpot(work: Work, at: Point): Stroke {
  const shapeAt = ({ place }: At): FlawShape =>
    resizedShape(
      { kind: 'point', at: roundPoint(at), radiusMm: 1 },
      Math.hypot(place.x - at.x, place.y - at.y),
    );
  return {
    move: (now) => sketchShape(work, shapeAt(now)),
    end: (now) => {
      clearSketch(work);
      addFlaw(work, shapeAt(now));
    },
    cancel: () => clearSketch(work),
  };
}

function addSpot(work: Work, place: Point): void {
  const { radiusMm } = marksTable(work.app).get().flaw;
  addFlaw(work, { kind: 'point', at: roundPoint(place), radiusMm });
}

/** The last choice and the last size stay for the next flaw. */
function addFlaw(work: Work, shape: FlawShape): void {
  const { app } = work;
  const { effect } = marksTable(app).get().flaw;
  let made = '';
  const isAdded = changeHide(app, 'marks.undo.flaw', (hide) => {
    const { hide: marked, id } = withFlaw(hide, shape, effect);
    made = id;
    return marked;
  });
  if (!isAdded) return;
  rememberSize(work, shape);
  choose(app, { kind: 'flaw', id: made, isFresh: true });
  work.stage.say(app.say('marks.said.flaw', { n: hideNow(app)?.flaws.length ?? 0 }));
}

function rememberSize({ app }: Work, shape: FlawShape): void {
  const size = sizeOf(shape);
  if (size === undefined) return;
  setTool(app, 'flaw', shape.kind === 'point' ? { radiusMm: size } : { widthMm: size });
}
