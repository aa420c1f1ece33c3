import type { DiagnosticPlace } from '../../model/diagnostic.js';
import type { SENTENCES } from '../catalogue.js';
import type { SentenceLanguage } from '../language.js';
import { buyingGerman } from './buying.js';
import { costingGerman } from './costing.js';
import { cutFileGerman } from './cutfile.js';
import { filesGerman } from './files.js';
import { layoutGerman } from './layout.js';
import { orderGerman } from './order.js';
import { photoHintsGerman, referenceGerman } from './photo-hints.js';
import { preparingGerman } from './preparing.js';
import { germanFor } from './say.js';
import type { Translation } from './say.js';
import { stagesGerman } from './stages.js';
import { stitchGerman } from './stitch.js';
import { stockGerman } from './stock.js';
import { suitGerman } from './suit.js';
import { suitRemarkGerman } from './suit-remarks.js';
import { templateGerman } from './template.js';

/** Every sentence of this package in German, with the numbers of a locale: "de-DE", "de-CH". */
export function germanSentences(locale: string) {
  const german = germanFor(locale);
  return {
    ...filesGerman(german),
    ...layoutGerman(german),
    ...orderGerman(german),
    ...cutFileGerman(german),
    ...buyingGerman(german),
    ...stitchGerman(german),
    ...templateGerman(german),
    ...photoHintsGerman(german),
    ...referenceGerman(german),
    ...stagesGerman(german),
    ...stockGerman(german),
    ...suitGerman(german),
    ...preparingGerman(german),
    ...costingGerman(german),
  } satisfies Translation<typeof SENTENCES>;
}

/** German, as `sentenceFor` takes it. */
export function germanLanguage(locale: string): SentenceLanguage {
  const german = germanFor(locale);
  return {
    sentences: germanSentences(locale),
    place: (place) => placeGerman(place, german.figures),
    suitRemark: suitRemarkGerman(german),
  };
}

/** "order.yaml, Zeile 12, articles[0].pieces[2].count, bei (120; 80,5) mm". */
function placeGerman(place: DiagnosticPlace, figures: (text: string) => string): string {
  const words: string[] = [];
  if (place.file !== undefined) words.push(place.file);
  if (place.line !== undefined) words.push(`Zeile ${place.line}`);
  if (place.at !== undefined && place.at !== '')
    words.push(place.at.replace(/ in line (\d+)$/, ' in Zeile $1'));
  if (place.point !== undefined) words.push(`bei (${tenth(place.point.x)}; ${tenth(place.point.y)}) mm`);
  return words.join(', ');

  function tenth(value: number): string {
    return figures(String(Math.round(value * 10) / 10));
  }
}
