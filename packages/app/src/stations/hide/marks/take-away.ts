import type { Hide } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import type { WordKey } from '../../../words/words.js';
import { changeHide } from './change-hide.js';
import { withoutReading, withoutTightness } from './logic/along.js';
import { withoutCorner } from './logic/corners.js';
import { edgeOf, withEdge } from './logic/edges.js';
import { withoutFlaw } from './logic/flaws.js';
import { choose, marksTable } from './table.js';
import type { Chosen } from './table.js';

/** Takes what is in hand off the hide; false where nothing is. */
export function takeChosenAway(app: App): boolean {
  const { chosen } = marksTable(app).get();
  if (chosen === undefined) return false;
  if (chosen.kind === 'place') {
    choose(app, undefined);
    return true;
  }
  if (changeHide(app, LABELS[chosen.kind], (hide) => without(app, hide, chosen))) choose(app, undefined);
  return true;
}

const LABELS: Readonly<Record<Exclude<Chosen['kind'], 'place'>, WordKey>> = {
  flaw: 'marks.undo.flawGone',
  zone: 'marks.undo.zoneGone',
  tightness: 'marks.undo.tightnessGone',
  reading: 'marks.undo.readingGone',
  corner: 'marks.undo.cornerGone',
  opening: 'marks.undo.openingGone',
};

function without(app: App, hide: Hide, chosen: Exclude<Chosen, { kind: 'place' }>): Hide {
  switch (chosen.kind) {
    case 'flaw':
      return withoutFlaw(hide, chosen.id);
    case 'zone':
      return { ...hide, zones: hide.zones.filter(({ id }) => id !== chosen.id) };
    case 'tightness':
      return withoutTightness(hide, chosen.index);
    case 'reading':
      return withoutReading(hide, chosen.index);
    case 'opening':
      return { ...hide, openings: hide.openings.filter((_, i) => i !== chosen.edge) };
    case 'corner': {
      const curve = edgeOf(hide, chosen.edge);
      const less = curve === undefined ? undefined : withoutCorner(curve, chosen.corner);
      if (less !== undefined) return withEdge(hide, chosen.edge, less);
      app.tell({ tone: 'calm', text: app.say('marks.refused.fewCorners') });
      return hide;
    }
  }
}
