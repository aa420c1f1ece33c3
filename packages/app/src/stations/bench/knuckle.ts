import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import { benchTable } from './table.js';

export interface KnuckleButton {
  readonly words: string;
  readonly style?: 'main' | 'warns';
  readonly disabled?: boolean;
  readonly run: () => void;
}

/**
 * A button for a knuckle, a thumb in a glove or the edge of a hand: it counts when it is let go anywhere on the button,
 * also where the browser sees no clean tap, and never twice for one touch.
 */
export function knuckle(app: App, { words, style, disabled = false, run }: KnuckleButton): TemplateResult {
  const { guard } = benchTable(app);
  const touch = (event: Event): void => {
    if (guard.passes(event.timeStamp)) run();
  };
  const letGo = (event: PointerEvent): void => {
    if (event.pointerType === 'mouse' || disabled) return;
    const under = document.elementFromPoint(event.clientX, event.clientY);
    if (under !== null && (event.currentTarget as Element).contains(under)) touch(event);
  };
  return html`<button
    class="knuckle ${style ?? ''}"
    ?disabled=${disabled}
    @pointerup=${letGo}
    @click=${touch}
    @keydown=${holdBackRepeats}
  >
    ${words}
  </button>`;
}

/** A key that is held down is one touch. */
function holdBackRepeats(event: KeyboardEvent): void {
  if (event.repeat) event.preventDefault();
}
