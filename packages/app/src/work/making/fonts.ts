import { createFontBook } from '@hidebound/render';
import type { FontBook, FontFace } from '@hidebound/render';

/** The builder copies what is named like this into the site, under a name that changes with the content. */
const URLS: Readonly<Record<FontFace, string>> = {
  regular: new URL('../../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url).href,
  bold: new URL('../../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf', import.meta.url).href,
  narrow: new URL('../../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf', import.meta.url).href,
  'narrow bold': new URL(
    '../../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf',
    import.meta.url,
  ).href,
};

let book: Promise<FontBook> | undefined;

/** The fonts of all sheets, loaded when the first one is drawn. */
export function fontBook(): Promise<FontBook> {
  book ??= loadBook().catch((error: unknown) => {
    // The next sheet tries again: a phone may have been out of reach.
    book = undefined;
    throw error;
  });
  return book;
}

async function loadBook(): Promise<FontBook> {
  const [regular, bold, narrow, narrowBold] = await Promise.all(
    (['regular', 'bold', 'narrow', 'narrow bold'] as const).map((face) => load(URLS[face])),
  );
  return createFontBook({ regular: regular!, bold: bold!, narrow: narrow!, 'narrow bold': narrowBold! });
}

async function load(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`A font could not be loaded (${response.status}).`);
  return new Uint8Array(await response.arrayBuffer());
}
