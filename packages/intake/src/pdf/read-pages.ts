import type { PatternReading } from '@hidebound/leather';
import { IntakeError } from '../error.js';
import { tell } from '../findings.js';
import type { Findings } from '../findings.js';
import type { PatternPage } from '../pages/page.js';
import { findLettering } from '../roles/lettering.js';
import { newBudget } from './budget.js';
import type { Budget } from './budget.js';
import { followPage, openPage } from './follow-page.js';
import { MAX_PDF_PAGES } from './limits.js';
import { openPdf } from './open.js';
import { startWalk } from './page-walk.js';
import type { Tally } from './page-walk.js';
import type { PdfDocument, PdfLayers } from './pdfjs.js';
import { tellTally } from './tally.js';
import { textLines } from './text-lines.js';

/**
 * The pages of a PDF that the reading asks for (all if it says nothing), as one looks at them: lines and texts in mm on
 * the 1 µm grid. Rejects with `IntakeError` for what can't be read, and for pages on which nothing at all is drawn.
 */
export async function readPdfPages(
  bytes: Uint8Array,
  reading: PatternReading | undefined,
  findings: Findings,
): Promise<PatternPage[]> {
  const opened = await openPdf(bytes, findings);
  try {
    const numbers = pageNumbers(opened.document.numPages, reading, findings.file);
    const pages = await readAll(opened.document, numbers, findings);
    checkDrawn(pages, opened.pictures, findings);
    return pages;
  } finally {
    await opened.close();
  }
}

function pageNumbers(count: number, reading: PatternReading | undefined, file: string): number[] {
  if (count === 0) throw new IntakeError('pdf-no-pages', {}, { file });
  if (count > MAX_PDF_PAGES) {
    throw new IntakeError('pdf-too-many-pages', { pages: count, limit: MAX_PDF_PAGES }, { file });
  }
  const take = reading?.pages?.take ?? Array.from({ length: count }, (_, i) => i + 1);
  for (const page of take) {
    if (Number.isInteger(page) && page >= 1 && page <= count) continue;
    throw new IntakeError('pdf-no-such-page', { page, pages: count }, { file });
  }
  return [...new Set(take)];
}

/** What the pages of one file share. */
interface Shared {
  readonly layers: PdfLayers;
  readonly budget: Budget;
  readonly tally: Tally;
  readonly groupKeys: Map<string, number>;
  readonly findings: Findings;
}

async function readAll(
  document: PdfDocument,
  numbers: readonly number[],
  findings: Findings,
): Promise<PatternPage[]> {
  const layers = await document.getOptionalContentConfig({ intent: 'display' });
  const shared: Shared = {
    layers,
    findings,
    budget: newBudget(findings.file),
    tally: { white: [], thin: [] },
    groupKeys: new Map(),
  };
  const pages: PatternPage[] = [];
  for (const number of numbers) pages.push(await readPage(document, number, shared));
  tellTally({ ...shared.tally, thin: withoutLetters(shared.tally.thin, pages) }, findings);
  return pages;
}

/** Strokes of letters are narrow, but nobody means a line by them. */
function withoutLetters(thin: readonly string[], pages: readonly PatternPage[]): string[] {
  if (thin.length === 0) return [];
  const letters = new Set<string>();
  for (const { lines } of pages) {
    for (const i of findLettering(lines).lines) letters.add(lines[i]!.source.name);
  }
  return thin.filter((name) => !letters.has(name));
}

async function readPage(document: PdfDocument, number: number, shared: Shared): Promise<PatternPage> {
  const { file } = shared.findings;
  const { page, frame } = await openPage(document, number, file);
  const walk = startWalk({ ...shared, number, frame });
  await followPage(page, walk);
  page.cleanup();
  const { widthMm, heightMm } = frame;
  return { number, widthMm, heightMm, lines: walk.lines, texts: textLines(walk.runs) };
}

/** Pages without any line are refused, with the reason where it can be told; one among others is told of. */
function checkDrawn(pages: readonly PatternPage[], pictures: number, findings: Findings): void {
  const { file } = findings;
  const empty = pages.filter(({ lines }) => lines.length === 0).map(({ number }) => number);
  if (empty.length === pages.length) {
    throw new IntakeError(pictures > 0 ? 'pdf-only-pictures' : 'pdf-no-lines', {}, { file });
  }
  if (empty.length > 0) {
    tell(findings, 'note', 'pdf-pages-without-lines', { pages: empty.join(', '), count: empty.length });
  }
}
