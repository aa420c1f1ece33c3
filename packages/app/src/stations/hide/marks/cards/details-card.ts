import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import {
  DEFAULT_WORKSHOP,
  HIDE_CUTS,
  LeatherError,
  TEMPERS,
  formatMoney,
  parseMoney,
} from '@hidebound/leather';
import type { Hide, HideCut, HidePrice, LeatherQualities, Money } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import {
  listField,
  optionalAreaField,
  readField,
  textField,
  thicknessSpan,
} from '../../../../fields/index.js';
import type { Reading } from '../../../../fields/index.js';
import type { WordKey } from '../../../../words/words.js';
import { changeHide } from '../change-hide.js';
import { confirmed } from '../logic/along.js';
import { tannageWord } from '../tannage-word.js';

/** What is known of the hide beside what is drawn: folded, calm rows. */
export function detailsCard(app: App, hide: Hide): TemplateResult {
  const cuts = HIDE_CUTS.map((cut) => [cut, app.say(cutWord(cut))] as const);
  return html`<details class="more">
    <summary>${app.say('marks.details')}</summary>
    ${listField('hide-cut', app.say('marks.cut'), cuts, hide.cut, (cut) =>
      change(app, (now) => ({ ...confirmed(now, 'cut'), cut })),
    )}
    ${tannageField(app, hide)} ${temperField(app, hide)} ${qualityField(app, hide, 'finish')}
    ${qualityField(app, hide, 'colour')} ${rangeField(app, hide)} ${plainField(app, hide, 'lot')}
    ${priceFields(app, hide)} ${invoicedField(app, hide)} ${plainField(app, hide, 'storedAt')}
    ${stateField(app, hide)} ${plainField(app, hide, 'notes')}
  </details>`;
}

export function cutWord(cut: HideCut): WordKey {
  return `marks.cut.${cut}`;
}

function change(app: App, how: (hide: Hide) => Hide): void {
  changeHide(app, 'marks.undo.details', how);
}

/** The hide with a text set, or without one where it is empty. */
function withText<T extends object>(owner: T, key: keyof T & string, text: string): T {
  const { [key]: _, ...rest } = owner;
  return (text === '' ? rest : { ...rest, [key]: text }) as T;
}

function plainField(app: App, hide: Hide, key: 'lot' | 'storedAt' | 'notes'): TemplateResult {
  return textField(app, {
    id: `hide-${key}`,
    of: hide.id,
    label: app.say(`marks.${key}`),
    value: hide[key] ?? '',
    isOptional: true,
    take: (text) => change(app, (now) => withText(now, key, text)),
  });
}

function withQuality(hide: Hide, key: 'tannage' | 'temper' | 'finish' | 'colour', text: string): Hide {
  return { ...hide, leather: withText<LeatherQualities>(hide.leather, key, text) };
}

function qualityField(app: App, hide: Hide, key: 'finish' | 'colour'): TemplateResult {
  return textField(app, {
    id: `hide-${key}`,
    of: hide.id,
    label: app.say(`marks.${key}`),
    value: hide.leather[key] ?? '',
    isOptional: true,
    take: (text) => change(app, (now) => withQuality(now, key, text)),
  });
}

/** Words of the file that the app knows are shown in its own language; others stay as they were written. */
function wordField(
  app: App,
  hide: Hide,
  key: 'tannage' | 'temper',
  known: readonly (readonly [string, string])[],
): TemplateResult {
  const now = hide.leather[key] ?? '';
  const isKnown = now === '' || known.some(([value]) => value === now);
  const options = [
    ['', app.say('marks.notSaid')] as const,
    ...known,
    ...(isKnown ? [] : [[now, now] as const]),
  ];
  return listField(`hide-${key}`, app.say(`marks.${key}`), options, now, (text) =>
    change(app, (hide_) => withQuality(hide_, key, text)),
  );
}

function tannageField(app: App, hide: Hide): TemplateResult {
  const known = DEFAULT_WORKSHOP.tannages.map(({ tannage }) => [tannage, tannageWord(app, tannage)] as const);
  return wordField(app, hide, 'tannage', known);
}

function temperField(app: App, hide: Hide): TemplateResult {
  const known = TEMPERS.map((temper) => [temper, app.say(`marks.temper.${temper}`)] as const);
  return wordField(app, hide, 'temper', known);
}

function rangeField(app: App, hide: Hide): TemplateResult {
  const { thickness: range, ...rest } = hide.leather;
  return thicknessSpan(app, {
    id: 'hide-thickness',
    of: hide.id,
    range,
    take: (thickness) =>
      change(app, (now) => ({
        ...now,
        leather: thickness === undefined ? rest : { ...rest, thickness },
      })),
  });
}

function invoicedField(app: App, hide: Hide): TemplateResult {
  const { invoicedMm2, ...rest } = hide.area;
  return optionalAreaField(app, {
    id: 'hide-invoiced',
    of: hide.id,
    label: app.say('marks.area.invoiced'),
    value: invoicedMm2,
    take: (mm2) =>
      change(app, (now) => ({ ...now, area: mm2 === undefined ? rest : { ...rest, invoicedMm2: mm2 } })),
  });
}

const PER: readonly HidePrice['per'][] = ['hide', 'ft2', 'm2', 'dm2'];

function priceFields(app: App, hide: Hide): TemplateResult {
  const { price } = hide;
  return html`${readField(app, {
    id: 'hide-price',
    of: hide.id,
    label: app.say('marks.price'),
    shown: price === undefined ? '' : priceText(app, price),
    read: (text) => readPrice(app, text),
    take: (money) => change(app, (now) => withPrice(now, money)),
  })}
  ${listField(
    'hide-per',
    app.say('marks.per'),
    PER.map((per) => [per, app.say(`marks.per.${per}`)] as const),
    price?.per ?? 'hide',
    (per) => change(app, (now) => (now.price === undefined ? now : { ...now, price: { ...now.price, per } })),
  )}`;
}

/** With the locale's comma, where that can be read again: three decimals after one could be thousands. */
function priceText(app: App, price: Money): string {
  const text = formatMoney(price);
  const comma = app.measures().number(0.5, 1).includes(',') && !/\.\d{3}\b/.test(text);
  return comma ? text.replace('.', ',') : text;
}

function readPrice(app: App, text: string): Reading<Money | undefined> {
  try {
    return { value: text === '' ? undefined : parseMoney(text) };
  } catch (error) {
    if (!(error instanceof LeatherError)) throw error;
    return { slip: app.say('marks.wrongPrice', { text }) };
  }
}

function withPrice(hide: Hide, money: Money | undefined): Hide {
  const { price, ...rest } = hide;
  if (money === undefined) return rest;
  return { ...hide, price: { per: price?.per ?? 'hide', of: price?.of ?? 'invoiced', ...money } };
}

function stateField(app: App, hide: Hide): TemplateResult {
  const states: readonly (readonly [Hide['state'], string])[] = [
    ['on hand', app.say('marks.state.onHand')],
    ['reserved', app.say('marks.state.reserved')],
    ['cut', app.say('marks.state.cut')],
  ];
  return listField('hide-state', app.say('marks.state'), states, hide.state, (state) =>
    change(app, (now) => ({ ...now, state })),
  );
}
