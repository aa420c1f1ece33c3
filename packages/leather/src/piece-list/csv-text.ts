/** What may stand in a cell of a table. Numbers are written as they are: a minus before one is no formula. */
export type CsvValue = string | number | boolean | undefined;

/** Tells a spreadsheet that the file is UTF-8; without it umlauts and Greek come out as rubbish in some. */
const BYTE_ORDER_MARK = '\ufeff';

/**
 * A table as CSV by RFC 4180: commas, lines that end in CR LF, quotes around cells that need them and doubled within. In
 * UTF-8 with a byte order mark. A text that a spreadsheet would take for a formula gets an apostrophe before it.
 */
export function csvText(head: readonly string[], rows: readonly (readonly CsvValue[])[]): string {
  const lines = [head, ...rows].map((cells) => cells.map(csvCell).join(','));
  return `${BYTE_ORDER_MARK}${lines.map((line) => `${line}\r\n`).join('')}`;
}

function csvCell(value: CsvValue): string {
  if (value === undefined) return '';
  const text = typeof value === 'string' ? harmless(value) : String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * What a cell must not begin with, blanks before it not counted (OWASP, "CSV Injection": equals, plus, minus, at, tab,
 * carriage return, line feed; and the full-width signs, which some spreadsheets take for the plain ones).
 */
const FORMULA_START = /^\s*[=+\-@＝＋－＠]|^[\t\r\n]/;

function harmless(text: string): string {
  return FORMULA_START.test(text) ? `'${text}` : text;
}
