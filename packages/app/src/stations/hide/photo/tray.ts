import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../app/app.js';
import { bringInOf, changeMendSteps, countMarks, hideDesk, leaveBringIn } from './bring-in.js';
import type { MendSteps, Pen, PhotoSteps, Working } from './bring-in.js';
import { missingWords } from './cards/photo-card.js';
import { traceAgain, tracePhotos } from './deeds/trace-photos.js';

/** The next step, the way back, and what is drawn with. */
export function photoTray(app: App): TemplateResult {
  const now = bringInOf(app);
  if (now === undefined) return html``;
  const hasHide = app.place.get().hide !== undefined;
  const leave = html`<button @click=${() => leaveBringIn(app)}>${app.say('hide.leave')}</button>`;
  switch (now.kind) {
    case 'ways':
      return hasHide ? leave : html``;
    case 'panel':
      return html`<button @click=${() => hideDesk(app).bringIn.set({ kind: 'ways' })}>
        ${app.say('hide.leave')}
      </button>`;
    case 'seen':
      return html`<button class="main" @click=${() => leaveBringIn(app)}>
        ${app.say('hide.backToHide')}
      </button>`;
    case 'photo':
      return now.working === undefined ? photoTools(app, now, leave) : stopTool(app, now.working);
    case 'mend':
      return now.working === undefined ? mendTools(app, now) : stopTool(app, now.working);
  }
}

function stopTool(app: App, { stop }: Working): TemplateResult {
  return html`<button @click=${stop}>${app.say('hide.stop')}</button>`;
}

function photoTools(app: App, steps: PhotoSteps, leave: TemplateResult): TemplateResult {
  const missing = missingWords(app, steps);
  return html`<button
      class="main"
      ?disabled=${missing !== undefined}
      aria-describedby=${missing === undefined ? nothing : 'hide-missing'}
      @click=${() => void tracePhotos(app)}
    >
      ${app.say('hide.trace')}
    </button>
    ${leave} ${missing === undefined ? nothing : html`<span class="soft" id="hide-missing">${missing}</span>`}`;
}

const PENS: readonly Pen[] = ['hide', 'floor', 'edge'];

function mendTools(app: App, steps: MendSteps): TemplateResult {
  return html`${PENS.map(
      (pen) =>
        html`<button aria-pressed=${steps.pen === pen} @click=${() => changeMendSteps(app, { pen })}>
          ${app.say(`hide.pen.${pen}`)}
        </button>`,
    )}
    <button class="main" ?disabled=${countMarks(steps.marks) === 0} @click=${() => void traceAgain(app)}>
      ${app.say('hide.traceAgain')}
    </button>
    <button @click=${() => leaveBringIn(app)}>${app.say('hide.done')}</button>`;
}
