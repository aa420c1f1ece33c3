import { IntakeError } from '../error.js';
import { MAX_COORDINATE_MM } from '../limits.js';
import { spendOperators } from './budget.js';
import { followOperators } from './follow-operators.js';
import { pageFrame } from './page-frame.js';
import type { PageFrame } from './page-frame.js';
import type { PageWalk } from './page-walk.js';
import { readOperators } from './pdfjs.js';
import type { PdfDocument, PdfPage } from './pdfjs.js';

/** One page and how it is looked at. Refuses one of absurd size. */
export async function openPage(
  document: PdfDocument,
  number: number,
  file: string,
): Promise<{ readonly page: PdfPage; readonly frame: PageFrame }> {
  const page = await document.getPage(number).catch(() => {
    throw new IntakeError('pdf-broken', {}, { file, at: `page ${number}` });
  });
  const frame = pageFrame(page);
  const longest = Math.max(frame.widthMm, frame.heightMm);
  if (!(longest <= MAX_COORDINATE_MM)) {
    const params = { metres: Number((longest / 1000).toPrecision(3)), limit: MAX_COORDINATE_MM / 1000 };
    throw new IntakeError('absurd-coordinate', params, { file, at: `page ${number}` });
  }
  return { page, frame };
}

/** Follows the operators while pdf.js makes them; an error stops pdf.js too, so that no hostile page runs on. */
export async function followPage(page: PdfPage, walk: PageWalk): Promise<void> {
  const reader = readOperators(page, walk.number - 1);
  try {
    for (;;) {
      const { value, done } = await reader.read();
      if (done || value === undefined) break;
      spendOperators(walk.budget, value.length);
      followOperators(walk, value);
    }
  } catch (reason) {
    // Not awaited: a page that is already parsed to its end gives no answer any more.
    reader.cancel(new Error('stopped')).catch(() => undefined);
    if (reason instanceof IntakeError) throw reason;
    throw new IntakeError('pdf-broken', {}, { file: walk.budget.file, at: `page ${walk.number}` });
  }
  refuseUnfinished(walk);
}

/**
 * pdf.js leaves a form as it stands, without its end, where it contains itself (which ISO 32000-1, section 8.10.1,
 * forbids) or breaks off; what follows on the page would then be drawn in a wrong place.
 */
function refuseUnfinished(walk: PageWalk): void {
  if (walk.forms.length === 0) return;
  throw new IntakeError('pdf-form-unfinished', {}, { file: walk.budget.file, at: `page ${walk.number}` });
}
