import { flattenCurve, pointInRing, roundPoint } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import type { Hide } from '@hidebound/leather';
import type { At, Hand, Stroke } from '../../../../drawing/hand.js';
import { curvePath } from '../../../../drawing/path-data.js';
import type { WordKey } from '../../../../words/words.js';
import { changeHide, hideNow } from '../change-hide.js';
import { movedCorner, withCorner } from '../logic/corners.js';
import { edgeOf, nearestCorner, nearestOnEdge, withEdge } from '../logic/edges.js';
import type { EdgeName } from '../logic/edges.js';
import { endPush, pushEdge, pushedCurve, startPush } from '../logic/push.js';
import { redrawnStretch } from '../logic/redraw-stretch.js';
import { strokeAround, strokeLine } from '../logic/stroke.js';
import { choose, marksTable } from '../table.js';
import { clearSketch, drawStroke, reachMm, sketchCircle, sketchPath } from './work.js';
import type { Work } from './work.js';

/** Corners that pushing leaves behind lie so near to the pushed edge, CSS pixels. */
const SIMPLE_PX = 0.5;
/** A stroke's ends find the edge from so far away, in reaches of the hand. */
const END_REACHES = 2;

/** The outline and the openings: corners, the round that pushes, stretches drawn anew, openings drawn around. */
export function edgeHand(work: Work): Hand {
  const { app } = work;
  const way = () => marksTable(app).get().edge.way;
  return {
    press: (at) => {
      const hide = hideNow(app);
      if (hide === undefined) return undefined;
      switch (way()) {
        case 'corners':
          return dragCorner(work, hide, at);
        case 'push':
          return push(work, hide, at);
        case 'redraw':
          return redraw(work, at);
        case 'opening':
          return drawOpening(work, at);
      }
    },
    tap: (at) => {
      const hide = hideNow(app);
      if (hide === undefined) return false;
      if (way() === 'corners') return tapCorner(work, hide, at);
      return way() === 'opening' && tapOpening(work, hide, at.place);
    },
    describe: (at) => {
      const hide = hideNow(app);
      const corner = hide === undefined ? undefined : nearestCorner(hide, at.place, reachMm(work, at));
      return corner === undefined ? undefined : app.say('marks.describeCorner', { n: corner.corner + 1 });
    },
  };
}

function dragCorner(work: Work, hide: Hide, at: At): Stroke | undefined {
  const reach = reachMm(work, at);
  const corner = nearestCorner(hide, at.place, reach);
  if (corner !== undefined) {
    const curve = edgeOf(hide, corner.edge)!;
    return dragOf(work, corner.edge, curve, corner.corner);
  }
  const near = nearestOnEdge(hide, at.place, reach);
  if (near === undefined) return undefined;
  const added = withCorner(edgeOf(hide, near.edge)!, near.segment, near.alongSegmentMm);
  return dragOf(work, near.edge, added.curve, added.corner);
}

function dragOf(work: Work, edge: EdgeName, curve: Curve, corner: number): Stroke {
  const at = ({ place }: At): Curve => movedCorner(curve, corner, roundPoint(place));
  return {
    move: (now) => sketchPath(work, curvePath(at(now)), 'is-edge'),
    end: (now) => {
      clearSketch(work);
      const isMoved = changeEdge(work, edge, at(now), 'marks.undo.corner');
      if (isMoved) choose(work.app, { kind: 'corner', edge, corner });
    },
    cancel: () => clearSketch(work),
  };
}

function changeEdge({ app }: Work, edge: EdgeName, curve: Curve, label: WordKey): boolean {
  return changeHide(app, label, (hide) => withEdge(hide, edge, curve));
}

/** Chooses a corner; on the edge between corners, adds one. */
function tapCorner(work: Work, hide: Hide, at: At): boolean {
  const reach = reachMm(work, at);
  const corner = nearestCorner(hide, at.place, reach);
  if (corner !== undefined) {
    choose(work.app, { kind: 'corner', edge: corner.edge, corner: corner.corner });
    return true;
  }
  const near = nearestOnEdge(hide, at.place, reach);
  if (near === undefined) {
    choose(work.app, undefined);
    return true;
  }
  const added = withCorner(edgeOf(hide, near.edge)!, near.segment, near.alongSegmentMm);
  if (changeEdge(work, near.edge, added.curve, 'marks.undo.cornerAdded'))
    choose(work.app, { kind: 'corner', edge: near.edge, corner: added.corner });
  return true;
}

/** The edge that is nearest to where the round was set down is pushed. */
function push(work: Work, hide: Hide, start: At): Stroke | undefined {
  const { roundMm } = marksTable(work.app).get().edge;
  const near = nearestOnEdge(hide, start.place, roundMm + reachMm(work, start));
  const curve = near === undefined ? undefined : edgeOf(hide, near.edge);
  if (near === undefined || curve === undefined) return undefined;
  let pushed = startPush(curve);
  let last = start.place;
  const follow = ({ place }: At): void => {
    pushed = pushEdge(pushed, last, place, roundMm);
    last = place;
  };
  return {
    move: (at) => {
      follow(at);
      sketchCircle(work, at.place, roundMm, 'is-round');
      work.sketch.path(curvePath(pushedCurve(pushed))).attr({ class: 'sketch is-edge' });
    },
    end: (at) => {
      follow(at);
      clearSketch(work);
      const tolerance = SIMPLE_PX / work.stage.view.get().scale;
      changeEdge(work, near.edge, endPush(pushed, tolerance), 'marks.undo.pushed');
    },
    cancel: () => clearSketch(work),
  };
}

function redraw(work: Work, start: At): Stroke {
  const { app, stage } = work;
  const { scale } = stage.view.get();
  return drawStroke(work, start, {
    style: 'is-edge',
    done: (drawn) => {
      const hide = hideNow(app);
      const stroke = strokeLine(drawn, scale);
      if (hide === undefined || stroke === undefined) return;
      const reach = END_REACHES * reachMm(work, start);
      const near = nearestOnEdge(hide, stroke[0]!, reach);
      const curve = near === undefined ? undefined : redrawnStretch(edgeOf(hide, near.edge)!, stroke, reach);
      if (near === undefined || curve === undefined)
        app.tell({ tone: 'calm', text: app.say('marks.refused.strokeEnds') });
      else changeEdge(work, near.edge, curve, 'marks.undo.redrawn');
    },
  });
}

function drawOpening(work: Work, start: At): Stroke {
  const { app, stage } = work;
  const { scale } = stage.view.get();
  return drawStroke(work, start, {
    style: 'is-edge',
    closes: true,
    done: (drawn) => {
      const around = strokeAround(drawn, scale);
      if (around === undefined) return;
      const isAdded = changeHide(app, 'marks.undo.opening', (hide) => ({
        ...hide,
        openings: [...hide.openings, around],
      }));
      if (isAdded) choose(app, { kind: 'opening', edge: hideNow(app)!.openings.length - 1 });
    },
  });
}

function tapOpening({ app }: Work, { openings }: Hide, place: Point): boolean {
  const edge = openings.findIndex((opening) => pointInRing(place, ringOf(opening)) !== 'outside');
  choose(app, edge < 0 ? undefined : { kind: 'opening', edge });
  return true;
}

function ringOf(opening: Curve): readonly Point[] {
  return flattenCurve(opening).slice(0, -1);
}
