import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { Hide } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import { filesOfKind, hideAt } from '../../../../job/job.js';
import type { WordKey } from '../../../../words/words.js';
import { NO_MARKS, bringInOf, hideDesk } from '../bring-in.js';
import { showOnPhoto } from '../deeds/show-on-photo.js';
import { canTraceAgain } from '../deeds/trace-photos.js';
import { leathersWithout, useHideFor } from '../deeds/use-hide.js';
import {
  areaLine,
  areaWords,
  findingWords,
  findingsToTell,
  invoiceWords,
  scaledByWords,
} from './found-words.js';

/**
 * The head of the card: the hides of the job, one of them chosen, the way to a new one, and what its photo told. With a
 * tool in hand it is short, so that on a phone the tool's own card is seen.
 */
export function hideHead(app: App, isShort: boolean): TemplateResult {
  const now = bringInOf(app);
  const path = app.place.get().hide;
  const hide = hideAt(app.job.get(), path);
  if (now !== undefined || hide === undefined || path === undefined) return html``;
  return html`<div class="hide-head">
    ${hideList(app, path, hide, isShort)}
    ${isShort ? nothing : html`${figures(app, hide)} ${useFor(app, path)} ${found(app, path, hide)}`}
  </div>`;
}

function hideList(app: App, path: string, hide: Hide, isShort: boolean): TemplateResult {
  const hides = filesOfKind(app.job.get(), 'hide');
  const choose = (event: Event, chosen: string): void => {
    (event.target as Element).closest('details')?.removeAttribute('open');
    app.place.update((place) => ({ ...place, hide: chosen }));
  };
  return html`<div class="hide-choice ${isShort ? 'is-short' : ''}">
    <details class="hide-list">
      <summary title=${app.say('hide.choose', { name: hide.id })}>
        <h2>${hide.id}</h2>
        <span class="soft"
          >${isShort ? areaLine(app, hide) : app.say('hide.ofHides', { n: hides.length })}</span
        >
      </summary>
      <ul>
        ${hides.map(
          ([each, file]) =>
            html`<li>
              <button
                aria-current=${each === path ? 'true' : 'false'}
                @click=${(event: Event) => choose(event, each)}
              >
                <strong>${file.hide.id}</strong>
                <span class="soft">${rowWords(app, file.hide)}</span>
              </button>
            </li>`,
        )}
      </ul>
    </details>
    ${
      isShort
        ? nothing
        : html`<button @click=${() => hideDesk(app).bringIn.set({ kind: 'ways' })}>
            ${app.say('hide.new')}
          </button>`
    }
  </div>`;
}

/** "side, 184 dm², 2.0 – 2.6 mm". */
function rowWords(app: App, hide: Hide): string {
  const { thickness } = hide.leather;
  return [
    app.say(cutKey(hide.cut)),
    areaWords(app, hide),
    ...(thickness === undefined ? [] : [app.measures().thicknessRange(thickness)]),
  ].join(' · ');
}

export function cutKey(cut: Hide['cut']): WordKey {
  return `hide.cut.${cut}`;
}

function figures(app: App, hide: Hide): TemplateResult {
  const { photo } = hide;
  const invoice = invoiceWords(app, hide);
  return html`<dl class="figures hide-figures">
      <dt>${app.say('hide.area')}</dt>
      <dd>${areaWords(app, hide)}</dd>
      ${
        photo === undefined
          ? nothing
          : html`<dt>${app.say('hide.scaledBy')}</dt>
              <dd>${scaledByWords(app, photo.scaledBy)}</dd>
              <dt>${app.say('hide.placesWithin')}</dt>
              <dd>± ${app.measures().deviation(photo.errorMm)}</dd>`
      }
    </dl>
    ${
      invoice === undefined
        ? html`<button class="quiet tell-invoice" @click=${askForInvoice}>
            ${app.say('hide.tellInvoice')}
          </button>`
        : html`<p class="hide-invoice">${invoice}</p>`
    }`;
}

/** The field for it lies among what is known of the hide. */
function askForInvoice(event: Event): void {
  const field = (event.currentTarget as Element).closest('.card-paper')?.querySelector('#hide-invoiced');
  field?.closest('details')?.setAttribute('open', '');
  if (field instanceof HTMLInputElement) field.focus();
}

/** While something else has the card: which hide it is, and its area. */
export function hideLine(app: App): TemplateResult | typeof nothing {
  const hide = hideAt(app.job.get(), app.place.get().hide);
  return hide === undefined
    ? nothing
    : html`<p class="soft hide-line"><strong>${hide.id}</strong> ${areaLine(app, hide)}</p>`;
}

/** A new hide lies in the job, but none of its leathers takes it yet. */
function useFor(app: App, path: string): TemplateResult | typeof nothing {
  const leathers = leathersWithout(app, path);
  if (leathers.length === 0) return nothing;
  return html`<div class="hide-use">
    <p>${app.say('hide.notUsed')}</p>
    <div class="row">
      ${leathers.map(
        (leather) =>
          html`<button @click=${() => useHideFor(app, path, leather)}>
            ${app.say('hide.useFor', { leather })}
          </button>`,
      )}
    </div>
  </div>`;
}

function found(app: App, path: string, hide: Hide): TemplateResult | typeof nothing {
  const told = hideDesk(app).found.get().get(path);
  const findings = told === undefined ? [] : findingsToTell(told);
  const canMend = canTraceAgain(app, path);
  if (findings.length === 0 && !canMend) return nothing;
  const mend = (): void =>
    hideDesk(app).bringIn.set({
      kind: 'mend',
      path,
      pen: 'floor',
      marks: NO_MARKS,
      working: undefined,
      problem: undefined,
    });
  const chalked = told?.report?.chalkFlaws;
  return html`<details class="hide-found" ?open=${findings.some(({ severity }) => severity !== 'note')}>
    <summary>${app.say('hide.photoTells', { n: findings.length })}</summary>
    ${chalked === undefined || chalked === 0 ? nothing : html`<p>${app.say('hide.chalked', { n: chalked })}</p>`}
    <ul class="hide-findings">
      ${findings.map(
        (finding) =>
          html`<li class="is-${finding.severity}">
            <strong>${app.say(`hide.severity.${finding.severity}`)}</strong> ${findingWords(app, finding)}
          </li>`,
      )}
    </ul>
    <div class="row">
      ${canMend ? html`<button @click=${mend}>${app.say('hide.mend')}</button>` : nothing}
      ${
        told === undefined || told.views.length === 0 || hide.photo === undefined
          ? nothing
          : html`<button @click=${() => showOnPhoto(app, path)}>${app.say('hide.seeOnPhoto')}</button>`
      }
    </div>
  </details>`;
}
