import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { decideHide, effectOf } from '@hidebound/leather';
import type { FlawCandidate, Hide } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import { plainEffect } from '../../../../drawing/hide-layer.js';
import { changeHide, hideNow } from '../change-hide.js';
import { PLAIN_EFFECTS, changedFlaw } from '../logic/flaws.js';
import { nextToLookAt } from '../logic/next-candidate.js';
import { marksTable } from '../table.js';
import { effectRow, kindWord } from './flaw-card.js';

/** What the photo seems to show, one by one; before, how many there are. */
export function lookingCard(app: App): TemplateResult | typeof nothing {
  const hide = hideNow(app);
  if (hide === undefined || hide.candidates.length === 0) return nothing;
  const { looking } = marksTable(app).get();
  const candidate = hide.candidates.find(({ id }) => id === looking?.id);
  const n = hide.candidates.length;
  if (looking === undefined || candidate === undefined)
    return asksFirst(app) ? nothing : html`<div class="ask">${possible(app, n)}</div>`;
  const kind = app.say(candidate.kind === undefined ? 'marks.kind.none' : kindWord(candidate.kind));
  return html`<div class="ask">
    <h3>${app.say('marks.isItFlaw')}</h3>
    <p>
      ${app.say('marks.seems', { kind, sure: app.measures().percent(candidate.confidence, 0) })}
      ${app.say('marks.left', { n })}
    </p>
    ${effectRow(app, looking.effect, (effect) =>
      marksTable(app).update((table) => ({ ...table, looking: { ...looking, effect } })),
    )}
  </div>`;
}

/** What the photo makes doubtful is the next thing to be done, until it was looked at, or left. */
export function asksFirst(app: App): boolean {
  const hide = hideNow(app);
  return (
    hide !== undefined && hide.candidates.length > 0 && !marksTable(app).get().lookedAt.includes(hide.id)
  );
}

function possible(app: App, n: number): TemplateResult {
  return html`<p>${app.say('marks.possible', { n })}</p>
    <button type="button" class="main" @click=${() => lookThrough(app)}>
      ${app.say('marks.lookThrough')}
    </button>`;
}

/** At the foot of the card, in the place of the step that comes next. */
export function doubtsLine(app: App): TemplateResult {
  return html`<div class="next-step">${possible(app, hideNow(app)?.candidates.length ?? 0)}</div>`;
}

/** The answers lie where the tools lay, under the thumb, so that many places are looked through without scrolling. */
export function lookingTray(app: App): TemplateResult {
  return html`${ANSWERS.map(
      ([what, key]) =>
        html`<button
          type="button"
          class=${what === 'take' ? 'main' : ''}
          aria-keyshortcuts=${key}
          @click=${() => answer(app, what)}
        >
          ${app.say(`marks.answer.${what}`)}<kbd class="key-hint" aria-hidden="true">${key}</kbd>
        </button>`,
    )}
    <button type="button" class="quiet" @click=${() => leaveOff(app)}>${app.say('marks.leaveOff')}</button>`;
}

/** With the key that does the same. */
const ANSWERS = [
  ['take', 'Y'],
  ['drop', 'N'],
  ['later', 'L'],
] as const;

/** Starts with the first; false where there is nothing to look at. */
export function lookThrough(app: App): boolean {
  const hide = hideNow(app);
  const [first] = hide?.candidates ?? [];
  if (hide === undefined || first === undefined) return false;
  marksTable(app).update((table) => ({ ...table, lookedAt: [...table.lookedAt, hide.id] }));
  lookAt(app, first, []);
  return true;
}

function lookAt(app: App, candidate: FlawCandidate, later: readonly string[]): void {
  const effect = plainEffect(effectOf(candidate));
  marksTable(app).update((table) => ({
    ...table,
    tool: undefined,
    chosen: undefined,
    looking: { id: candidate.id, later, effect },
  }));
}

/** What was not looked at waits for another time. */
function leaveOff(app: App): void {
  marksTable(app).update((table) => ({ ...table, looking: undefined }));
}

/** Answers for the one in view; false where none is. */
export function answer(app: App, what: 'take' | 'drop' | 'later'): boolean {
  const { looking } = marksTable(app).get();
  const hide = hideNow(app);
  if (looking === undefined || hide === undefined) return false;
  const next = nextToLookAt(hide.candidates, looking.id, looking.later);
  if (what === 'take')
    changeHide(app, 'marks.undo.taken', (now) => taken(now, looking.id, PLAIN_EFFECTS[looking.effect]));
  else if (what === 'drop')
    changeHide(
      app,
      'marks.undo.dropped',
      (now) => decideHide(now, { take: [], drop: [looking.id], confirm: [] }).hide,
    );
  const later = what === 'later' ? [...looking.later, looking.id] : looking.later;
  if (next !== undefined) lookAt(app, next, later);
  else {
    marksTable(app).update((table) => ({ ...table, looking: undefined }));
    const n = hideNow(app)?.candidates.length ?? 0;
    app.tell({ tone: 'calm', text: n === 0 ? app.say('marks.allLooked') : app.say('marks.possible', { n }) });
  }
  return true;
}

/** What the finder says of it stays where the plain choice is the same. */
function taken(hide: Hide, id: string, effect: (typeof PLAIN_EFFECTS)['never']): Hide {
  const { hide: decided, taken: made } = decideHide(hide, { take: [id], drop: [], confirm: [] });
  const name = made[0]?.flaw ?? '';
  return changedFlaw(decided, name, (flaw) =>
    plainEffect(effectOf(flaw)) === plainEffect(effect) ? flaw : { ...flaw, effect },
  );
}
