import { listWords, sentenceFor, suitRemarkWords, thicknessWords } from '@hidebound/leather';
import type { Diagnostic, HideFit, Suit, SuitHide, SuitPiece, WantedLeather } from '@hidebound/leather';
import { column, section } from '../report/blocks.js';
import type { Report, ReportBlock, ReportColumn, ReportItem } from '../report/report.js';
import {
  cellWords,
  hideLines,
  originWords,
  pieceNamer,
  shortReason,
  wordList,
  workWords,
} from './suit-words.js';

export interface SuitReportOptions {
  /** "Bicycle goods, week 10, version 3, 2026-03-02". */
  readonly subtitle: string;
  /** Shown in a section of their own: on pages. A terminal shows them by itself. */
  readonly warnings: readonly Diagnostic[];
}

/** Which leather goes where, as a page to hang up. */
export function suitReport(suit: Suit, { subtitle, warnings }: SuitReportOptions): Report {
  return {
    title: 'Choosing leather',
    subtitle,
    blocks: [
      { kind: 'text', tone: 'answer', text: answerWords(suit) },
      ...hideBlocks(suit),
      ...warningBlocks(warnings),
      ...matrixBlocks(suit),
      ...workBlocks(suit),
      ...cautionBlocks(suit),
      ...remarkBlocks(suit),
      ...wantBlocks(suit),
    ],
  };
}

function answerWords(suit: Suit): string {
  const nameOf = pieceNamer(suit);
  const without = suit.pieces.filter(({ fits }) => fits.every(({ kind }) => kind === 'no'));
  if (without.length === 0) return 'Every piece finds a hide that fits.';
  const names = wordList(without.map(nameOf));
  return `${without.length} of ${suit.pieces.length} kinds of pieces ${without.length === 1 ? 'finds' : 'find'} no hide on hand: ${names}.`;
}

function plain(text: string): ReportBlock {
  return { kind: 'text', tone: 'plain', text };
}

function hideBlocks(suit: Suit): ReportBlock[] {
  const isOwn = ({ leathers }: SuitHide): boolean => leathers.length > 0;
  const told = suit.hides.filter((hide) => hideLines(suit, hide).length > 0);
  const shown = mostUseful(told, isOwn, suit.pieces);
  const more = told.length - shown.length;
  const useless = suit.hides.filter((hide) => !told.includes(hide)).map(({ id }) => id);
  return [
    section('Hides'),
    ...shown.flatMap((hide) => hideLines(suit, hide).map(plain)),
    ...(more === 0
      ? []
      : [plain(`${more} more ${more === 1 ? 'hide fits' : 'hides fit'} some of the pieces.`)]),
    ...(useless.length === 0 ? [] : [plain(`Nothing of this order fits on ${shortList(useless)}.`)]),
    withoutEmpty(
      [
        column('hide'),
        column('cut'),
        column('thickness', 'right'),
        column('leather'),
        column('colour'),
        column('lot'),
        column('for'),
        column('lies'),
      ],
      shown.map(hideRow),
    ),
  ];
}

/** A table without the columns of which nobody said anything. */
function withoutEmpty(columns: readonly ReportColumn[], rows: readonly (readonly string[])[]): ReportBlock {
  const isKept = (_: unknown, i: number): boolean => rows.length === 0 || rows.some((row) => row[i] !== '');
  return { kind: 'table', columns: columns.filter(isKept), rows: rows.map((row) => row.filter(isKept)) };
}

function hideRow(hide: SuitHide): string[] {
  const { thickness, readings, tannage, temper, finish } = hide;
  const qualities = [tannage, temper, finish].filter((each) => each !== undefined);
  const measured = thickness === undefined ? 'not known' : thicknessWords(thickness.minMm, thickness.maxMm);
  return [
    hide.id,
    hide.cut,
    thickness === undefined || readings > 0 ? measured : `${measured}, stated`,
    qualities.length === 0 ? 'not told' : qualities.join(', '),
    hide.colour ?? '',
    hide.lot ?? '',
    hide.leathers.join(', '),
    hide.storedAt ?? '',
  ];
}

/** So many hides stand side by side in one table, so that it keeps within the page. */
const HIDES_ABREAST = 4;

/** A table for each leather of the order: its pieces against its own hides, and against others where one fits. */
function matrixBlocks(suit: Suit): ReportBlock[] {
  const leathers = [...new Set(suit.pieces.map(({ leather }) => leather))];
  const room =
    'To fit is said of thickness, temper, tannage, finish and colour. How many find room, and where the leather is clean enough, the layout tells.';
  return [
    ...leathers.flatMap((leather) => leatherBlocks(suit, leather)),
    { kind: 'text', tone: 'soft', text: room },
  ];
}

function leatherBlocks(suit: Suit, leather: string): ReportBlock[] {
  const pieces = suit.pieces.filter((piece) => piece.leather === leather);
  const isShown = ({ id, leathers }: SuitHide): boolean =>
    leathers.includes(leather) || pieces.some((piece) => fitOn(piece, id).kind !== 'no');
  const all = suit.hides.filter(isShown);
  const shown = mostUseful(all, ({ leathers }) => leathers.includes(leather), pieces);
  const left = suit.hides.filter((hide) => !isShown(hide));
  const blocks: ReportBlock[] = [section(`Pieces of ${leather}`)];
  for (let from = 0; from < shown.length; from += HIDES_ABREAST) {
    blocks.push(fitTable(pieces, shown.slice(from, from + HIDES_ABREAST)));
  }
  if (shown.length < all.length) {
    const more = all.length - shown.length;
    blocks.push(plain(`${more} more ${more === 1 ? 'hide fits' : 'hides fit'} some of them.`));
  }
  if (shown.length === 0) blocks.push(plain('No hide on hand fits any of them.'));
  return left.length === 0
    ? blocks
    : [...blocks, { kind: 'text', tone: 'soft', text: leftWords(left, pieces) }];
}

/** So many hides of a large stock are shown beside the leather's own. */
const OTHERS_SHOWN = 8;

/** Own hides, then those of the others that most pieces fit on, as they are rather than with work. */
function mostUseful(
  hides: readonly SuitHide[],
  isOwn: (hide: SuitHide) => boolean,
  pieces: readonly SuitPiece[],
): SuitHide[] {
  const worth = ({ kind }: HideFit): number => (kind === 'no' ? 0 : kind === 'fits' ? 2 : 1);
  const count = ({ id }: SuitHide): number =>
    pieces.reduce((sum, piece) => sum + worth(fitOn(piece, id)) * piece.copies, 0);
  const own = hides.filter(isOwn);
  const others = hides.filter((hide) => !isOwn(hide)).sort((a, b) => count(b) - count(a));
  return [...own, ...others.slice(0, OTHERS_SHOWN)];
}

function fitTable(pieces: readonly SuitPiece[], hides: readonly SuitHide[]): ReportBlock {
  return {
    kind: 'table',
    columns: [
      column('piece'),
      column('article'),
      column('pieces', 'right'),
      ...hides.map(({ id }) => column(id)),
    ],
    rows: pieces.map((piece) => [
      piece.piece,
      piece.article,
      String(piece.copies),
      ...hides.map(({ id }) => cellWords(fitOn(piece, id))),
    ]),
  };
}

/** So many reasons of a hide that fits nothing are told. */
const REASONS_TOLD = 2;

function leftWords(hides: readonly SuitHide[], pieces: readonly SuitPiece[]): string {
  const words = hides.map(({ id }) => {
    const why = [...new Set(pieces.map((piece) => shortReason(fitOn(piece, id))))];
    return `${id} (${why.slice(0, REASONS_TOLD).join('; ')})`;
  });
  return `No piece of it fits on ${shortList(words)}.`;
}

function fitOn(piece: SuitPiece, hide: string): HideFit {
  return piece.fits.find((fit) => fit.hide === hide)!;
}

/** So many names are told of a large stock. */
const NAMES_TOLD = 12;

function shortList(names: readonly string[]): string {
  const more = names.length - NAMES_TOLD;
  if (more <= 0) return wordList(names);
  return `${names.slice(0, NAMES_TOLD).join(', ')} and ${more} more`;
}

/** Fits that count: on the hides of its own leather, where one of them fits; else on any. */
function usedFits({ fits, leather }: SuitPiece, hides: readonly SuitHide[]): HideFit[] {
  const good = fits.filter(({ kind }) => kind !== 'no');
  const own = good.filter(({ hide }) =>
    hides.some(({ id, leathers }) => id === hide && leathers.includes(leather)),
  );
  return own.length > 0 ? own : good;
}

function workBlocks(suit: Suit): ReportBlock[] {
  const nameOf = pieceNamer(suit);
  const items = suit.pieces.flatMap((piece): ReportItem[] => {
    const used = usedFits(piece, suit.hides);
    const groups = new Map<string, HideFit[]>();
    for (const fit of used) {
      const kinds = fit.work.map(({ kind }) => kind).join(', ');
      if (kinds !== '') groups.set(kinds, [...(groups.get(kinds) ?? []), fit]);
    }
    return [...groups.values()].map((fits) => {
      const steps = fits[0]!.work.map((_, i) => workWords(fits.map(({ work }) => work[i]!)));
      const hides = fits.map(({ hide }) => hide).join(' or ');
      return {
        text: `${nameOf(piece)}: ${steps.join('; then ')}`,
        detail: fits.length === used.length ? `of ${hides}` : `only of ${hides}`,
        aside: `${piece.copies} ${piece.copies === 1 ? 'piece' : 'pieces'}`,
      };
    });
  });
  if (items.length === 0) return [];
  return [section('What to do to the pieces'), { kind: 'checklist', items }];
}

/** Reasons and remarks on the hides of a piece's own leather, and on others where it fits; equal ones together. */
function remarkBlocks(suit: Suit): ReportBlock[] {
  const nameOf = pieceNamer(suit);
  const said = suit.pieces.flatMap((piece) =>
    toldFits(piece, suit).flatMap(({ hide, reasons, remarks }) =>
      [...reasons, ...remarks].map((remark) => ({
        hide,
        words: suitRemarkWords(remark),
        name: nameOf(piece),
      })),
    ),
  );
  if (said.length === 0) return [];
  const byPieces = grouped(said, ({ hide, words }) => JSON.stringify([hide, words])).map((same) => ({
    ...same[0]!,
    names: [...new Set(same.map(({ name }) => name))].join(', '),
  }));
  const byHides = grouped(byPieces, ({ words, names }) => JSON.stringify([words, names]));
  return [
    section('What else to know'),
    {
      kind: 'table',
      columns: [column('pieces'), column('hides'), column('what')],
      rows: byHides.map((same) => [same[0]!.names, same.map(({ hide }) => hide).join(', '), same[0]!.words]),
    },
  ];
}

function grouped<Item>(items: readonly Item[], keyOf: (item: Item) => string): Item[][] {
  const groups = new Map<string, Item[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return [...groups.values()];
}

function toldFits(piece: SuitPiece, { hides }: Suit): HideFit[] {
  const own = hides.filter(({ leathers }) => leathers.includes(piece.leather)).map(({ id }) => id);
  const isUsed = usedFits(piece, hides);
  return piece.fits.filter((fit) => own.includes(fit.hide) || isUsed.includes(fit));
}

function wantBlocks(suit: Suit): ReportBlock[] {
  return [
    section('What the pieces want'),
    {
      kind: 'table',
      columns: [
        column('piece'),
        column('article'),
        column('thickness', 'right'),
        column('said by'),
        column('leather'),
        column('asked of it'),
      ],
      rows: suit.pieces.map(({ piece, article, wanted, layers }) => [
        piece,
        article,
        `${wantedMm(wanted)}${layers > 1 ? ` × ${layers}` : ''}`,
        wanted.thickness === undefined ? '' : originWords(wanted.thickness.from),
        qualityWords(wanted),
        wanted.needs.join(', '),
      ]),
    },
  ];
}

function qualityWords({ tannages, tempers, finish }: WantedLeather): string {
  const either = (words: readonly string[] | undefined): string[] =>
    words === undefined ? [] : [listWords(words, 'or')];
  const all = [
    ...either(tannages?.value),
    ...either(tempers?.value),
    ...(finish === undefined ? [] : [finish.value]),
  ];
  return all.length === 0 ? 'any' : all.join('; ');
}

function wantedMm({ thickness }: WantedLeather): string {
  return thickness === undefined ? 'any' : thicknessWords(thickness.value.minMm, thickness.value.maxMm);
}

function warningBlocks(warnings: readonly Diagnostic[]): ReportBlock[] {
  if (warnings.length === 0) return [];
  return [section('Warnings'), ...warnings.map((warning) => plain(sentenceFor(warning)))];
}

function cautionBlocks(suit: Suit): ReportBlock[] {
  const isSkived = suit.pieces.some((piece) =>
    usedFits(piece, suit.hides).some(({ work }) => work.some(({ kind }) => kind !== 'layers')),
  );
  const isGlued = suit.pieces.some((piece) =>
    usedFits(piece, suit.hides).some(({ work }) => work.some(({ kind }) => kind === 'layers')),
  );
  const caution = (text: string): ReportBlock => ({ kind: 'text', tone: 'caution', text });
  return [
    ...(isSkived
      ? [
          caution(
            'Skiving: keep the blade sharp, cut away from the hand that holds the leather, and wear a cut-resistant glove on it. Leather dust of any tannage is harmful to breathe: where you sand or split by machine, use extraction and a fitted mask; guards stay on, and the machine is off before it is cleaned.',
          ),
        ]
      : []),
    ...(isGlued
      ? [
          caution(
            'Cements with solvents burn and their vapour harms: air the room, no flame or heater near, small open quantities. The product’s safety data sheet and local rules come first.',
          ),
        ]
      : []),
  ];
}
