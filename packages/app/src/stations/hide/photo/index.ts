import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../app/app.js';
import type { Stage } from '../../../drawing/stage.js';

/** The head of the card: the hides of the job, one of them chosen, and the way to a new one. */
export function hideHead(app: App): TemplateResult {
  return html`<h2>${app.say('place.hide')}</h2>`;
}

/** The steps by which a hide comes in. */
export function photoCard(_app: App): TemplateResult {
  return html``;
}

export function photoTray(_app: App): TemplateResult {
  return html``;
}

/** The photo that is being traced, with what is found on it. */
export function openPhoto(_app: App, _stage: Stage): () => void {
  return () => undefined;
}

/** The straightened picture below the chosen hide; gives back what takes it away. */
export function openHidePicture(_app: App, _stage: Stage): () => void {
  return () => undefined;
}
