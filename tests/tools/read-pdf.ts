import { newFindings } from '../../packages/intake/src/findings.js';
import type { Findings } from '../../packages/intake/src/findings.js';
import type { PatternPage } from '../../packages/intake/src/pages/page.js';
import { readPdfPages } from '../../packages/intake/src/pdf/read-pages.js';
import type { PatternReading } from '@hidebound/leather';
import { writePdf } from './write-pdf.js';
import type { WrittenFile, WrittenPage } from './write-pdf.js';

export interface PagesRead {
  readonly pages: readonly PatternPage[];
  readonly findings: Findings;
}

/** The pages of a PDF before they are put together. */
export async function pagesOf(bytes: Uint8Array, reading?: PatternReading): Promise<PagesRead> {
  const findings = newFindings('pattern.pdf');
  return { pages: await readPdfPages(bytes, reading, findings), findings };
}

/** The only page of a written PDF, with what was found. */
export async function onePage(
  page: WrittenPage,
  rest: Omit<WrittenFile, 'pages'> = {},
): Promise<PatternPage & { readonly findings: Findings }> {
  const { pages, findings } = await pagesOf(writePdf({ ...rest, pages: [page] }));
  return { ...pages[0]!, findings };
}

/** mm of points. */
export const mm = (points: number): number => (points * 25.4) / 72;
