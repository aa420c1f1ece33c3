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
import type { Hide, HideCut, HidePrice, LeatherQualities } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import type { WordKey } from '../../../../words/words.js';
import { changeHide } from '../change-hide.js';
import { confirmed } from '../logic/along.js';
import { selectField, textField } from './fields.js';
import { readThickness } from './tool-cards.js';

/** What is known of the hide beside what is drawn: folded, calm rows. */
export function detailsCard(app: App, hide: Hide): TemplateResult {
  const cuts = HIDE_CUTS.map((cut) => [cut, app.say(cutWord(cut))] as const);
  return html`<details class="more">
    <summary>${app.say('marks.details')}</summary>
    ${selectField('hide-cut', app.say('marks.cut'), cuts, hide.cut, (cut) =>
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
  const value = hide[key] ?? '';
  return textField(app, {
    id: `hide-${key}`,
    label: app.say(`marks.${key}`),
    value,
    commit: (text) => {
      if (text !== value) change(app, (now) => withText(now, key, text));
      return undefined;
    },
  });
}

function withQuality(hide: Hide, key: 'tannage' | 'temper' | 'finish' | 'colour', text: string): Hide {
  return { ...hide, leather: withText<LeatherQualities>(hide.leather, key, text) };
}

function qualityField(app: App, hide: Hide, key: 'finish' | 'colour'): TemplateResult {
  const value = hide.leather[key] ?? '';
  return textField(app, {
    id: `hide-${key}`,
    label: app.say(`marks.${key}`),
    value,
    commit: (text) => {
      if (text !== value) change(app, (now) => withQuality(now, key, text));
      return undefined;
    },
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
  return selectField(`hide-${key}`, app.say(`marks.${key}`), options, now, (text) =>
    change(app, (hide_) => withQuality(hide_, key, text)),
  );
}

const TANNAGE_WORDS: Readonly<Record<string, WordKey>> = {
  vegetable: 'marks.tannage.vegetable',
  chrome: 'marks.tannage.chrome',
  oil: 'marks.tannage.oil',
  combination: 'marks.tannage.combination',
  alum: 'marks.tannage.alum',
  brain: 'marks.tannage.brain',
  aldehyde: 'marks.tannage.aldehyde',
  rawhide: 'marks.tannage.rawhide',
  bonded: 'marks.tannage.bonded',
};

function tannageField(app: App, hide: Hide): TemplateResult {
  const known = DEFAULT_WORKSHOP.tannages.map(({ tannage }) => {
    const word = TANNAGE_WORDS[tannage];
    return [tannage, word === undefined ? tannage : app.say(word)] as const;
  });
  return wordField(app, hide, 'tannage', known);
}

function temperField(app: App, hide: Hide): TemplateResult {
  const known = TEMPERS.map((temper) => [temper, app.say(`marks.temper.${temper}`)] as const);
  return wordField(app, hide, 'temper', known);
}

function rangeField(app: App, hide: Hide): TemplateResult {
  const { thickness } = hide.leather;
  const value = thickness === undefined ? '' : app.measures().thicknessRange(thickness);
  return textField(app, {
    id: 'hide-thickness',
    label: app.say('marks.thickness'),
    value,
    commit: (text) => {
      if (text === value) return undefined;
      const read = text === '' ? undefined : readThickness(app, text);
      if (text !== '' && read === undefined) return app.say('marks.wrongThickness', { text });
      const { thickness: _, ...rest } = hide.leather;
      change(app, (now) => ({
        ...now,
        leather: read === undefined ? rest : { ...rest, thickness: read },
      }));
      return undefined;
    },
  });
}

function invoicedField(app: App, hide: Hide): TemplateResult {
  const measures = app.measures();
  const { invoicedMm2 } = hide.area;
  const value = invoicedMm2 === undefined ? '' : measures.areaField(invoicedMm2);
  return textField(app, {
    id: 'hide-invoiced',
    label: app.say('marks.area.invoiced'),
    value,
    unit: app.prefs.get().areas === 'ft2' ? 'ft²' : 'dm²',
    isNumber: true,
    commit: (text) => {
      if (text === value) return undefined;
      const read = text === '' ? undefined : measures.readAreaMm2(text);
      if (text !== '' && (read === undefined || !(read > 0))) return app.say('marks.wrongArea', { text });
      const { invoicedMm2: _, ...rest } = hide.area;
      change(app, (now) => ({ ...now, area: read === undefined ? rest : { ...rest, invoicedMm2: read } }));
      return undefined;
    },
  });
}

const PER: readonly HidePrice['per'][] = ['hide', 'ft2', 'm2', 'dm2'];

function priceFields(app: App, hide: Hide): TemplateResult {
  const { price } = hide;
  const value = price === undefined ? '' : formatMoney(price);
  return html`${textField(app, {
    id: 'hide-price',
    label: app.say('marks.price'),
    value,
    commit: (text) => (text === value ? undefined : commitPrice(app, text)),
  })}
  ${selectField(
    'hide-per',
    app.say('marks.per'),
    PER.map((per) => [per, app.say(`marks.per.${per}`)] as const),
    price?.per ?? 'hide',
    (per) => change(app, (now) => (now.price === undefined ? now : { ...now, price: { ...now.price, per } })),
  )}`;
}

function commitPrice(app: App, text: string): string | undefined {
  try {
    const money = text === '' ? undefined : parseMoney(text);
    change(app, (now) => {
      const { price, ...rest } = now;
      if (money === undefined) return rest;
      return { ...now, price: { per: price?.per ?? 'hide', of: price?.of ?? 'invoiced', ...money } };
    });
    return undefined;
  } catch (error) {
    if (!(error instanceof LeatherError)) throw error;
    return app.say('marks.wrongPrice', { text });
  }
}

function stateField(app: App, hide: Hide): TemplateResult {
  const states: readonly (readonly [Hide['state'], string])[] = [
    ['on hand', app.say('marks.state.onHand')],
    ['reserved', app.say('marks.state.reserved')],
    ['cut', app.say('marks.state.cut')],
  ];
  return selectField('hide-state', app.say('marks.state'), states, hide.state, (state) =>
    change(app, (now) => ({ ...now, state })),
  );
}
