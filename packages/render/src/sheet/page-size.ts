/** A page, in mm, upright. */
export interface PageSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

export type PageName = 'A4' | 'A3' | 'Letter' | 'Tabloid';

/** A4 and A3 by ISO 216; Letter and Tabloid are sizes A and B of ASME Y14.1 (8.5 × 11 in and 11 × 17 in). */
export const PAGE_SIZES: Readonly<Record<PageName, PageSize>> = {
  A4: { widthMm: 210, heightMm: 297 },
  A3: { widthMm: 297, heightMm: 420 },
  Letter: { widthMm: 8.5 * 25.4, heightMm: 11 * 25.4 },
  Tabloid: { widthMm: 11 * 25.4, heightMm: 17 * 25.4 },
};

/** The page lying on its long side. */
export function lyingPage(page: PageSize): PageSize {
  return { widthMm: page.heightMm, heightMm: page.widthMm };
}
