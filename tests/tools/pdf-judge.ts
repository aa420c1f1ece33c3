import type * as PdfJs from 'pdfjs-dist/legacy/build/pdf.mjs';

/**
 * pdf.js as a judge of the PDFs that the project writes. It makes a matrix of the browser's while it is loaded, for
 * drawing alone, which nothing here does: a stand-in is enough.
 */
export async function pdfJudge(): Promise<typeof PdfJs> {
  const platform = globalThis as { DOMMatrix?: unknown };
  const needsStandIn = platform.DOMMatrix === undefined;
  if (needsStandIn) platform.DOMMatrix = class {};
  try {
    return await import('pdfjs-dist/legacy/build/pdf.mjs');
  } finally {
    if (needsStandIn) delete platform.DOMMatrix;
  }
}
