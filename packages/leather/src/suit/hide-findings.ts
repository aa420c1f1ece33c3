import { tannageRowOf } from '../goods/find-goods.js';
import { zoneOfCut } from '../hide/qualities.js';
import type { Diagnostic } from '../model/diagnostic.js';
import type { Hide } from '../model/hide.js';
import type { OrderLeather } from '../model/order.js';
import { listWords } from '../words/sentence.js';
import type { FindingsInput, Suited } from './findings-input.js';
import { isUnfinished } from './finish-words.js';
import { warning } from './suit-warning.js';

/** On hides: what nobody has measured, words of the trade that promise nothing, lots, dye over a finish. */
export function hideFindings(input: FindingsInput, suited: Suited): Diagnostic[] {
  return [
    ...input.hides.flatMap(({ hide }) => wordsOnHide(hide, input)),
    ...unmeasured(suited),
    ...zonesNotDrawn(input, suited),
    ...input.order.leathers.flatMap((leather) => [
      ...lotsDiffer(leather, input),
      ...dyeOverFinish(leather, input),
    ]),
  ];
}

/** The row of the table that stands for leather of glued fibres. */
const BONDED = 'bonded';

function wordsOnHide({ id, leather }: Hide, { workshop }: FindingsInput): Diagnostic[] {
  const words = [leather.tannage, leather.finish].filter((each) => each !== undefined);
  const isBonded = words.some(
    (word) => tannageRowOf(word, workshop)?.tannage === BONDED || /\b(bonded|reconstituted)\b/i.test(word),
  );
  const isGenuine = words.some((word) => /\bgenuine\b/i.test(word));
  return [
    ...(isBonded ? [warning('suit-bonded', { hide: id })] : []),
    ...(isGenuine ? [warning('suit-genuine', { hide: id })] : []),
  ];
}

function unmeasured({ hides, pieces }: Suited): Diagnostic[] {
  return hides
    .filter(({ thickness }) => thickness === undefined)
    .filter(({ id }) =>
      pieces.some(({ fits }) => fits.some((fit) => fit.hide === id && fit.kind === 'measure')),
    )
    .map(({ id }) => warning('suit-thickness-not-known', { hide: id }));
}

function zonesNotDrawn({ order, hides }: FindingsInput, { pieces }: Suited): Diagnostic[] {
  return hides.flatMap(({ file, hide }) => {
    if (hide.zones.length > 0 || zoneOfCut(hide) !== undefined || hide.cut === 'panel') return [];
    const leathers = order.leathers.filter((leather) => leather.hides.includes(file));
    const straps = pieces.filter(
      ({ leather, wanted, fits }) =>
        leathers.some(({ name }) => name === leather) &&
        wanted.needs.includes('keeping its length') &&
        fits.some((fit) => fit.hide === hide.id && fit.kind !== 'no'),
    );
    if (straps.length === 0) return [];
    const names = listWords(
      straps.map(({ piece }) => `"${piece}"`),
      'and',
    );
    return [warning('suit-zones-not-drawn', { hide: hide.id, pieces: names })];
  });
}

function hidesOf({ hides: files }: OrderLeather, { hides }: FindingsInput): Hide[] {
  return hides.filter(({ file }) => files.includes(file)).map(({ hide }) => hide);
}

function lotsDiffer(leather: OrderLeather, input: FindingsInput): Diagnostic[] {
  const lots = hidesOf(leather, input)
    .filter(({ state }) => state !== 'cut')
    .map(({ id, lot }) => lot ?? `${id}, a lot of its own`);
  const different = [...new Set(lots)];
  const articles = input.order.articles.filter(({ pieces }) =>
    pieces.some((piece) => piece.leather === leather.name),
  );
  if (different.length < 2 || articles.length === 0) return [];
  return [
    warning('suit-lots-differ', {
      leather: leather.name,
      lots: different.join('; '),
      articles: listWords(
        articles.map(({ name }) => name),
        'and',
      ),
    }),
  ];
}

function dyeOverFinish(leather: OrderLeather, input: FindingsInput): Diagnostic[] {
  const { preparation } = leather;
  // A pigment lies on top: it is meant to cover a finish.
  if (preparation?.dye === undefined || preparation.dyeBase === 'pigment') return [];
  return hidesOf(leather, input).flatMap((hide) => {
    const { finish } = hide.leather;
    if (finish === undefined || isUnfinished(finish)) return [];
    return [
      warning('suit-dye-over-finish', {
        leather: leather.name,
        hide: hide.id,
        finish,
        dye: preparation.dye!,
      }),
    ];
  });
}
