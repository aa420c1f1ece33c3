import { joined } from './terms.js';

const COPY = /^"(.*)" of (.*) \(set (\d+)(?:, copy (\d+))?(, mirrored)?\)$/s;
const OTHER = /^(lane|rough cut|swatch|hide) (.*)$/s;
const OTHERS: Readonly<Record<string, string>> = {
  lane: 'Bahn',
  'rough cut': 'Grobzuschnitt',
  swatch: 'Probestück',
  hide: 'Haut',
};

/** What `ownerWords` says, in German: „front“ von saddlebag (Satz 2, gespiegelt). */
export function ownerGerman(words: string): string {
  const copy = COPY.exec(words);
  if (copy !== null) {
    const [, piece = '', article = '', set = '', nth, mirrored] = copy;
    const which = [
      `Satz ${set}`,
      ...(nth === undefined ? [] : [`Stück ${nth}`]),
      ...(mirrored === undefined ? [] : ['gespiegelt']),
    ];
    return `„${piece}“ von ${article} (${which.join(', ')})`;
  }
  const other = OTHER.exec(words);
  return other === null ? joined(words) : `${OTHERS[other[1]!]!} ${other[2]!}`;
}

/** The same at the beginning of a sentence, where "lane 2" would be no name yet. */
export const whoGerman = (p: { readonly piece: string; readonly article: string }): string =>
  `„${p.piece}“ von ${p.article}`;
