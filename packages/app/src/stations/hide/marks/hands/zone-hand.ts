import type { Region } from '@hidebound/geometry';
import type { At, Hand, Stroke } from '../../../../drawing/hand.js';
import { changeHide, hideNow } from '../change-hide.js';
import { nearestMark } from '../logic/nearest-mark.js';
import { around, brushed, withZonePainted, withZonesErased } from '../logic/paint-zones.js';
import { strokeAround, strokeLine } from '../logic/stroke.js';
import { choose, marksTable } from '../table.js';
import { drawStroke, reachMm } from './work.js';
import type { Work } from './work.js';

/** Zones: drawn around, painted with a broad brush, wiped off with the same brush. */
export function zoneHand(work: Work): Hand {
  const { app } = work;
  return {
    press: (at) => paint(work, at),
    tap: (at) => {
      const zones = (hideNow(app)?.zones ?? []).map(({ id, outline }) => ({
        id,
        shape: { kind: 'area' as const, outline },
      }));
      const near = nearestMark(zones, at.place, reachMm(work, at));
      choose(app, near === undefined ? undefined : { kind: 'zone', id: near.id });
      return true;
    },
  };
}

function paint(work: Work, start: At): Stroke {
  const { app, stage } = work;
  const { way, brushMm } = marksTable(app).get().zone;
  const { scale } = stage.view.get();
  if (way === 'around')
    return drawStroke(work, start, {
      style: 'is-mark',
      closes: true,
      done: (drawn) => {
        const outline = strokeAround(drawn, scale);
        if (outline !== undefined) add(work, around(outline));
      },
    });
  return drawStroke(work, start, {
    style: way === 'erase' ? 'is-band is-wiping' : 'is-band',
    widthMm: brushMm,
    done: (drawn) => {
      const line = strokeLine(drawn, scale);
      if (line === undefined) return;
      const regions = brushed(line, brushMm);
      if (way === 'erase') changeHide(app, 'marks.undo.zoneErased', (hide) => withZonesErased(hide, regions));
      else add(work, regions);
    },
  });
}

function add({ app }: Work, regions: readonly Region[]): void {
  const { kind } = marksTable(app).get().zone;
  changeHide(app, 'marks.undo.zone', (hide) => withZonePainted(hide, kind, regions));
}
