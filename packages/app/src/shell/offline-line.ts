import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../app/app.js';
import { keepTheRest, whatIsKept } from './keep-offline.js';
import type { KeptOffline } from './keep-offline.js';

type State =
  | { readonly kind: 'none' }
  | ({ readonly kind: 'kept'; readonly isKeeping?: boolean; readonly hasFailed?: boolean } & KeptOffline);

/** As it was looked up last. */
const STATES = new WeakMap<App, State>();

/** Looks up what of the app is kept; the sheet is drawn anew when it is known. */
export async function lookUpOffline(app: App): Promise<void> {
  const kept = await whatIsKept();
  STATES.set(app, kept === undefined ? { kind: 'none' } : { kind: 'kept', ...kept });
  app.redraw();
}

async function keepAll(app: App, before: KeptOffline): Promise<void> {
  STATES.set(app, { ...before, kind: 'kept', isKeeping: true });
  app.redraw();
  const kept = await keepTheRest();
  STATES.set(app, { ...before, kind: 'kept', ...(kept ?? { hasFailed: true }) });
  app.redraw();
}

/** Whether the app opens without a network; a table with a folder has no need of that. */
export function offlineLine(app: App): TemplateResult | typeof nothing {
  if (app.session.kind === 'folder') return nothing;
  return html`<section class="offline" aria-label=${app.say('offline.title')}>
    <h3>${app.say('offline.title')}</h3>
    ${stateWords(app, STATES.get(app))}
  </section>`;
}

function stateWords(app: App, state: State | undefined): TemplateResult {
  if (state === undefined) return html`<p class="soft">${app.say('offline.looking')}</p>`;
  if (state.kind === 'none') return html`<p>${app.say('offline.none')}</p>`;
  const megabytes = (bytes: number): string => app.measures().number(bytes / 1e6, 1);
  const { keptBytes, allBytes, isKeeping, hasFailed } = state;
  if (keptBytes >= allBytes) return html`<p>${app.say('offline.all', { mb: megabytes(allBytes) })}</p>`;
  return html`<p>${app.say('offline.part', { mb: megabytes(keptBytes), all: megabytes(allBytes) })}</p>
    <p role="status">
      ${
        isKeeping === true
          ? app.say('offline.keeping')
          : html`<button @click=${() => void keepAll(app, state)}>${app.say('offline.keep')}</button>`
      }
    </p>
    ${hasFailed === true ? html`<p role="alert">${app.say('offline.failed')}</p>` : nothing}`;
}
