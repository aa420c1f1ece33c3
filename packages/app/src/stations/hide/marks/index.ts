import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../app/app.js';
import type { Stage } from '../../../drawing/stage.js';
import type { KeyRow } from '../../../shell/station.js';

/** The card of the hide that lies in front: its marks and what is known of it. */
export function marksCard(_app: App): TemplateResult {
  return html``;
}

/** The tools for marking, in words. */
export function marksTray(_app: App): TemplateResult {
  return html``;
}

/** Draws the hide and lays the tool in hand on it; gives back what takes all of it away. The photo is the caller's. */
export function openMarks(_app: App, _stage: Stage): () => void {
  return () => undefined;
}

export const MARKS_KEYS: readonly KeyRow[] = [];
