import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { TRACE_STEPS } from '../../../../work/photo-tasks.js';
import type { App } from '../../../../app/app.js';
import { optionalAreaField, optionalLengthField, thicknessField } from '../../../../fields/index.js';
import { NO_MARKS, bringInOf, changePhotoSteps, countMarks } from '../bring-in.js';
import type { Beside, Four, Pen, PhotoSteps, StatedPlaces, Working } from '../bring-in.js';
import { firstPlaces, referenceOf } from '../logic/stated-reference.js';
import { missingOfShots, shotList } from './shot-list.js';
import { problemNote } from './ways-card.js';

const BESIDE: readonly Beside[] = ['sheets', 'rectangle', 'card', 'rules'];

/** What is to be known of the photos before they are traced. */
export function photoCard(app: App, steps: PhotoSteps): TemplateResult {
  if (steps.working !== undefined) return workingNote(app, steps.working);
  return html`<h2>${app.say('hide.fromPhoto')}</h2>
    ${problemNote(steps.problem)} ${sideChoice(app, steps)} ${besideChoice(app, steps)}
    ${statedFields(app, steps)} ${shotList(app, steps)}
    <details class="hide-more">
      <summary>${app.say('hide.moreKnown')}</summary>
      <div class="row">
        ${thicknessField(app, {
          id: 'hide-thickness',
          label: app.say('hide.thickness'),
          mm: steps.thicknessMm,
          take: (thicknessMm) => changePhotoSteps(app, { thicknessMm }),
        })}
        ${optionalAreaField(app, {
          id: 'hide-invoiced',
          label: app.say('hide.invoiced'),
          value: steps.invoicedMm2,
          take: (invoicedMm2) => changePhotoSteps(app, { invoicedMm2 }),
        })}
      </div>
    </details>
    ${penHelp(app, steps)}`;
}

/** What is missing before the photo can be traced, in words; undefined when nothing is. */
export function missingWords(app: App, steps: PhotoSteps): string | undefined {
  if (steps.sideUp === undefined) return app.say('hide.missingSide');
  const missing = missingOfShots(app, steps);
  if (missing !== undefined) return missing;
  const { beside, stated } = steps;
  if (beside === 'sheets') return undefined;
  return stated === undefined || referenceOf(beside, stated) === undefined
    ? app.say('hide.missingLengths')
    : undefined;
}

export function workingNote(app: App, { step }: Working): TemplateResult {
  const at = TRACE_STEPS.indexOf(step);
  return html`<h2>${app.say('hide.tracing')}</h2>
    <p role="status">${app.say(`hide.step.${step}`)}</p>
    <progress aria-label=${app.say('hide.tracing')} max=${TRACE_STEPS.length} .value=${at + 0.5}></progress>`;
}

function sideChoice(app: App, steps: PhotoSteps): TemplateResult {
  return html`<fieldset class="choice">
    <legend>${app.say('hide.whichSide')}</legend>
    <div class="row">
      ${(['grain', 'flesh'] as const).map(
        (side) =>
          html`<button
            aria-pressed=${steps.sideUp === side}
            @click=${() => changePhotoSteps(app, { sideUp: side })}
          >
            ${app.say(`hide.side.${side}`)}
          </button>`,
      )}
    </div>
  </fieldset>`;
}

function besideChoice(app: App, steps: PhotoSteps): TemplateResult {
  const choose = (beside: Beside): void => {
    const shot = steps.shots[steps.shown]!;
    const stated = beside === 'sheets' ? undefined : firstPlaces(shot, beside);
    changePhotoSteps(app, { beside, stated, pen: undefined });
  };
  return html`<fieldset class="choice">
    <legend>${app.say('hide.whatBeside')}</legend>
    <div class="row">
      ${BESIDE.map(
        (beside) =>
          html`<button aria-pressed=${steps.beside === beside} @click=${() => choose(beside)}>
            ${app.say(`hide.beside.${beside}`)}
          </button>`,
      )}
    </div>
  </fieldset>`;
}

function statedFields(app: App, steps: PhotoSteps): TemplateResult | typeof nothing {
  const { beside, stated } = steps;
  if (beside === 'sheets' || stated === undefined) return nothing;
  return html`<p>${app.say(`hide.placesHow.${beside}`)}</p>
    ${beside === 'rectangle' ? sideFields(app, stated) : nothing}
    ${beside === 'rules' ? readingFields(app, stated) : nothing}`;
}

function sideFields(app: App, stated: StatedPlaces): TemplateResult {
  const [width, height] = stated.sidesMm;
  const tell = (which: number, value: number | undefined): void =>
    changeStated(app, ({ sidesMm: [width, height] }) => ({
      sidesMm: which === 0 ? [value, height] : [width, value],
    }));
  return html`<div class="row">
    ${optionalLengthField(app, {
      id: 'hide-rectangle-width',
      label: app.say('hide.rectangleWidth'),
      value: width,
      take: (value) => tell(0, value),
    })}
    ${optionalLengthField(app, {
      id: 'hide-rectangle-height',
      label: app.say('hide.rectangleHeight'),
      value: height,
      take: (value) => tell(1, value),
    })}
  </div>`;
}

/** From what is stated now: two fields may be filled before the card is drawn anew. */
function changeStated(app: App, change: (now: StatedPlaces) => Partial<StatedPlaces>): void {
  const now = bringInOf(app);
  if (now?.kind !== 'photo' || now.stated === undefined) return;
  changePhotoSteps(app, { stated: { ...now.stated, ...change(now.stated) } });
}

function readingFields(app: App, stated: StatedPlaces): TemplateResult {
  const tell = (which: number, value: number | undefined): void =>
    changeStated(app, ({ readsMm }) => ({
      readsMm: readsMm.map((mm, i) => (i === which ? value : mm)) as unknown as Four<number | undefined>,
    }));
  return html`<div class="row">
    ${stated.readsMm.map((value, which) =>
      optionalLengthField(app, {
        id: `hide-reading-${which}`,
        least: 0,
        label: app.say('hide.reading', { n: which + 1 }),
        value,
        take: (mm) => tell(which, mm),
      }),
    )}
  </div>`;
}

const PENS: readonly Pen[] = ['hide', 'floor', 'edge'];

/** Strokes that help where leather and floor look alike. */
function penHelp(app: App, steps: PhotoSteps): TemplateResult {
  const { file } = steps.shots[steps.shown]!;
  const marks = steps.strokes.get(file) ?? NO_MARKS;
  const isHelpless = steps.problem?.code === 'no-hide-in-photo';
  const forget = (): void => {
    const strokes = new Map(steps.strokes);
    strokes.delete(file);
    changePhotoSteps(app, { strokes });
  };
  return html`<details class="hide-more" ?open=${isHelpless || steps.pen !== undefined}>
    <summary>${app.say('hide.helpEdge')}</summary>
    <p>${app.say('hide.helpEdgeHow')}</p>
    <div class="row">
      ${PENS.map(
        (pen) =>
          html`<button
            aria-pressed=${steps.pen === pen}
            @click=${() => changePhotoSteps(app, { pen: steps.pen === pen ? undefined : pen })}
          >
            ${app.say(`hide.pen.${pen}`)}
          </button>`,
      )}
      ${
        countMarks(marks) === 0
          ? nothing
          : html`<button class="quiet" @click=${forget}>${app.say('hide.forgetStrokes')}</button>`
      }
    </div>
  </details>`;
}
