import type { CuttingStep, Layout, UnplacedCopy } from '@hidebound/leather';
import { compareNumbers, copyKey, cuttingNumbers, pieceKey } from '../picture/placed-pieces.js';
import type { PlacedPiece } from '../picture/placed-pieces.js';
import type { FontBook } from '../text/font-book.js';
import { measureText, wrapText } from '../text/measure-text.js';
import type { PanelBlock, PanelRow, PanelStyle } from './panel.js';
import { lineRow, spaceRow, stackRows, tableRow } from './table-row.js';
import { MIRRORED_SIGN, UNPLACED_WORDS, stepWords } from './words.js';

/** Between a step's number and its words, as a share of the letters' size. */
const AFTER_NUMBER = 0.9;

/** Share of the column that a piece's name takes. */
const NAME_SHARE = 0.86;

/** Every piece on this hide, by kind, with the numbers of its copies: the key to the numbers on the picture. */
export function piecesBlock(placed: readonly PlacedPiece[], fonts: FontBook, style: PanelStyle): PanelBlock {
  const kinds = new Map<string, PlacedPiece[]>();
  for (const piece of placed) {
    const key = pieceKey(piece.placement);
    kinds.set(key, [...(kinds.get(key) ?? []), piece]);
  }
  const articles = new Set(placed.map((piece) => piece.placement.article));
  const rows = [...kinds.values()].flatMap((copies): PanelRow[] => {
    const { article, piece } = copies[0]!.placement;
    const name = articles.size > 1 ? `${piece} (${article})` : piece;
    const entries = copies.map(copyEntry).join(',  ');
    const count = `× ${copies.length}`;
    const short = oneLine(fonts, style, name, entries, count);
    if (short !== undefined) return [short, spaceRow(style, 0.35)];
    const names = wrapText(fonts, 'narrow bold', style.textMm, name, style.columnMm * NAME_SHARE);
    const head = names.map((text, i) =>
      tableRow(fonts, style, [
        { text, at: 0, room: NAME_SHARE, face: 'narrow bold' },
        { text: i === 0 ? count : '', at: 1, room: 0.14, align: 'right', face: 'narrow bold' },
      ]),
    );
    const [first, ...more] = wrapText(fonts, 'narrow', style.textMm, entries, style.columnMm).map((text) =>
      lineRow(fonts, style, text),
    );
    // A name is never parted from the first of its numbers.
    return [stackRows([...head, first!]), ...more, spaceRow(style, 0.35)];
  });
  return { title: 'Pieces: number (set/copy)', rows, keepRows: 2 };
}

/** Name and numbers on one line, where both are short. */
function oneLine(
  fonts: FontBook,
  style: PanelStyle,
  name: string,
  entries: string,
  count: string,
): PanelRow | undefined {
  const width = (face: 'narrow' | 'narrow bold', text: string): number =>
    measureText(fonts, face, style.textMm, text).widthMm;
  const at = (width('narrow bold', name) + style.textMm) / style.columnMm;
  const room = 1 - at - (width('narrow bold', count) + style.textMm) / style.columnMm;
  if (width('narrow', entries) > room * style.columnMm) return undefined;
  return tableRow(fonts, style, [
    { text: name, at: 0, room: at, face: 'narrow bold' },
    { text: entries, at, room },
    { text: count, at: 1, room: 0.14, align: 'right', face: 'narrow bold' },
  ]);
}

/** "12 (2/1 ◐)". Fixed spaces keep it on one line. */
function copyEntry(piece: PlacedPiece): string {
  const { set, copy, mirrored } = piece.placement;
  return `${piece.number}\u00a0(${set}/${copy}${mirrored ? `\u00a0${MIRRORED_SIGN}` : ''})`;
}

/** The order of cutting on this hide. */
export function cuttingOrderBlock(
  layout: Layout,
  hideId: string,
  fonts: FontBook,
  style: PanelStyle,
): PanelBlock {
  const numbers = cuttingNumbers(layout);
  const left = new Set(layout.placements.filter(({ state }) => state === 'planned').map(copyKey));
  const steps = layout.cuttingOrder
    .filter((step) => step.hide === hideId && isLeft(step, left))
    .sort((a, b) => a.number - b.number);
  const merged = mergeSteps(steps);
  const widths = merged.map((step) => measureText(fonts, 'narrow bold', style.textMm, step.label).widthMm);
  // The widest number with the room behind it; a column on the page is never narrower than the style's.
  const indent = (Math.max(0, ...widths) + AFTER_NUMBER * style.textMm) / style.columnMm;
  const rows = merged.flatMap((step): PanelRow[] => {
    const words = mergedWords(step, numbers);
    return wrapText(fonts, 'narrow', style.textMm, words, style.columnMm * (1 - indent)).map((text, i) =>
      tableRow(fonts, style, [
        { text: i === 0 ? step.label : '', at: 0, room: indent, face: 'narrow bold' },
        { text, at: indent, room: 1 - indent },
      ]),
    );
  });
  return { title: 'Order of cutting', rows, keepRows: 2 };
}

/** A step of which a piece is still to be cut. First cuts of lanes name no piece. */
function isLeft({ pieces }: CuttingStep, left: ReadonlySet<string>): boolean {
  return pieces.length === 0 || pieces.some((copy) => left.has(copyKey(copy)));
}

interface MergedStep {
  readonly label: string;
  readonly steps: readonly CuttingStep[];
}

/** Single pieces that follow each other are one line: "8–31 pieces from the edge inwards". */
function mergeSteps(steps: readonly CuttingStep[]): MergedStep[] {
  const merged: { label: string; steps: CuttingStep[] }[] = [];
  for (const step of steps) {
    const last = merged[merged.length - 1];
    const before = last?.steps[last.steps.length - 1];
    if (
      last !== undefined &&
      before?.kind === 'piece' &&
      step.kind === 'piece' &&
      step.number === before.number + 1
    ) {
      last.steps.push(step);
      last.label = `${last.steps[0]!.number}–${step.number}`;
    } else merged.push({ label: String(step.number), steps: [step] });
  }
  return merged;
}

function mergedWords(merged: MergedStep, numbers: ReadonlyMap<string, string>): string {
  const [first] = merged.steps;
  if (merged.steps.length > 1) return 'pieces, from the edge inwards';
  const step = first!;
  const copies = step.pieces
    .map((copy) => numbers.get(copyKey(copy)) ?? '')
    .filter((number) => number !== '');
  if (copies.length === 0) return stepWords(step);
  if (step.kind === 'piece' && copies.length === 1) return step.pieces[0]!.piece;
  const sorted = [...copies].sort(compareNumbers);
  const span = sorted.length === 1 ? sorted[0]! : `${sorted[0]}–${sorted[sorted.length - 1]}`;
  return `${stepWords(step)}: ${span}`;
}

/** What did not fit, by the reason why, copies of one piece together. */
export function unplacedBlock(layout: Layout, fonts: FontBook, style: PanelStyle): PanelBlock {
  const reasons = [...new Set(layout.unplaced.map((copy) => copy.reason))];
  const rows = reasons.flatMap((reason): PanelRow[] => {
    const copies = layout.unplaced.filter((copy) => copy.reason === reason);
    const head = wrapText(fonts, 'narrow bold', style.textMm, UNPLACED_WORDS[reason], style.columnMm).map(
      (text) => lineRow(fonts, style, text, { face: 'narrow bold' }),
    );
    const [first, ...more] = unplacedRows(copies, fonts, style);
    // A reason is never parted from the first of its pieces.
    return [stackRows([...head, first!]), ...more, spaceRow(style, 0.35)];
  });
  return { title: `Did not fit: ${layout.unplaced.length}`, rows, keepRows: 1 };
}

function unplacedRows(all: readonly UnplacedCopy[], fonts: FontBook, style: PanelStyle): PanelRow[] {
  const groups = new Map<string, UnplacedCopy[]>();
  for (const copy of all) groups.set(pieceKey(copy), [...(groups.get(pieceKey(copy)) ?? []), copy]);
  return [...groups.values()].map((copies): PanelRow => {
    const { article, piece } = copies[0]!;
    const sets = [...new Set(copies.map((copy) => copy.set))].sort((a, b) => a - b);
    const where = `${sets.length === 1 ? 'set' : 'sets'} ${spans(sets)}`;
    const words = `${copies.length}\u00a0× ${piece} (${article}), ${where.replaceAll(' ', '\u00a0')}`;
    const lines = wrapText(fonts, 'narrow', style.textMm, words, style.columnMm);
    return stackRows(lines.map((text) => lineRow(fonts, style, text)));
  });
}

/** "1–3, 5". */
function spans(numbers: readonly number[]): string {
  const parts: [number, number][] = [];
  for (const n of numbers) {
    const last = parts[parts.length - 1];
    if (last !== undefined && last[1] === n - 1) last[1] = n;
    else parts.push([n, n]);
  }
  return parts.map(([from, to]) => (from === to ? `${from}` : `${from}–${to}`)).join(', ');
}
