import { IntakeError } from '../error.js';
import { newFindings } from '../findings.js';
import type { StraightPicture } from '../photo/straight/straight-picture.js';
import { newBudget } from './budget.js';
import { followPage, openPage } from './follow-page.js';
import { MAX_ALL_PIXELS, MAX_PDF_PAGES, MAX_PICTURE_PAGES, PAGE_PX_PER_MM } from './limits.js';
import { openPdf } from './open.js';
import type { PageFrame } from './page-frame.js';
import { pagePicture, pxPerMmOf } from './page-picture.js';
import type { ShownPicture } from './page-picture.js';
import { startWalk } from './page-walk.js';
import type { PlacedPicture } from './page-walk.js';
import type { PdfDocument, PdfPicture } from './pdfjs.js';

/** A scanned page: what its pictures show, at the page's true scale, in mm from its top left corner. */
export interface PdfPagePicture {
  /** From 1. */
  readonly page: number;
  readonly picture: StraightPicture;
}

/**
 * The pictures of a PDF's pages; pages without any are left out. Rejects with `IntakeError`: `pdf-no-pictures`,
 * `pdf-pictures-too-large`, and all that the reading of a pattern refuses.
 */
export async function readPdfPictures(bytes: Uint8Array, file: string): Promise<readonly PdfPagePicture[]> {
  const arrivals = newArrivals();
  const opened = await openPdf(bytes, newFindings(file), arrivals.arrive);
  try {
    const count = opened.document.numPages;
    if (count === 0) throw new IntakeError('pdf-no-pages', {}, { file });
    if (count > MAX_PDF_PAGES)
      throw new IntakeError('pdf-too-many-pages', { pages: count, limit: MAX_PDF_PAGES }, { file });
    const pages: PdfPagePicture[] = [];
    let pixels = 0;
    for (let number = 1; number <= count; number++) {
      const { placed, frame } = await placedPictures(opened.document, number, file);
      const shown = await withPixels(placed, arrivals);
      arrivals.forget();
      if (shown.length === 0) continue;
      pixels += pixelsOf(shown, frame);
      if (pixels > MAX_ALL_PIXELS || pages.length >= MAX_PICTURE_PAGES) {
        throw new IntakeError(
          'pdf-pictures-too-large',
          { limit: MAX_ALL_PIXELS / 1e6 },
          { file, at: `page ${number}` },
        );
      }
      pages.push({ page: number, picture: pagePicture(shown, frame) });
    }
    if (pages.length === 0) throw new IntakeError('pdf-no-pictures', {}, { file });
    return pages;
  } finally {
    await opened.close();
  }
}

/** Pictures come when pdf.js has unpacked them, before or after the page that asks for them is read to its end. */
interface Arrivals {
  readonly arrive: (id: string, picture: PdfPicture | undefined) => void;
  readonly get: (id: string) => Promise<PdfPicture | undefined>;
  /** Lets go of what only one page shows. */
  readonly forget: () => void;
}

/** How ids of pictures begin that several pages show. */
const SHARED = 'g_';

function newArrivals(): Arrivals {
  const come = new Map<string, Promise<PdfPicture | undefined>>();
  const waiting = new Map<string, (picture: PdfPicture | undefined) => void>();
  const get: Arrivals['get'] = (id) => {
    const known = come.get(id);
    if (known !== undefined) return known;
    const promise = new Promise<PdfPicture | undefined>((done) => void waiting.set(id, done));
    come.set(id, promise);
    return promise;
  };
  const arrive: Arrivals['arrive'] = (id, picture) => {
    const done = waiting.get(id);
    if (done === undefined) come.set(id, Promise.resolve(picture));
    else {
      waiting.delete(id);
      done(picture);
    }
  };
  const forget = () => {
    for (const id of [...come.keys()]) if (!id.startsWith(SHARED)) come.delete(id);
  };
  return { arrive, get, forget };
}

async function placedPictures(
  document: PdfDocument,
  number: number,
  file: string,
): Promise<{ readonly placed: readonly PlacedPicture[]; readonly frame: PageFrame }> {
  const { page, frame } = await openPage(document, number, file);
  const walk = startWalk({
    number,
    frame,
    layers: await document.getOptionalContentConfig({ intent: 'display' }),
    findings: newFindings(file),
    budget: newBudget(file),
    tally: { white: [], thin: [] },
    groupKeys: new Map(),
  });
  await followPage(page, walk);
  page.cleanup();
  return { placed: walk.pictures, frame };
}

async function withPixels(placed: readonly PlacedPicture[], arrivals: Arrivals): Promise<ShownPicture[]> {
  const shown: ShownPicture[] = [];
  for (const { picture, toMm } of placed) {
    const pixels = typeof picture === 'string' ? await arrivals.get(picture) : picture;
    if (pixels?.data !== undefined && pixels.width > 0 && pixels.height > 0)
      shown.push({ picture: pixels, toMm });
  }
  return shown;
}

function pixelsOf(shown: readonly ShownPicture[], { widthMm, heightMm }: PageFrame): number {
  const pxPerMm = Math.min(PAGE_PX_PER_MM, Math.max(...shown.map(pxPerMmOf)));
  return widthMm * heightMm * pxPerMm * pxPerMm;
}
