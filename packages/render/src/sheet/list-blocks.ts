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
    const names = wrapText(fonts, 'narrow bold', style.textMm, name, style.columnMm * NAME_SHARE);
    const head = names.map((text, i) =>
      tableRow(fonts, style, [
        { text, at: 0, room: NAME_SHARE, face: 'narrow bold' },
        { text: i === 0 ? `× ${copies.length}` : '', at: 1, room: 0.14, align: 'right', face: 'narrow bold' },
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
  const steps = layout.cuttingOrder
    .filter((step) => step.hide === hideId)
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

/** What did not fit, and why, copies of one piece and reason together. */
export function unplacedBlock(layout: Layout, fonts: FontBook, style: PanelStyle): PanelBlock {
  const groups = new Map<string, UnplacedCopy[]>();
  for (const copy of layout.unplaced) {
    const key = JSON.stringify([copy.article, copy.piece, copy.reason]);
    groups.set(key, [...(groups.get(key) ?? []), copy]);
  }
  const rows = [...groups.values()].flatMap((copies): PanelRow[] => {
    const { article, piece, reason } = copies[0]!;
    const sets = [...new Set(copies.map((copy) => copy.set))].sort((a, b) => a - b);
    const where = `${sets.length === 1 ? 'set' : 'sets'} ${spans(sets)}`;
    const words = `${copies.length} × ${piece} (${article}), ${where}: ${UNPLACED_WORDS[reason]}`;
    const lines = wrapText(fonts, 'narrow', style.textMm, words, style.columnMm);
    return [stackRows(lines.map((text) => lineRow(fonts, style, text)))];
  });
  return { title: `Did not fit: ${layout.unplaced.length}`, rows, keepRows: 1 };
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
