import type { PatternPiece } from '@hidebound/leather';
import { newFindings } from '../../findings.js';
import { readPdfPictures } from '../../pdf/read-pictures.js';
import { readCards } from '../cards/read-cards.js';
import type { Vision } from '../vision/vision.js';
import type { CardsAsked, CardsRead } from './trace-cards.js';

/**
 * Templates on the pages of a scanned PDF as pieces, numbered from page to page; the pages' own size is their scale.
 * Rejects with `IntakeError` as `readPdfPictures` and `readCards` do.
 */
export async function tracePdfCards(
  bytes: Uint8Array,
  file: string,
  { names = [] }: Pick<CardsAsked, 'names'>,
  { vision }: { readonly vision: Vision },
): Promise<CardsRead> {
  const pages = await readPdfPictures(bytes, file);
  const findings = newFindings(file);
  const pieces: PatternPiece[] = [];
  for (const { picture } of pages) {
    const before = pieces.length;
    const found = readCards(picture, {}, vision, findings);
    pieces.push(...found.map((read, i) => renamed(read, names[before + i] ?? `piece ${before + i + 1}`)));
  }
  const many = pages.length === 1 ? 'the page of the PDF' : `the ${pages.length} pages of the PDF`;
  return { pieces, diagnostics: findings.diagnostics, scaledBy: `the size of ${many}` };
}

function renamed({ piece, ...rest }: PatternPiece, name: string): PatternPiece {
  return { ...rest, piece: { ...piece, name } };
}
