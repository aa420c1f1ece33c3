import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../../app/app.js';
import { NO_MARKS, changeMendSteps, countMarks } from '../bring-in.js';
import type { MendSteps } from '../bring-in.js';
import { hideLine } from './hide-head.js';
import { workingNote } from './photo-card.js';
import { problemNote } from './ways-card.js';

/** What to draw where the edge went wrong. */
export function mendCard(app: App, steps: MendSteps): TemplateResult {
  if (steps.working !== undefined) return workingNote(app, steps.working);
  const count = countMarks(steps.marks);
  return html`<h2>${app.say('hide.mend')}</h2>
    ${hideLine(app)} ${problemNote(steps.problem)}
    <p>${app.say('hide.mendHow')}</p>
    ${
      count === 0
        ? nothing
        : html`<p class="row">
            <span>${app.say('hide.marksDrawn', { n: count })}</span>
            <button class="quiet" @click=${() => changeMendSteps(app, { marks: NO_MARKS })}>
              ${app.say('hide.forgetStrokes')}
            </button>
          </p>`
    }`;
}
