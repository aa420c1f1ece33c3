import { germanFor } from '@hidebound/leather/words-de';
import { hidesGerman, patternsGerman, structureGerman } from './de/drawings.js';
import { dxfGerman } from './de/dxf.js';
import { pagesGerman } from './de/pages.js';
import { pdfGerman } from './de/pdf.js';
import { cameraGerman, tracingGerman } from './de/photos.js';
import { refusalsGerman } from './de/refusals.js';
import { repairsGerman } from './de/repairs.js';
import type { Sentence } from './sentence.js';
import type { IntakeSentenceCode } from './sentences.js';

/** Every sentence of this package in German, with the numbers of a locale: loaded by those who show German. */
export function intakeGerman(locale: string): Readonly<Record<IntakeSentenceCode, Sentence>> {
  const german = germanFor(locale);
  return {
    ...refusalsGerman(german),
    ...structureGerman(german),
    ...patternsGerman(german),
    ...hidesGerman(german),
    ...pdfGerman(german),
    ...pagesGerman(german),
    ...dxfGerman(german),
    ...repairsGerman(german),
    ...cameraGerman(german),
    ...tracingGerman(german),
  };
}
