import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { FLAW_KINDS, effectOf } from '@hidebound/leather';
import type { Effect, Flaw, FlawKind } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import type { PlainEffect } from '../../../../drawing/hide-layer.js';
import { plainEffect } from '../../../../drawing/hide-layer.js';
import { lengthField, listField, optionalWholeField, pressRow } from '../../../../fields/index.js';
import type { WordKey } from '../../../../words/words.js';
import { changeHide, hideNow } from '../change-hide.js';
import { PLAIN_EFFECTS, changedFlaw, resizedShape, sizeOf } from '../logic/flaws.js';
import { FLAW_WAYS, choose, marksTable, setTool } from '../table.js';
import { takeChosenAway } from '../take-away.js';

const EFFECTS: readonly PlainEffect[] = ['never', 'hidden', 'anywhere'];

/** The three plain choices, each with its hatching. */
export function effectRow(app: App, now: PlainEffect, pick: (effect: PlainEffect) => void): TemplateResult {
  const options = EFFECTS.map((value) => ({
    value,
    words: app.say(`marks.effect.${value}`),
    swatch: `is-${value}`,
  }));
  return html`<div class="plain-effects">${pressRow(app.say('marks.mayLie'), options, now, pick)}</div>`;
}

/** With the tool in hand: what the next flaw is; and the flaw that was chosen. */
export function flawCard(app: App): TemplateResult {
  const { tool, flaw: setting } = marksTable(app).get();
  const chosen = chosenFlaw(app);
  const now = chosen === undefined ? setting.effect : plainEffect(effectOf(chosen));
  const ways = FLAW_WAYS.map((value) => ({ value, words: app.say(`marks.way.${value}`) }));
  return html`
    <h3>${chosen === undefined ? app.say('marks.tool.flaws') : flawTitle(app, chosen)}</h3>
    ${effectRow(app, now, (effect) => pickEffect(app, effect))}
    ${
      tool === 'flaws'
        ? html`${pressRow(app.say('marks.how'), ways, setting.way, (way) => setTool(app, 'flaw', { way }))}
            <p class="soft">${app.say(`marks.help.${setting.way}`)}</p>`
        : nothing
    }
    ${chosen === undefined ? nothing : chosenPart(app, chosen)}
  `;
}

export function chosenFlaw(app: App): Flaw | undefined {
  const { chosen } = marksTable(app).get();
  return chosen?.kind === 'flaw' ? hideNow(app)?.flaws.find(({ id }) => id === chosen.id) : undefined;
}

function flawTitle(app: App, { kind }: Flaw): string {
  return app.say(kind === undefined ? 'marks.kind.none' : kindWord(kind));
}

export function kindWord(kind: FlawKind): WordKey {
  return `marks.kind.${kind}`;
}

/** For the chosen flaw, and for the next ones. */
function pickEffect(app: App, effect: PlainEffect): void {
  setTool(app, 'flaw', { effect });
  changeChosen(app, 'marks.undo.flawEffect', (flaw) => ({ ...flaw, effect: PLAIN_EFFECTS[effect] }));
}

function changeChosen(app: App, label: WordKey, change: (flaw: Flaw) => Flaw): void {
  const flaw = chosenFlaw(app);
  if (flaw !== undefined) changeHide(app, label, (hide) => changedFlaw(hide, flaw.id, change));
}

function chosenPart(app: App, flaw: Flaw): TemplateResult {
  const size = sizeOf(flaw.shape);
  const isSpot = flaw.shape.kind === 'point';
  return html`
    ${
      size === undefined
        ? nothing
        : lengthField(app, {
            id: 'flaw-size',
            of: flaw.id,
            label: app.say(isSpot ? 'marks.acrossSpot' : 'marks.widthStroke'),
            value: isSpot ? 2 * size : size,
            take: (mm) =>
              changeChosen(app, 'marks.undo.flawSized', (now) => ({
                ...now,
                shape: resizedShape(now.shape, isSpot ? mm / 2 : mm),
              })),
          })
    }
    ${moreOf(app, flaw)}
    <div class="row">
      <button type="button" @click=${() => takeChosenAway(app)}>${app.say('marks.takeAway')}</button>
      <button type="button" class="quiet" @click=${() => choose(app, undefined)}>
        ${app.say('marks.letGo')}
      </button>
    </div>
  `;
}

/** For those who want to say more than the three choices. */
function moreOf(app: App, flaw: Flaw): TemplateResult {
  const effect = effectOf(flaw);
  const kinds: readonly (readonly [FlawKind | '', string])[] = [
    ['', app.say('marks.kind.none')],
    ...FLAW_KINDS.map((kind) => [kind, app.say(kindWord(kind))] as const),
  ];
  return html`<details class="more">
    <summary>${app.say('marks.more')}</summary>
    ${listField('flaw-kind', app.say('marks.whatItIs'), kinds, flaw.kind ?? '', (kind) =>
      changeChosen(app, 'marks.undo.flawKind', (now) => withKind(now, kind)),
    )}
    ${effectFields(app, 'flaw', effect, (next) =>
      changeChosen(app, 'marks.undo.flawEffect', (now) => ({ ...now, effect: next })),
    )}
    ${optionalWholeField(app, {
      id: 'flaw-depth',
      of: flaw.id,
      label: app.say('marks.depth'),
      value: flaw.depth === undefined ? undefined : flaw.depth * 100,
      unit: '%',
      least: 0,
      most: 100,
      take: (percent) => changeChosen(app, 'marks.undo.flawDepth', (now) => withDepth(now, percent)),
    })}
    ${listField(
      'flaw-side',
      app.say('marks.side'),
      [
        ['grain', app.say('marks.side.grain')],
        ['flesh', app.say('marks.side.flesh')],
      ],
      flaw.side,
      (side) => changeChosen(app, 'marks.undo.flawSide', (now) => ({ ...now, side })),
    )}
  </details>`;
}

/** What it does stays as it was chosen, whatever kind of flaw it is said to be. */
function withKind(flaw: Flaw, kind: FlawKind | ''): Flaw {
  const { kind: _, ...rest } = flaw;
  const effect = effectOf(flaw);
  return kind === '' ? { ...rest, effect } : { ...rest, kind, effect };
}

function withDepth(flaw: Flaw, percent: number | undefined): Flaw {
  const { depth: _, ...rest } = flaw;
  return percent === undefined ? rest : { ...rest, depth: percent / 100 };
}

/** Looks and strength, for a flaw or a zone. */
export function effectFields(
  app: App,
  owner: 'flaw' | 'zone',
  effect: Effect,
  change: (effect: Effect) => void,
): TemplateResult {
  return html`${listField(
    `${owner}-looks`,
    app.say('marks.looks'),
    [
      ['A', app.say('marks.looks.A')],
      ['B', app.say('marks.looks.B')],
      ['C', app.say('marks.looks.C')],
    ],
    effect.looks,
    (looks) => change({ ...effect, looks }),
  )}
  ${listField(
    `${owner}-strength`,
    app.say('marks.strength'),
    [
      ['sound', app.say('marks.strength.sound')],
      ['weak', app.say('marks.strength.weak')],
    ],
    effect.strength,
    (strength) => change({ ...effect, strength }),
  )}`;
}
