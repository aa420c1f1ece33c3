import type { Hide } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import type { WordKey } from '../../../../words/words.js';
import type { PhotoFinding } from '../../../../work/photo-tasks.js';
import { areasOf } from '../../marks/areas.js';
import type { Found } from '../bring-in.js';

/** Findings of a trace that have words of the screen's own; the others are told in the packages' words. */
const FINDINGS: Readonly<Record<string, WordKey>> = {
  'one-reference-only': 'hide.found.one-reference-only',
  'steep-view': 'hide.found.steep-view',
  'blurred-photo': 'hide.found.blurred-photo',
  'sheet-too-bright': 'hide.found.sheet-too-bright',
  'sheet-too-dim': 'hide.found.sheet-too-dim',
  'bars-not-measured': 'hide.found.bars-not-measured',
  'marker-left-out': 'hide.found.marker-left-out',
  'reference-does-not-fit': 'hide.found.reference-does-not-fit',
  'sheet-not-flat': 'hide.found.sheet-not-flat',
  'sheet-size-differs': 'hide.found.sheet-size-differs',
  'sheet-stretched': 'hide.found.sheet-stretched',
  'sheet-moved': 'hide.found.sheet-moved',
  'references-to-one-side': 'hide.found.references-to-one-side',
  'references-too-small': 'hide.found.references-too-small',
  'too-few-pixels': 'hide.found.too-few-pixels',
  'shine-on-hide': 'hide.found.shine-on-hide',
  'hide-leaves-picture': 'hide.found.hide-leaves-picture',
  'edge-points-astray': 'hide.found.edge-points-astray',
  'edge-unsure': 'hide.found.edge-unsure',
  'no-backbone-guessed': 'hide.found.no-backbone-guessed',
  'photo-of-moved-hide': 'hide.found.photo-of-moved-hide',
  'chalk-hardly-shows': 'hide.found.chalk-hardly-shows',
  'other-side-flaws': 'hide.found.other-side-flaws',
  'other-side-ambiguous': 'hide.found.other-side-ambiguous',
};

/** Told elsewhere on the card, where they can be answered: the area beside the invoice, guesses among the marks. */
const TOLD_ELSEWHERE = new Set(['area-differs', 'backbone-guessed', 'cut-guessed']);

/** Each once: what is true of the photos of both sides is found twice. */
export function findingsToTell({ findings }: Found): readonly PhotoFinding[] {
  const told = findings.filter(({ code }) => !TOLD_ELSEWHERE.has(code));
  return told.filter(({ sentence }, i) => told.findIndex((each) => each.sentence === sentence) === i);
}

export function findingWords(app: App, finding: PhotoFinding): string {
  const { code, params } = finding;
  const words = FINDINGS[code];
  if (words === undefined) return app.sentence(finding);
  const { name, count } = params;
  return app.say(words, {
    ...params,
    ...(count === undefined ? {} : { n: count }),
    ...(typeof name === 'string' ? { name: referenceName(app, name) } : {}),
  });
}

/** "sheet 3", "rectangle" as the packages call them. */
export function referenceName(app: App, name: string): string {
  const sheet = /^sheet (\d+)$/.exec(name);
  if (sheet !== null) return app.say('hide.reference.sheet', { number: sheet[1]! });
  switch (name) {
    case 'rectangle':
      return app.say('hide.reference.rectangle');
    case 'rules':
      return app.say('hide.reference.rules');
    case 'card':
      return app.say('hide.reference.card');
    case 'the printed sheets':
      return app.say('hide.reference.sheets');
    default:
      return name;
  }
}

/** "184.2 dm² ± 0.7 %". */
export function areaWords(app: App, hide: Hide): string {
  const words = app.measures().area(areasOf(hide).grossMm2);
  const error = hide.photo?.areaErrorShare;
  return error === undefined ? words : `${words} ± ${app.measures().percent(error)}`;
}

/** Damp and dry leather differ by 1 to 2 %; beyond 3 % one of two figures is wrong (common practice, no source). */
const AGREES_WITHIN = 0.03;

/** How the measured area stands to the invoiced one; undefined without an invoice. */
export function invoiceWords(app: App, hide: Hide): string | undefined {
  const { invoicedMm2 } = hide.area;
  if (invoicedMm2 === undefined || invoicedMm2 === 0) return undefined;
  const { grossMm2 } = areasOf(hide);
  const difference = grossMm2 / invoicedMm2 - 1;
  const params = {
    invoiced: app.measures().area(invoicedMm2),
    area: app.measures().area(Math.abs(grossMm2 - invoicedMm2)),
    percent: app.measures().percent(Math.abs(difference)),
  };
  if (Math.abs(difference) <= AGREES_WITHIN) return app.say('hide.invoiceAgrees', params);
  return app.say(difference < 0 ? 'hide.invoiceLess' : 'hide.invoiceMore', params);
}

/** Area, its error and how it stands to the invoice, in one line that stays in view. */
export function areaLine(app: App, hide: Hide): string {
  const { invoicedMm2 } = hide.area;
  const { grossMm2 } = areasOf(hide);
  if (invoicedMm2 === undefined || invoicedMm2 === 0) return areaWords(app, hide);
  const measures = app.measures();
  const difference = measures.percent(Math.abs(grossMm2 / invoicedMm2 - 1));
  const more = grossMm2 < invoicedMm2 ? 'hide.shortLess' : 'hide.shortMore';
  const words = difference === measures.percent(0) ? 'hide.shortSame' : more;
  return `${areaWords(app, hide)} · ${app.say(words, { percent: difference })}`;
}

/** "4 reference sheets and rectangle", as the hide file says it. */
export function scaledByWords(app: App, scaledBy: string): string {
  return scaledBy
    .split(' and ')
    .map((part) => {
      const sheets = /^(\d+) reference sheets?$/.exec(part);
      return sheets === null
        ? referenceName(app, part)
        : app.say('hide.reference.count', { n: Number(sheets[1]) });
    })
    .join(', ');
}
