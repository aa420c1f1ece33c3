// The numbers on a page, each with the unit that it is printed in and the row that it stands in.
import { rowsOfLines } from './page-rows.mjs';
import { PRINTED_UNITS } from './units.mjs';

const NUMBER = /(?<![\p{L}\d.]|of (?=100(?!\d)))(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?(?!\d)/gu;
const DATE = /\d{4}-\d{2}-\d{2}/g;
const DURATION = /(?<!\d)\d+\s?h\s\d+\s?min/g;
const CLOCK = /(?<!\d)\d{1,2}:\d{2}(?!\d)/g;
/** What stands between a number and the unit that it shares with the next: "1.2–2.4 mm", "80 × 200 mm". */
const RANGE = /^\s*(?:–|-|×|x|to|or|and|\+)\s*[\d,]+(?:\.\d+)?/;
/** A range of two and a number of three dimensions share a unit; more do not come. */
const MOST_SHARING = 3;

/**
 * The numbers of a page's lines: `{ shape, text, decimals, unit, row, cell, page }`, the unit being what follows, or what
 * the head of its column or of one further left says. `known` are texts of the result: a number within one of them is that
 * text. `names` are marked in the rows.
 */
export function printedNumbers(lines, known, names) {
  const echoes = echoPattern(known);
  const rows = rowsOfLines(lines, names);
  return rows.flatMap((row, index) => {
    let unit;
    return row.cells
      .toSorted((a, b) => a.left - b.left)
      .flatMap((cell) => {
        unit = unitOfHead(rows, index, cell) ?? (hasWords(cell.text) ? undefined : unit);
        return numbersOfCell(cell, echoes, unit).map((each) => ({
          ...each,
          row,
          isAlone: row.namesNothing && !/\p{L}/u.test(cell.text),
        }));
      });
  });
}

function numbersOfCell(cell, echoes, unitAbove) {
  const found = [];
  const take = (pattern, shape) => {
    for (const match of cell.text.matchAll(pattern)) {
      const [start, end] = [match.index, match.index + match[0].length];
      if (!found.some((other) => start < other.end && end > other.start)) {
        found.push({ shape, text: match[0], start, end });
      }
    }
  };
  if (echoes !== undefined) take(echoes, 'echo');
  take(DATE, 'date');
  take(DURATION, 'duration');
  take(CLOCK, 'clock');
  take(NUMBER, 'number');
  const isNumber = ({ text }) => /\d/.test(text);
  return found.filter(isNumber).map((each) => {
    if (each.shape === 'duration') return { ...durationOf(each.text), cell: cell.text };
    const { shape, text, end } = each;
    const unit = shape === 'number' ? (unitAfter(cell.text.slice(end)) ?? unitAbove) : undefined;
    const digits = shape === 'number' ? text.replaceAll(',', '') : text;
    return { shape, text: digits, decimals: (digits.split('.')[1] ?? '').length, unit, cell: cell.text };
  });
}

/** "25 h 30 min" as minutes. */
function durationOf(text) {
  const [hours, rest] = text.match(/\d+/g).map(Number);
  return { shape: 'number', text: String(60 * hours + rest), decimals: 0, unit: 'min' };
}

function unitAfter(text) {
  let rest = text;
  for (let i = 0; i < MOST_SHARING; i += 1) {
    if (/^ of 100(?!\d)/.test(rest)) return 'of 100';
    const word = /^[\s ]?([\p{L}%°²/]+)/u.exec(rest)?.[1];
    if (word !== undefined && PRINTED_UNITS.has(word)) return word;
    const range = RANGE.exec(rest);
    if (range === null) return undefined;
    rest = rest.slice(range[0].length);
  }
  return undefined;
}

/** Words besides the one of a range. */
function hasWords(text) {
  return /\p{L}/u.test(text.replaceAll(' to ', ' '));
}

/** The nearest unit above, over the same column, in a cell without numbers of its own: "area, dm²". */
function unitOfHead(rows, index, { left, right, text }) {
  if (hasWords(text)) return undefined;
  const { page } = rows[index];
  for (let i = index - 1; i >= 0 && rows[i].page === page; i -= 1) {
    const over = rows[i].cells.filter((cell) => cell.right > left - 2 && cell.left < right + 2);
    if (over.length > 0 && !rows[i].cells.some((cell) => isFigure(cell.text))) {
      const words = over.flatMap((cell) => cell.text.split(/[\s(),]+/));
      return words.findLast((word) => PRINTED_UNITS.has(word) && word !== 'in');
    }
  }
  return undefined;
}

/** A number or a range, with a unit or without; other words make it a head or a sentence. */
function isFigure(text) {
  const words = text.replace(/[\d.,–]+/g, ' ').trim();
  return /^\d/.test(text) && (words === '' || PRINTED_UNITS.has(words));
}

function echoPattern(known) {
  const withDigits = known.filter((text) => /\d/.test(text));
  if (withDigits.length === 0) return undefined;
  const longestFirst = [...new Set(withDigits)].sort((a, b) => b.length - a.length);
  const escaped = longestFirst.map((word) => word.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&'));
  return new RegExp(`(?<![\\p{L}\\d.])(?:${escaped.join('|')})(?![\\p{L}\\d])`, 'gu');
}
