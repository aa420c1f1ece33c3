import type { Report, ReportBar, ReportBlock, ReportItem } from '@hidebound/render';
import { textTable } from './text-table.js';

/** Texts are broken to lines of so many letters. */
const LINE_LETTERS = 100;

/** A report as lines of text; pictures are left out. */
export function reportLines({ title, subtitle, blocks }: Report): string[] {
  return [`${title}: ${subtitle}`, ...blocks.flatMap(blockLines)];
}

function blockLines(block: ReportBlock): string[] {
  switch (block.kind) {
    case 'section':
      return ['', block.title, '='.repeat([...block.title].length)];
    case 'text':
      return ['', ...wrapWords(block.tone === 'caution' ? `Caution: ${block.text}` : block.text)];
    case 'facts': {
      const width = Math.max(...block.rows.map(({ name }) => [...name].length));
      return ['', ...block.rows.map(({ name, value }) => `${name.padEnd(width)}  ${value}`)];
    }
    case 'table': {
      const heads = block.columns.map(({ head }) => head);
      const right = block.columns.flatMap(({ align }, i) => (align === 'right' ? [i] : []));
      const rows = block.totals === undefined ? block.rows : [...block.rows, block.totals];
      return ['', ...textTable(heads, rows, right)];
    }
    case 'checklist':
      return ['', ...block.items.flatMap(itemLines)];
    case 'bars':
      return ['', ...barLines(block.rows)];
    case 'picture':
      return [];
  }
}

/** The longest bar takes so many letters. */
const BAR_LETTERS = 40;

function barLines(rows: readonly ReportBar[]): string[] {
  const letters = (texts: readonly string[]): number => Math.max(...texts.map((text) => [...text].length));
  const nameWidth = letters(rows.map(({ name }) => name));
  const longest = Math.max(...rows.map(({ value }) => value));
  return rows.map(({ name, value, text }) => {
    const length = longest > 0 ? Math.round((BAR_LETTERS * value) / longest) : 0;
    return `${name.padEnd(nameWidth)}  ${'#'.repeat(length)}${length > 0 ? ' ' : ''}${text}`;
  });
}

function itemLines({ text, detail, aside }: ReportItem): string[] {
  const [first = '', ...rest] = wrapWords(aside === undefined ? text : `${text} (${aside})`);
  const more = detail === undefined ? [] : wrapWords(detail);
  return [`[ ] ${first}`, ...[...rest, ...more].map((line) => `    ${line}`)];
}

function wrapWords(text: string): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && [...line].length + 1 + [...word].length > LINE_LETTERS) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
