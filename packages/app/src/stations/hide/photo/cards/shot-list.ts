import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../../app/app.js';
import { listField } from '../../../../fields/index.js';
import { SHOWS, changePhotoSteps, shotsShowing, wasMoved } from '../bring-in.js';
import type { PhotoSteps, Shot, Shows } from '../bring-in.js';
import { dropShot } from '../deeds/open-photos.js';
import { fileButton } from './ways-card.js';

/** The photos of the hide: which is shown, what each of several shows, and one more. */
export function shotList(app: App, steps: PhotoSteps): TemplateResult {
  const { shots } = steps;
  return html`<div class="hide-shots">
    ${shots.length < 2 ? nothing : html`${rows(app, steps)} ${moved(app, steps)}`}
    ${fileButton(app, 'hide.onePhotoMore', { accept: 'image/jpeg,image/png,image/webp', several: true })}
    <details class="hide-more">
      <summary>${app.say('hide.whyMore')}</summary>
      <ul>
        ${(['parts', 'raking', 'other'] as const).map((why) => html`<li>${app.say(`hide.whyMore.${why}`)}</li>`)}
      </ul>
    </details>
  </div>`;
}

function rows(app: App, steps: PhotoSteps): TemplateResult {
  return html`<ul>
    ${steps.shots.map((shot, i) => row(app, steps, shot, i))}
  </ul>`;
}

function row(app: App, { shows, shown }: PhotoSteps, { file }: Shot, index: number): TemplateResult {
  const id = `hide-shows-${index}`;
  const now = shows.get(file) ?? 'as it lies';
  const choose = (what: Shows): void =>
    changePhotoSteps(app, { shows: new Map([...shows, [file, what]]), problem: undefined });
  return html`<li class="hide-shot">
    <div class="row">
      <button aria-pressed=${String(index === shown)} @click=${() => changePhotoSteps(app, { shown: index })}>
        ${file}
      </button>
      <button class="quiet" @click=${() => dropShot(app, file)}>${app.say('hide.dropPhoto')}</button>
    </div>
    ${listField(
      id,
      app.say('hide.shows'),
      SHOWS.map((what) => [what, app.say(`hide.shows.${what}`)] as const),
      now,
      choose,
    )}
  </li>`;
}

/** Asked where there are several photos of one side: else nothing can have moved between them. */
function moved(app: App, steps: PhotoSteps): TemplateResult | typeof nothing {
  if (shotsShowing(steps, 'as it lies').length < 2) return nothing;
  const options = [
    [false, app.say('hide.layStill')],
    [true, app.say('hide.wasMoved')],
  ] as const;
  return html`<fieldset class="choice">
      <legend>${app.say('hide.betweenPhotos')}</legend>
      <div class="row">
        ${options.map(
          ([isMoved, words]) =>
            html`<button
              aria-pressed=${String(steps.isMoved === isMoved)}
              @click=${() => changePhotoSteps(app, { isMoved })}
            >
              ${words}
            </button>`,
        )}
      </div>
    </fieldset>
    <p class="soft">${app.say(steps.isMoved ? 'hide.movedHow' : 'hide.stillHow')}</p>`;
}

/** What is amiss with what the photos are said to show; undefined when nothing is. */
export function missingOfShots(app: App, steps: PhotoSteps): string | undefined {
  if (shotsShowing(steps, 'as it lies').length === 0) return app.say('hide.missingAsItLies');
  if (wasMoved(steps) && shotsShowing(steps, 'raking').length > 0) return app.say('hide.movedAndRaking');
  return undefined;
}
