import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { keyed } from 'lit-html/directives/keyed.js';
import { ref } from 'lit-html/directives/ref.js';
import { ZONE_KINDS, effectOf } from '@hidebound/leather';
import type { Effect, Zone } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import { plainEffect } from '../../../../drawing/hide-layer.js';
import { lengthField, pressRow, thicknessField } from '../../../../fields/index.js';
import { changeHide, hideNow } from '../change-hide.js';
import {
  confirmed,
  withBackboneTurned,
  withReading,
  withReadingChanged,
  withoutBackbone,
} from '../logic/along.js';
import { PLAIN_EFFECTS } from '../logic/flaws.js';
import { BACK_WAYS, EDGE_WAYS, ZONE_WAYS, choose, marksTable, setTool } from '../table.js';
import { takeChosenAway } from '../take-away.js';
import { effectFields, effectRow } from './flaw-card.js';

/** The edge: how it is worked, and the corner or opening in hand. */
export function edgeCard(app: App): TemplateResult {
  const { edge, chosen } = marksTable(app).get();
  const ways = EDGE_WAYS.map((value) => ({ value, words: app.say(`marks.way.${value}`) }));
  return html`<h3>${app.say('marks.tool.edge')}</h3>
    ${pressRow(app.say('marks.how'), ways, edge.way, (way) => setTool(app, 'edge', { way }))}
    <p class="soft">${app.say(`marks.help.${edge.way}`)}</p>
    ${
      edge.way === 'push'
        ? lengthField(app, {
            id: 'edge-round',
            label: app.say('marks.round'),
            value: 2 * edge.roundMm,
            take: (mm) => setTool(app, 'edge', { roundMm: mm / 2 }),
          })
        : nothing
    }
    ${chosen?.kind === 'corner' ? takeAwayRow(app, 'marks.cornerAway') : nothing}
    ${
      chosen?.kind === 'opening' || (chosen?.kind === 'corner' && chosen.edge !== 'outline')
        ? html`<div class="row">
            <button type="button" @click=${() => openingAway(app)}>${app.say('marks.openingAway')}</button>
          </div>`
        : nothing
    }`;
}

function openingAway(app: App): void {
  const { chosen } = marksTable(app).get();
  const edge = chosen?.kind === 'opening' || chosen?.kind === 'corner' ? chosen.edge : undefined;
  if (typeof edge !== 'number') return;
  choose(app, { kind: 'opening', edge });
  takeChosenAway(app);
}

function takeAwayRow(app: App, words: 'marks.cornerAway' | 'marks.takeAway'): TemplateResult {
  return html`<div class="row">
    <button type="button" @click=${() => takeChosenAway(app)}>${app.say(words)}</button>
  </div>`;
}

/** Backbone and the direction in which the leather stretches least. */
export function backCard(app: App): TemplateResult {
  const { back, chosen } = marksTable(app).get();
  const hide = hideNow(app);
  const ways = BACK_WAYS.map((value) => ({ value, words: app.say(`marks.way.${value}`) }));
  const hasBackbone = hide?.backbone !== undefined;
  const isGuess = hasBackbone && hide.guessed?.includes('backbone') === true;
  return html`<h3>${app.say('marks.tool.back')}</h3>
    ${isGuess ? guessedBackbone(app) : nothing}
    ${pressRow(app.say('marks.how'), ways, back.way, (way) => setTool(app, 'back', { way }))}
    <p class="soft">${app.say(`marks.help.${back.way}`)}</p>
    ${
      back.way === 'backbone' && hasBackbone
        ? html`<div class="row">
            <button type="button" @click=${() => changeHide(app, 'marks.undo.turned', withBackboneTurned)}>
              ${app.say('marks.turnRound')}
            </button>
            <button type="button" @click=${() => changeHide(app, 'marks.undo.noBackbone', withoutBackbone)}>
              ${app.say('marks.noBackbone')}
            </button>
          </div>`
        : nothing
    }
    ${chosen?.kind === 'tightness' ? takeAwayRow(app, 'marks.takeAway') : nothing}`;
}

/** Asked before all else: on a phone no more than that is in view. */
function guessedBackbone(app: App): TemplateResult {
  return html`<div class="ask">
    <p>${app.say('marks.backboneGuessed')}</p>
    <button
      type="button"
      class="main"
      @click=${() => changeHide(app, 'marks.undo.confirmed', (now) => confirmed(now, 'backbone'))}
    >
      ${app.say('marks.isRight')}
    </button>
  </div>`;
}

/** Which zone is painted, and how; the zone in hand. */
export function zoneCard(app: App): TemplateResult {
  const { zone, chosen } = marksTable(app).get();
  const kinds = ZONE_KINDS.map((value) => ({ value, words: app.say(`marks.zone.${value}`) }));
  const ways = ZONE_WAYS.map((value) => ({
    value,
    words: app.say(value === 'around' ? 'marks.way.around' : `marks.way.${value}`),
  }));
  const held = chosen?.kind === 'zone' ? hideNow(app)?.zones.find(({ id }) => id === chosen.id) : undefined;
  return html`<h3>${app.say('marks.tool.zones')}</h3>
    ${pressRow(app.say('marks.whichZone'), kinds, zone.kind, (kind) => setTool(app, 'zone', { kind }))}
    ${pressRow(app.say('marks.how'), ways, zone.way, (way) => setTool(app, 'zone', { way }))}
    <p class="soft">${app.say(zone.way === 'around' ? 'marks.help.zoneAround' : `marks.help.${zone.way}`)}</p>
    ${
      zone.way === 'around'
        ? nothing
        : lengthField(app, {
            id: 'zone-brush',
            label: app.say('marks.brush'),
            value: zone.brushMm,
            take: (brushMm) => setTool(app, 'zone', { brushMm }),
          })
    }
    ${held === undefined ? nothing : heldZone(app, held)}`;
}

function heldZone(app: App, zone: Zone): TemplateResult {
  const change = (effect: Effect): void => {
    changeHide(app, 'marks.undo.zoneEffect', (hide) => ({
      ...hide,
      zones: hide.zones.map((each) => (each.id === zone.id ? { ...each, effect } : each)),
    }));
  };
  const effect = effectOf(zone);
  return html`<h3>${app.say('marks.thisZone', { zone: app.say(`marks.zone.${zone.kind}`) })}</h3>
    ${effectRow(app, plainEffect(effect), (plain) => change(PLAIN_EFFECTS[plain]))}
    ${effectFields(app, 'zone', effect, change)} ${takeAwayRow(app, 'marks.takeAway')}`;
}

/** Thickness at the place that was tapped. */
export function thicknessCard(app: App): TemplateResult {
  const { chosen } = marksTable(app).get();
  const readings = hideNow(app)?.leather.readings ?? [];
  const held = chosen?.kind === 'reading' ? readings[chosen.index] : undefined;
  const isAsked = chosen?.kind === 'place' || held !== undefined;
  return html`<h3>${app.say('marks.tool.thickness')}</h3>
    <p class="soft">${app.say('marks.help.thickness')}</p>
    ${
      isAsked
        ? keyed(
            JSON.stringify(chosen),
            html`<div ${ref(focusField)}>
              ${thicknessField(app, {
                id: 'thickness-here',
                of: JSON.stringify(chosen),
                label: app.say('marks.thicknessHere'),
                mm: held?.mm,
                take: (mm) => takeThickness(app, mm),
              })}
            </div>`,
          )
        : nothing
    }
    ${held === undefined ? nothing : takeAwayRow(app, 'marks.takeAway')}`;
}

/** The field that a tap asked for has the focus, once: what is typed next is the thickness. */
function focusField(element: Element | undefined): void {
  queueMicrotask(() => element?.querySelector('input')?.focus({ preventScroll: true }));
}

function takeThickness(app: App, mm: number | undefined): void {
  const { chosen } = marksTable(app).get();
  if (mm === undefined) return;
  if (chosen?.kind === 'place') {
    if (changeHide(app, 'marks.undo.reading', (hide) => withReading(hide, chosen.at, mm)))
      choose(app, undefined);
  } else if (chosen?.kind === 'reading') {
    changeHide(app, 'marks.undo.readingChanged', (hide) => withReadingChanged(hide, chosen.index, mm));
    choose(app, undefined);
  }
}
