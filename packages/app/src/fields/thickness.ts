import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { mmToOunces, parseThickness } from '@hidebound/leather';
import type { ThicknessRange } from '@hidebound/leather';
import type { App } from '../app/app.js';
import { readField } from './text-field.js';
import type { FieldLook } from './text-field.js';
import { typedInputs } from './typed-inputs.js';

/** A bare number is in the unit that the app shows thickness in; "4-5 oz" and the like say their own. */
export function readThickness(app: App, text: string): ThicknessRange | undefined {
  const bare = app.measures().readNumber(text);
  try {
    const { minMm, maxMm } = parseThickness(
      bare === undefined ? text.replaceAll(',', '.') : `${bare} ${unitOf(app)}`,
    );
    return { minMm: thousandth(minMm), maxMm: thousandth(maxMm) };
  } catch {
    return undefined;
  }
}

export interface ThicknessField extends Omit<FieldLook, 'unit' | 'keys'> {
  readonly mm: number | undefined;
  /** Undefined where it was emptied. */
  readonly take: (mm: number | undefined) => void;
}

/** One thickness, in mm or ounces. A range that is written stands for its middle. */
export function thicknessField(app: App, { mm, take, ...look }: ThicknessField): TemplateResult {
  return readField<number | undefined>(app, {
    ...look,
    unit: unitOf(app),
    keys: 'decimal',
    shown: shownIn(app, mm),
    read: (text) => {
      if (text === '') return { value: undefined };
      const read = readThickness(app, text);
      if (read === undefined) return { slip: app.say('field.noThickness', { text }) };
      return { value: thousandth((read.minMm + read.maxMm) / 2) };
    },
    take,
  });
}

export interface ThicknessSpan {
  readonly id: string;
  readonly of?: string | undefined;
  readonly range: ThicknessRange | undefined;
  /** Undefined where both were emptied. */
  readonly take: (range: ThicknessRange | undefined) => void;
}

/** From and to, in mm or ounces; where one is empty, both are what the other says. */
export function thicknessSpan(app: App, { id, of, range, take }: ThicknessSpan): TemplateResult {
  const { inputs, slip } = typedInputs<ThicknessRange | undefined>(app, {
    places: [
      {
        id: `${id}-min`,
        shown: shownIn(app, range?.minMm),
        name: app.say('field.thicknessFrom'),
        keys: 'decimal',
      },
      {
        id: `${id}-max`,
        shown: shownIn(app, range?.maxMm),
        name: app.say('field.thicknessTo'),
        keys: 'decimal',
      },
    ],
    of,
    read: (texts) => {
      const written = texts.filter((text) => text !== '');
      if (written.length === 0) return { value: undefined };
      const read = written.map((text) => readThickness(app, text));
      const wrong = written.find((_, i) => read[i] === undefined);
      if (wrong !== undefined) return { slip: app.say('field.noThickness', { text: wrong }) };
      const { minMm } = read[0]!;
      const { maxMm } = read.at(-1)!;
      return minMm > maxMm ? { slip: app.say('field.thicknessTurned') } : { value: { minMm, maxMm } };
    },
    take,
  });
  return html`<div class="field" role="group" aria-label=${app.say('field.thickness')}>
    <label for="${id}-min">${app.say('field.thickness')}</label>
    <span class="with-unit">${inputs[0]}<span>–</span>${inputs[1]}<span>${unitOf(app)}</span></span>
    ${slip}
  </div>`;
}

function unitOf(app: App): 'oz' | 'mm' {
  return app.measures().lengthUnit === 'in' ? 'oz' : 'mm';
}

function shownIn(app: App, mm: number | undefined): string {
  if (mm === undefined) return '';
  return app.measures().number(unitOf(app) === 'oz' ? mmToOunces(mm) : mm, 2);
}

function thousandth(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}
