import { LeatherError, provenHide } from '@hidebound/leather';
import type { Hide } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { hideAt } from '../../../job/job.js';
import { toldError } from '../../../words/told.js';
import type { WordKey } from '../../../words/words.js';
import { withoutMarksBeside } from './logic/judge-hide.js';

/** The hide that lies in front. */
export function hideNow(app: App): Hide | undefined {
  return hideAt(app.job.get(), app.place.get().hide);
}

const OWN_SENTENCES: Readonly<Record<string, WordKey>> = {
  'hide-outline-crosses': 'marks.refused.crosses',
  'hide-no-area': 'marks.refused.noArea',
  'hide-opening-outside': 'marks.refused.openingOutside',
  'hide-openings-overlap': 'marks.refused.openingsMeet',
  'hide-flaw-outside': 'marks.refused.outside',
  'hide-zone-outside': 'marks.refused.outside',
  'hide-reading-outside': 'marks.refused.outside',
  'hide-short-line': 'marks.refused.short',
};

/**
 * One change of the hide in front, one step to undo. A hide that could not be opened again is refused with a sentence, and
 * all stays as it was. True where it was changed.
 */
export function changeHide(app: App, label: WordKey, change: (hide: Hide) => Hide): boolean {
  const path = app.place.get().hide;
  const hide = hideNow(app);
  if (path === undefined || hide === undefined) return false;
  const wanted = change(hide);
  if (wanted === hide) return false;
  const isNewEdge = wanted.outline !== hide.outline;
  try {
    const { hide: tidied, gone } = isNewEdge ? withoutMarksBeside(wanted) : { hide: wanted, gone: 0 };
    const proven = provenHide(tidied, { file: path });
    app.change(app.say(label), new Map([[path, { kind: 'hide', hide: proven }]]));
    if (gone > 0) app.tell({ tone: 'calm', text: app.say('marks.gone', { n: gone }) });
    return true;
  } catch (error) {
    refuse(app, error);
    return false;
  }
}

function refuse(app: App, error: unknown): void {
  if (!(error instanceof LeatherError)) {
    app.tellFailure(error);
    return;
  }
  const own = OWN_SENTENCES[error.code];
  app.tell({ tone: 'warning', text: own === undefined ? app.sentence(toldError(error)) : app.say(own) });
}
