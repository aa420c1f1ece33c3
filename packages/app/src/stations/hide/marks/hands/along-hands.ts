import type { At, Hand, Stroke } from '../../../../drawing/hand.js';
import { pointInside } from './on-hide.js';
import { changeHide, hideNow } from '../change-hide.js';
import { nearestLine, nearestReading, withBackbone, withTightness } from '../logic/along.js';
import { strokeLine } from '../logic/stroke.js';
import { choose, marksTable } from '../table.js';
import { drawStroke, reachMm } from './work.js';
import type { Work } from './work.js';

/** Backbone and tightness: one stroke each. */
export function backHand(work: Work): Hand {
  const { app } = work;
  return {
    press: (at) => drawLine(work, at),
    tap: (at) => {
      const near = nearestLine(hideNow(app)?.tightness ?? [], at.place, reachMm(work, at));
      choose(app, near === undefined ? undefined : { kind: 'tightness', index: near });
      return true;
    },
  };
}

function drawLine(work: Work, start: At): Stroke {
  const { app, stage } = work;
  const { scale } = stage.view.get();
  const { way } = marksTable(app).get().back;
  return drawStroke(work, start, {
    style: 'is-line',
    done: (drawn) => {
      const line = strokeLine(drawn, scale);
      if (line === undefined) return;
      if (way === 'backbone') changeHide(app, 'marks.undo.backbone', (hide) => withBackbone(hide, line));
      else changeHide(app, 'marks.undo.tightness', (hide) => withTightness(hide, line));
    },
  });
}

/** Thickness: a tap says where, the card asks how much. */
export function thicknessHand(work: Work): Hand {
  const { app } = work;
  return {
    tap: (at) => {
      const hide = hideNow(app);
      if (hide === undefined) return false;
      const near = nearestReading(hide, at.place, reachMm(work, at));
      if (near !== undefined) choose(app, { kind: 'reading', index: near });
      else if (pointInside(hide, at.place)) choose(app, { kind: 'place', at: at.place });
      else app.tell({ tone: 'calm', text: app.say('marks.refused.outside') });
      return true;
    },
  };
}
