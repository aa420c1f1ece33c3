import { PAPERS } from '@hidebound/leather';
import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import { filesOfKind, layoutAt } from '../../job/job.js';
import { pieceKey } from '../../work/make-tasks.js';
import type { SheetName, TemplateChoice } from '../../work/make-tasks.js';
import { checkField, lengthField, listField, oneOf, readField } from '../../fields/index.js';
import type { Reading } from '../../fields/index.js';
import { cutChoices } from './cut-choices.js';
import { preparingChoices } from './preparing-choices.js';
import { choose, makeTable } from './table.js';

/** The few choices of the sheet in hand. */
export function choicesOf(app: App, sheet: SheetName): TemplateResult {
  switch (sheet) {
    case 'cutting':
      return html`${pageChoice(app)} ${sideChoice(app)} ${photoChoice(app)}`;
    case 'settingOut':
      return html`${pageChoice(app)} ${sideChoice(app)}`;
    case 'templates':
      return templateChoices(app);
    case 'cutFiles':
      return html`${cutChoices(app)} ${sideChoice(app)}`;
    case 'preparing':
      return html`${pageChoice(app)} ${preparingChoices(app)}`;
    case 'reference':
      return referenceChoices(app);
    case 'quote':
      return html`${pageChoice(app)} ${customerChoice(app)}`;
    case 'suit':
    case 'buying':
    case 'list':
    case 'cost':
      return pageChoice(app);
  }
}

function pageChoice(app: App): TemplateResult {
  const names = ['A4', 'A3', 'Letter', 'Tabloid'] as const;
  return oneOf(
    'make-page',
    app.say('make.paper'),
    names.map((name) => [name, name] as const),
    makeTable(app).choices.page,
    (page) => choose(app, { page }),
  );
}

function sideChoice(app: App): TemplateResult {
  return oneOf(
    'make-side',
    app.say('make.side'),
    [
      ['grain', app.say('make.side.grain')],
      ['flesh', app.say('make.side.flesh')],
    ],
    makeTable(app).choices.side,
    (side) => choose(app, { side }),
  );
}

/** Only where a hide came from a photo. */
function photoChoice(app: App): TemplateResult | typeof nothing {
  if (!filesOfKind(app.job.get(), 'hide').some(([, { hide }]) => hide.photo !== undefined)) return nothing;
  return checkField(app.say('make.photo'), makeTable(app).choices.photo, (photo) => choose(app, { photo }));
}

function templateChoices(app: App): TemplateResult {
  const { template } = makeTable(app).choices;
  const change = (part: Partial<TemplateChoice>): void => choose(app, { template: { ...template, ...part } });
  const hides = layoutAt(app.job.get(), app.place.get().layout)?.hides ?? [];
  const papers = [
    ...PAPERS.map(({ name }) => [name, name] as const),
    ['roll', app.say('make.roll')] as const,
  ];
  return html`
    ${oneOf(
      'make-kind',
      app.say('make.template.of'),
      [
        ['pieces', app.say('make.template.pieces')],
        ['hide', app.say('make.template.hide')],
        ['rough cuts', app.say('make.template.roughCuts')],
      ],
      template.kind,
      (kind) => change({ kind }),
    )}
    ${template.kind === 'pieces' ? pieceChoice(app, template, change) : nothing}
    ${
      template.kind === 'hide'
        ? listField(
            'make-hide',
            app.say('make.template.whichHide'),
            hides.map(({ id }) => [id, id] as const),
            template.hide ?? hides[0]?.id ?? '',
            (hide) => change({ hide }),
          )
        : nothing
    }
    ${listField('make-paper', app.say('make.paper'), papers, template.paper, (paper) => change({ paper }))}
    ${
      template.paper === 'roll'
        ? lengthField(app, {
            id: 'make-roll',
            label: app.say('make.rollWidth'),
            value: template.rollMm,
            take: (rollMm) => change({ rollMm }),
          })
        : nothing
    }
    ${sideChoice(app)}
    ${lengthField(app, {
      id: 'make-overlap',
      label: app.say('make.overlap'),
      hint: app.say('make.overlap.hint'),
      value: template.overlapMm,
      least: 0,
      take: (overlapMm) => change({ overlapMm }),
    })}
    ${lengthField(app, {
      id: 'make-margin',
      label: app.say('make.margin'),
      hint: app.say('make.margin.hint', { least: app.measures().length(10) }),
      value: template.marginMm,
      least: 0,
      take: (marginMm) => change({ marginMm }),
    })}
  `;
}

function pieceChoice(
  app: App,
  { pieces }: TemplateChoice,
  change: (part: Partial<TemplateChoice>) => void,
): TemplateResult {
  const all = (layoutAt(app.job.get(), app.place.get().layout)?.pieces ?? []).map((piece) => ({
    key: pieceKey(piece),
    words: `${piece.piece} (${piece.article})`,
  }));
  const keys = all.map(({ key }) => key);
  const chosen = new Set(pieces ?? keys);
  const toggle = (key: string, isOn: boolean): void => {
    const next = keys.filter((each) => (each === key ? isOn : chosen.has(each)));
    change({ pieces: next });
  };
  return html`<details class="make-more">
    <summary>${app.say('make.template.which', { n: chosen.size, all: all.length })}</summary>
    ${all.map(({ key, words }) => checkField(words, chosen.has(key), (isOn) => toggle(key, isOn)))}
  </details>`;
}

function referenceChoices(app: App): TemplateResult {
  const { sheets, referencePaper } = makeTable(app).choices;
  const read = (text: string): Reading<string> =>
    /^\d+(\s*[-,]\s*\d+)*$/.test(text) ? { value: text } : { slip: app.say('make.sheets.wrong', { text }) };
  return html`
    ${oneOf(
      'make-reference-paper',
      app.say('make.paper'),
      [
        ['A4', 'A4'],
        ['Letter', 'Letter'],
      ],
      referencePaper,
      (paper) => choose(app, { referencePaper: paper }),
    )}
    ${readField(app, {
      id: 'make-sheets',
      label: app.say('make.sheets'),
      hint: app.say('make.sheets.hint'),
      shown: sheets,
      read,
      take: (next) => choose(app, { sheets: next }),
    })}
  `;
}

function customerChoice(app: App): TemplateResult | typeof nothing {
  const { shown, choices } = makeTable(app);
  const customers = shown?.made.customers ?? [];
  if (customers.length === 0) return nothing;
  return listField(
    'make-customer',
    app.say('make.customer'),
    [['', app.say('make.customer.all')], ...customers.map((name) => [name, name] as const)],
    choices.customer ?? '',
    (name) => {
      const { customer: _, ...rest } = makeTable(app).choices;
      makeTable(app).choices = rest;
      choose(app, name === '' ? {} : { customer: name });
    },
  );
}
