import type { Box } from '@hidebound/geometry';
import { line } from '../drawing/build.js';
import type { Drawing, DrawingElement } from '../drawing/model.js';
import { PAGE_MARGIN_MM } from '../sheet/fit-page.js';
import { PAGE_SIZES } from '../sheet/page-size.js';
import type { PageName } from '../sheet/page-size.js';
import { FINE_LINE_MM, INK, INK_SOFT, RULE } from '../sheet/palette.js';
import type { FontBook } from '../text/font-book.js';
import { fitText, textLine } from '../text/measure-text.js';
import { gapRow, rowsOfBlock } from './report-rows.js';
import type { ReportDesk, ReportRow } from './report-rows.js';
import type { Report, ReportBlock } from './report.js';

export interface ReportOptions {
  readonly page: PageName;
  readonly fonts: FontBook;
  /** Sets smaller letters, down to a point, if the report then fits on one page: a card to hang up. */
  readonly onOnePage?: boolean;
}

/** Letters that are read at arm's length; a card that must fit one page goes down from there. */
const TEXT_MM = 3.7;
const LARGE_TEXT_MM = 4.6;
const CARD_SIZES: readonly number[] = [1, 0.94, 0.88, 0.82, 0.76, 0.7];

/**
 * A report on upright pages, one column wide. Tables repeat their head on every page, heads of sections are never left
 * alone at the foot of one.
 */
export function drawReport(report: Report, options: ReportOptions): Drawing[] {
  const textMm = options.page === 'A3' || options.page === 'Tabloid' ? LARGE_TEXT_MM : TEXT_MM;
  const sizes = options.onOnePage === true || report.onOnePage === true ? CARD_SIZES : [1];
  let pages: readonly DrawingElement[][] = [];
  let used = textMm;
  for (const size of sizes) {
    used = textMm * size;
    pages = pagesWith(report, options, used);
    if (pages.length === 1) break;
  }
  const { widthMm, heightMm } = PAGE_SIZES[options.page];
  return pages.map((elements, i) => ({
    widthMm,
    heightMm,
    title: `${report.title}: ${report.subtitle}, sheet ${i + 1} of ${pages.length}`,
    layers: [
      { name: 'report', elements },
      { name: 'header', elements: header(report, options, used) },
      { name: 'footer', elements: footer(options, used, i + 1, pages.length) },
    ],
  }));
}

function pagesWith(report: Report, options: ReportOptions, textMm: number): DrawingElement[][] {
  const body = bodyOf(options, textMm);
  const desk: ReportDesk = { fonts: options.fonts, textMm, widthMm: body.maxX - body.minX };
  return flowRows(rowsOf(report.blocks, desk), body);
}

function rowsOf(blocks: readonly ReportBlock[], desk: ReportDesk): ReportRow[] {
  let title: readonly ReportRow[] = [];
  return blocks.flatMap((block, i) => {
    if (block.kind === 'section') title = rowsOfBlock({ ...block, title: `${block.title} …` }, desk);
    const isAfterSection = blocks[i - 1]?.kind === 'section';
    const gap = i === 0 || isAfterSection ? [] : [gapRow(desk, block.kind === 'section' ? 0.9 : 0.5)];
    const [sectionTitle] = title;
    // Words above a picture belong to it.
    const leadsTo = block.kind === 'text' && blocks[i + 1]?.kind === 'picture';
    const isLedTo = block.kind === 'picture' && blocks[i - 1]?.kind === 'text';
    const rows = rowsOfBlock(block, desk).map((row) => ({
      ...row,
      ...(leadsTo ? { keepsNext: true } : {}),
      ...(sectionTitle === undefined ? {} : { sectionTitle }),
    }));
    return [...gap.map((row) => ({ ...row, keepsNext: isLedTo })), ...rows];
  });
}

/** Rows from the top, on as many pages as they take. */
function flowRows(rows: readonly ReportRow[], body: Box): DrawingElement[][] {
  const pages: DrawingElement[][] = [[]];
  let y = body.minY;
  const put = (row: ReportRow): void => {
    pages[pages.length - 1]!.push(...row.draw(body.minX, y));
    y += row.heightMm;
  };
  rows.forEach((row, i) => {
    const isTop = y === body.minY;
    if (!isTop && y + keptHeight(rows, i) > body.maxY) {
      if (row.isSpace === true) return;
      pages.push([]);
      y = body.minY;
      if (row.head !== undefined && row.sectionTitle !== undefined) put(row.sectionTitle);
      if (row.head !== undefined) put(row.head);
    } else if (isTop && row.isSpace === true) return;
    put(row);
  });
  return pages;
}

/** Height of a row with those that must stand on its page. */
function keptHeight(rows: readonly ReportRow[], from: number): number {
  let height = 0;
  for (let i = from; i < rows.length; i++) {
    height += rows[i]!.heightMm;
    if (!rows[i]!.keepsNext) break;
  }
  return height;
}

const TITLE_SHARE = 2;

function bodyOf({ page }: ReportOptions, textMm: number): Box {
  const { widthMm, heightMm } = PAGE_SIZES[page];
  return {
    minX: PAGE_MARGIN_MM,
    minY: PAGE_MARGIN_MM + textMm * 5.2,
    maxX: widthMm - PAGE_MARGIN_MM,
    maxY: heightMm - PAGE_MARGIN_MM - textMm * 1.8,
  };
}

function header(report: Report, options: ReportOptions, textMm: number): DrawingElement[] {
  const { fonts } = options;
  const { minX, maxX } = bodyOf(options, textMm);
  const titleMm = textMm * TITLE_SHARE;
  const at = (share: number): number => PAGE_MARGIN_MM + textMm * share;
  return [
    textLine(fonts, fitText(fonts, 'bold', titleMm, report.title, maxX - minX), {
      at: { x: minX, y: at(1.55) },
      sizeMm: titleMm,
      colour: INK,
      face: 'bold',
    }),
    textLine(fonts, fitText(fonts, 'narrow', textMm, report.subtitle, maxX - minX), {
      at: { x: minX, y: at(3.3) },
      sizeMm: textMm,
      colour: INK_SOFT,
      face: 'narrow',
    }),
    line({ x: minX, y: at(4.1) }, { x: maxX, y: at(4.1) }, { colour: RULE, widthMm: FINE_LINE_MM }),
  ];
}

function footer(options: ReportOptions, textMm: number, number: number, count: number): DrawingElement[] {
  const { maxX } = bodyOf(options, textMm);
  const y = PAGE_SIZES[options.page].heightMm - PAGE_MARGIN_MM;
  const words = `Sheet ${number} of ${count}`;
  return [
    textLine(options.fonts, words, {
      at: { x: maxX, y },
      sizeMm: textMm * 0.9,
      colour: INK_SOFT,
      face: 'narrow',
      anchor: 'end',
    }),
  ];
}
