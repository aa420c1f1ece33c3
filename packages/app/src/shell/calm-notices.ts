import type { App, Notice } from '../app/app.js';

/** Time to find a notice, and then for each letter: at half the speed of a slow reader (about ten letters a second). */
const TO_FIND_IT_MS = 5000;
const A_LETTER_MS = 200;
/** Looked at again while it is pointed at, or the page is not in view. */
const AGAIN_MS = 2000;

/** How long a calm notice stays by itself, ms; undefined for one that waits to be put away. */
export function staysMs({ tone, text, action }: Notice): number | undefined {
  return tone === 'calm' && action === undefined ? TO_FIND_IT_MS + text.length * A_LETTER_MS : undefined;
}

/**
 * Calm notices leave by themselves, none while someone points at them or has the focus there (WCAG 2.2, 2.2.1 and 1.4.13);
 * all stay readable in the list of what was said.
 */
export function letCalmNoticesLeave(app: App): void {
  const waiting = new Set<number>();
  const leave = (id: number): void => {
    if (document.hidden || isLookedAt()) {
      setTimeout(() => leave(id), AGAIN_MS);
      return;
    }
    waiting.delete(id);
    app.putAway(id);
  };
  const look = (): void => {
    for (const notice of app.notices.get()) {
      const ms = staysMs(notice);
      if (ms === undefined || waiting.has(notice.id)) continue;
      waiting.add(notice.id);
      setTimeout(() => leave(notice.id), ms);
    }
  };
  app.notices.watch(look);
  look();
}

function isLookedAt(): boolean {
  return document.querySelector('.notices:is(:hover, :focus-within)') !== null;
}
