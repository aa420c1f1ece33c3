import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../app/app.js';
import { nextStep } from '../app/next-step.js';

/** At the foot of a place's card: what comes next, with the way there. It stays in view while the card is read. */
export function nextStepLine(app: App): TemplateResult | typeof nothing {
  const next = nextStep(app.job.get(), app.place.get());
  if (next === undefined) return nothing;
  return html`<div class="next-step">
    <p>${app.say(`next.${next}`)}</p>
    <button @click=${() => app.goTo(next)}>${app.say(`next.go.${next}`)}</button>
  </div>`;
}
