import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { Shell } from './shell.js';

/** How much of the card is seen on a phone: only its edge, its head, most of it. */
export type CardHeight = 'down' | 'low' | 'up';

/** Heights at which the card stays, shares of the window; as in frame.css. */
const STAYS: Readonly<Record<CardHeight, number>> = { down: 0, low: 0.3, up: 0.68 };
const LEAST_PX = 44;
/** A press that moves less is no drag. */
const DRAG_FROM_PX = 8;

/** One press after another shows more of the card, and then puts it down. */
const NEXT: Readonly<Record<CardHeight, CardHeight>> = { down: 'low', low: 'up', up: 'down' };
const WORDS = { down: 'shell.moreCard', low: 'shell.wholeCard', up: 'shell.lessCard' } as const;

/** The edge by which the card is drawn up and put down: by a press, or by dragging it. */
export function cardHandle(shell: Shell): TemplateResult {
  const { app } = shell;
  const { card } = shell.frame();
  return html`<button
    class="card-handle"
    aria-expanded=${String(card !== 'down')}
    @pointerdown=${(event: PointerEvent) => drag(shell, event)}
    @click=${() => shell.setCard(NEXT[shell.frame().card])}
  >
    ${app.say(WORDS[card])}
  </button>`;
}

/** The height nearest to where the card was let go; `share` of the window. */
export function nearestHeight(share: number): CardHeight {
  const heights = Object.keys(STAYS) as CardHeight[];
  return heights.reduce((best, height) =>
    Math.abs(STAYS[height] - share) < Math.abs(STAYS[best] - share) ? height : best,
  );
}

function drag(shell: Shell, { currentTarget, pointerId, clientY }: PointerEvent): void {
  const handle = currentTarget as HTMLElement;
  const card = handle.closest<HTMLElement>('.card');
  if (card === null) return;
  const end = new AbortController();
  const { signal } = end;
  const first = card.clientHeight;
  let isDragged = false;
  let height = first;
  handle.setPointerCapture(pointerId);
  handle.addEventListener(
    'pointermove',
    (event) => {
      height = Math.max(LEAST_PX, first + clientY - event.clientY);
      isDragged ||= Math.abs(height - first) > DRAG_FROM_PX;
      if (!isDragged) return;
      card.style.setProperty('--card-height', `${height}px`);
      card.style.height = `${height}px`;
    },
    { signal },
  );
  const letGo = (): void => {
    end.abort();
    card.style.removeProperty('--card-height');
    card.style.removeProperty('height');
    if (!isDragged) return;
    swallowClick(handle);
    shell.setCard(nearestHeight(height / window.innerHeight));
  };
  handle.addEventListener('pointerup', letGo, { signal });
  handle.addEventListener('pointercancel', letGo, { signal });
}

/** The click that follows a drag means nothing of its own. */
function swallowClick(handle: HTMLElement): void {
  const end = new AbortController();
  const swallow = (event: Event): void => event.stopImmediatePropagation();
  handle.addEventListener('click', swallow, { capture: true, signal: end.signal });
  setTimeout(() => end.abort());
}
