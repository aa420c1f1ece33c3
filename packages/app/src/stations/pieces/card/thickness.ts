import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { mmToOunces, ouncesToMm } from '@hidebound/leather';
import type { ThicknessRange } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { thousandth } from '../order/patch.js';
import { showError } from './fields.js';

const THICKEST_MM = 50;

/** From and to, in mm or ounces; both emptied, there is none. */
export function thicknessFields(
  app: App,
  id: string,
  range: ThicknessRange | undefined,
  set: (range: ThicknessRange | undefined) => void,
): TemplateResult {
  const measures = app.measures();
  const isOunces = measures.lengthUnit === 'in';
  const shown = (mm: number | undefined): string =>
    mm === undefined ? '' : measures.number(isOunces ? mmToOunces(mm) : mm, 2);
  const read = (field: HTMLInputElement): number | undefined => {
    const value = measures.readNumber(field.value);
    return value === undefined ? undefined : thousandth(isOunces ? ouncesToMm(value) : value);
  };
  const change = (): void => {
    const [least, most] = ['min', 'max'].map(
      (end) => document.getElementById(`${id}-${end}`) as HTMLInputElement,
    ) as [HTMLInputElement, HTMLInputElement];
    const isEmpty = least.value.trim() === '' && most.value.trim() === '';
    const [minMm, maxMm] = [read(least) ?? read(most), read(most) ?? read(least)];
    const isFine =
      isEmpty ||
      (minMm !== undefined && maxMm !== undefined && minMm > 0 && minMm <= maxMm && maxMm <= THICKEST_MM);
    showError(least, isFine ? '' : app.say('pieces.noThickness'));
    if (isFine) set(isEmpty ? undefined : { minMm: minMm!, maxMm: maxMm! });
  };
  const field = (end: 'min' | 'max', mm: number | undefined): TemplateResult =>
    html`<input
      id="${id}-${end}"
      type="text"
      inputmode="decimal"
      aria-label=${app.say(end === 'min' ? 'pieces.thicknessFrom' : 'pieces.thicknessTo')}
      aria-describedby="${id}-min-error"
      .value=${shown(mm)}
      @change=${change}
    />`;
  return html`<div class="field" role="group" aria-label=${app.say('pieces.thickness')}>
    <label for="${id}-min">${app.say('pieces.thickness')}</label>
    <span class="with-unit short"
      >${field('min', range?.minMm)}<span>–</span>${field('max', range?.maxMm)}<span class="soft"
        >${isOunces ? 'oz' : 'mm'}</span
      ></span
    >
    <span class="field-error" id="${id}-min-error"></span>
  </div>`;
}
