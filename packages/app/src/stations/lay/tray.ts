import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import { hideAt } from '../../job/job.js';
import { hasStaying } from '../../work/laying/staying.js';
import { hasPicture } from '../hide/photo/stage/hide-picture.js';
import { hidesOfOrderInFront } from './card/ready.js';
import { presentLayout } from './present.js';
import { startRun } from './run.js';
import { layTable } from './table.js';

/** Laying, stopping, going on; whether pieces slide into contact; all of the hide. */
export function layTray(app: App): TemplateResult {
  const table = layTable(app);
  const run = table.run.get();
  if (app.place.get().order === undefined) return html``;
  return html`${
    run === undefined
      ? begin(app)
      : html`<button class="main" ?disabled=${run.isStopping} @click=${run.stop}>
          ${app.say('lay.stop')}
        </button>`
  }
  ${
    run === undefined && presentLayout(app) !== undefined
      ? html`<button
          aria-pressed=${String(table.snug.get())}
          title=${app.say('lay.snug.words')}
          @click=${() => table.snug.update((isSnug) => !isSnug)}
        >
          ${app.say('lay.snug')}
        </button>`
      : nothing
  }
  ${
    isPhotoThere(app)
      ? html`<button
          aria-pressed=${String(table.overPhoto.get())}
          title=${app.say('lay.photo.words')}
          @click=${() => table.overPhoto.update((isOver) => !isOver)}
        >
          ${app.say('lay.photo')}
        </button>`
      : nothing
  }`;
}

function isPhotoThere(app: App): boolean {
  const path = app.place.get().hide;
  const hide = hideAt(app.job.get(), path);
  return hide !== undefined && hasPicture(app, path, hide);
}

function begin(app: App) {
  const table = layTable(app);
  const present = presentLayout(app);
  if (present === undefined)
    return html`<button
      class="main"
      ?disabled=${hidesOfOrderInFront(app).length === 0}
      @click=${() => startRun(app, table, 'anew')}
    >
      ${app.say('lay.run')}
    </button>`;
  return html`<button class="main" @click=${() => startRun(app, table, 'anew')}>
      ${app.say(hasStaying(present.layout) ? 'lay.around' : 'lay.anew')}
    </button>
    <button title=${app.say('lay.goOn.words')} @click=${() => startRun(app, table, 'go on')}>
      ${app.say('lay.goOn')}
    </button>`;
}
