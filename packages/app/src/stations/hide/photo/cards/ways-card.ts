import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { REFERENCE_SHEETS_FILE } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import { optionalLengthField } from '../../../../fields/index.js';
import { filesOfKind, pathBeside } from '../../../../job/job.js';
import { hideDesk } from '../bring-in.js';
import type { Problem } from '../bring-in.js';
import { openRawPhotos } from '../deeds/open-photos.js';
import { bringFiles } from '../deeds/other-ways.js';
import { makeSheets, sheetsAre, tellLines } from '../deeds/reference-sheets.js';

/** Formats of photos that are read; a phone that is asked for these gives its own format as JPEG. */
const PHOTOS = 'image/jpeg,image/png,image/webp';

/** The ways by which a hide comes in, the photo before all. */
export function waysCard(app: App, problem: Problem | undefined, isWorking: boolean): TemplateResult {
  // At a desk the photo was taken before, with a camera or a phone.
  const isAtDesk = matchMedia('(pointer: fine)').matches;
  const head = html`<h2>${app.say('hide.new')}</h2>
    ${problemNote(problem)}`;
  if (isWorking)
    return html`${head}
      <p role="status">${app.say('hide.opening')}</p>`;
  return html`${head}
    <div class="row hide-first">
      ${fileButton(app, 'hide.takePhoto', { accept: PHOTOS, capture: true, isMain: !isAtDesk })}
      ${fileButton(app, 'hide.choosePhotos', { accept: PHOTOS, several: true, isMain: isAtDesk })}
    </div>
    ${photosOfJob(app)}
    <p>${app.say('hide.howTo')}</p>
    ${isAtDesk ? html`<p class="soft">${app.say('hide.dropHere')}</p>` : nothing}
    <details class="hide-more">
      <summary>${app.say('hide.sheets')}</summary>
      <p>${app.say('hide.sheetsWhy')}</p>
      <button @click=${() => makeSheets(app)}>${app.say('hide.sheetsMake')}</button>
      <p>${app.say('hide.linesWhy')}</p>
      ${linesFields(app)}
    </details>
    <details class="hide-more">
      <summary>${app.say('hide.otherWays')}</summary>
      <div class="row">
        ${fileButton(app, 'hide.fromDrawing', { accept: '.svg,image/svg+xml' })}
        ${fileButton(app, 'hide.fromFile', { accept: `.json,.yaml,${PHOTOS}`, several: true })}
        <button @click=${() => hideDesk(app).bringIn.set({ kind: 'panel' })}>
          ${app.say('hide.fromNumbers')}
        </button>
      </div>
    </details>`;
}

export function problemNote(problem: Problem | undefined): TemplateResult | typeof nothing {
  return problem === undefined
    ? nothing
    : html`<p class="hide-problem" role="alert" data-code=${problem.code}>${problem.words()}</p>`;
}

interface FileButton {
  readonly accept: string;
  readonly capture?: boolean;
  readonly several?: boolean;
  readonly isMain?: boolean;
}

type FileWords =
  'hide.takePhoto' | 'hide.choosePhotos' | 'hide.fromDrawing' | 'hide.fromFile' | 'hide.onePhotoMore';

export function fileButton(
  app: App,
  words: FileWords,
  { accept, capture, several, isMain }: FileButton,
): TemplateResult {
  const change = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const files = [...(input.files ?? [])];
    input.value = '';
    void bringFiles(app, files);
  };
  return html`<label class="hide-file ${isMain === true ? 'is-main' : ''}">
    ${app.say(words)}
    <input
      type="file"
      accept=${accept}
      capture=${capture === true ? 'environment' : nothing}
      ?multiple=${several === true}
      @change=${change}
    />
  </label>`;
}

/** Pictures that lie in the job and belong to no hide yet: photos that were put into its folder. */
function photosOfJob(app: App): TemplateResult | typeof nothing {
  const job = app.job.get();
  const used = new Set(
    filesOfKind(job, 'hide').flatMap(([path, { hide }]) =>
      hide.photo === undefined
        ? []
        : [hide.photo.file, ...(hide.photo.takenFrom ?? [])].map((file) => pathBeside(path, file)),
    ),
  );
  const free = filesOfKind(job, 'picture').filter(
    ([path]) => !used.has(path) && !path.includes('/') && !/\.straight\.jpg$/i.test(path),
  );
  if (free.length === 0) return nothing;
  return html`<p>${app.say('hide.photosOfJob')}</p>
    <div class="row">
      ${free.map(
        ([path, { bytes }]) =>
          html`<button @click=${() => void openRawPhotos(app, [{ file: path, bytes }])}>${path}</button>`,
      )}
    </div>`;
}

function linesFields(app: App): TemplateResult {
  const { acrossMm, downMm } = sheetsAre(app);
  return html`<div class="row" data-file=${REFERENCE_SHEETS_FILE}>
    ${optionalLengthField(app, {
      id: 'hide-line-across',
      label: app.say('hide.lineAcross'),
      value: acrossMm,
      take: (value) => tellLines(app, { acrossMm: value }),
    })}
    ${optionalLengthField(app, {
      id: 'hide-line-down',
      label: app.say('hide.lineDown'),
      value: downMm,
      take: (value) => tellLines(app, { downMm: value }),
    })}
  </div>`;
}
