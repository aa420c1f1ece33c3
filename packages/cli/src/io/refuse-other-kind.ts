import { CliError } from '../cli-error.js';

/** The kinds of files that commands read. */
export type FileKind =
  | 'pattern'
  | 'hide'
  | 'order'
  | 'article'
  | 'workshop'
  | 'layout'
  | 'reference-sheets'
  | 'photo-hints'
  | 'stock-journal';

const WANTED: Readonly<Record<FileKind, string>> = {
  pattern: 'a drawing (SVG, PDF or DXF)',
  hide: 'a hide file (.hide.json)',
  order: 'an order (.order.yaml)',
  article: 'an article file (.article.yaml)',
  workshop: 'a workshop file (workshop.yaml)',
  layout: 'a layout (.layout.json)',
  'reference-sheets': 'a file of measured sheets (reference-sheets.json)',
  'photo-hints': 'a file of hints on photos (.hints.yaml)',
  'stock-journal': 'the journal of a stock (stock.journal.json)',
};

/** What another kind of file is, and what is to be done with it. */
const FOUND: Readonly<Record<string, string>> = {
  hide: 'a hide file; "hidebound hide" shows it, and orders name it',
  order: 'an order; "hidebound lay" lays it',
  article: 'an article file; orders name it',
  workshop: 'a workshop file; give it with --workshop',
  layout: 'a layout; "hidebound check" and "hidebound sheet" read it',
  'reference-sheets': 'a file of measured sheets; "hidebound markers --measured" writes it',
  'photo-hints': 'a file of hints on photos; give it to "hidebound trace" with --hints',
  'stock-journal': 'the journal of a stock; give its folder to "hidebound offcuts"',
  drawing:
    'a drawing (SVG); "hidebound pieces" reads it, or "hidebound hide FILE --out" if it is a traced hide',
  PDF: 'a pattern (PDF); "hidebound pieces" reads it, and orders name it',
  DXF: 'a pattern (DXF); "hidebound pieces" reads it, and orders name it',
};

/** Kinds that pattern files are of. */
const PATTERN_KINDS = new Set(['drawing', 'PDF', 'DXF']);

/** Enough to find the format line of a file, or the start of a drawing. */
const HEAD_CHARACTERS = 4096;

/**
 * Refuses a file that tells by its first lines that it is of another kind, before it is read as what it is not. What
 * tells nothing is let through, for its reader to judge.
 */
export function refuseOtherKind(text: string, wanted: FileKind, file: string): void {
  const found = kindOf(text.slice(0, HEAD_CHARACTERS));
  const words = found === undefined ? undefined : FOUND[found];
  if (words === undefined || found === wanted) return;
  if (wanted === 'pattern' && PATTERN_KINDS.has(found!)) return;
  throw new CliError('unknown-kind', `Here ${WANTED[wanted]} is wanted, but this is ${words}.`, { file });
}

/** What a file tells by its first lines that it is: "layout", "order", "drawing"; nothing where it tells nothing. */
export function kindOf(head: string): string | undefined {
  const format = /^[\s{\uFEFF]*(?:#[^\n]*\n\s*)*"?format"?\s*:\s*"?hidebound\/([a-z-]+)@/.exec(head);
  if (format !== null) return format[1];
  if (/^[^\n]{0,20}%PDF-/.test(head)) return 'PDF';
  if (/^\s*0[ \t]*[\r\n]+[ \t]*SECTION[ \t]*[\r\n]/.test(head)) return 'DXF';
  return /^[\s\uFEFF]*<(?:\?xml|!DOCTYPE svg|!--|svg)/i.test(head) ? 'drawing' : undefined;
}
