import type { PHOTO_HINTS_SENTENCES } from '../photo-hints.js';
import type { REFERENCE_SENTENCES } from '../reference.js';
import type { German, Translation } from './say.js';
import { cutShort, nearHint, term } from './terms.js';

const GUESSES = { backbone: 'Die Rückenlinie', cut: 'Die Art' };

const WAYS = { across: 'quer', down: 'längs' };

/** What can be wrong with hints on photos, and with what is decided of a traced hide, in German. */
export function photoHintsGerman({ de }: German) {
  return {
    'hints-photo-twice': (p) =>
      de`Vom Foto ${p.photo} ist zweimal die Rede; alle Angaben dazu in einen Eintrag schreiben.`,
    'hints-two-references': (p) =>
      de`Für den Maßstab dieses Fotos stehen „${p.first}“ und „${p.second}“ da; das größere behalten.`,
    'hints-corners': () =>
      'Die vier Ecken laufen nicht im Uhrzeigersinn; zuerst oben links, dann oben rechts, unten rechts, unten links angeben.',
    'hints-readings': () =>
      'Dieselbe Ablesung des Lineals steht an zwei Stellen; jeder Stelle die Zahl geben, die das Lineal dort zeigt.',
    'no-such-candidate': (p) =>
      de`Haut ${p.hide} hat keinen möglichen Fehler ${p.id}.${nearHint(p.near)} Es gibt ${p.known === 'none' ? 'keine' : cutShort(p.known)}.`,
    'candidate-both-ways': (p) =>
      de`Der mögliche Fehler ${p.id} lässt sich nicht zugleich übernehmen und verwerfen; eines davon behalten.`,
    'guess-not-open': (p) =>
      de`${term(GUESSES, p.guess)} der Haut ${p.hide} ist nicht offen geraten, es gibt also nichts zu bestätigen; weglassen.`,
  } satisfies Translation<typeof PHOTO_HINTS_SENTENCES>;
}

/** What can be wrong with the measured bars of reference sheets, in German. */
export function referenceGerman({ de, figures }: German) {
  return {
    'bars-unreadable': (p) =>
      de`${p.found} sind keine zwei Längen; erst die Linie quer, dann die längs schreiben, etwa „159.2 x 218.9“ (mm) oder „6 1/4 in x 8 5/8 in“.`,
    'bars-swapped': (p) =>
      de`Die Linie quer wäre ${figures(p.across)} und die längs ${figures(p.down)}; das sieht vertauscht aus. Die kürzere Linie, quer, zuerst schreiben.`,
    'bar-far-off': (p) =>
      de`Die Linie ${term(WAYS, p.which)} ist ${figures(p.drawn)} lang gezeichnet und misst ${figures(p.found)}, mehr als ${p.most} % daneben; noch einmal von Endstrich zu Endstrich messen oder die Blätter noch einmal mit 100 % drucken.`,
    'sheet-twice': (p) => de`Blatt ${p.sheet} steht in dieser Datei zweimal; den neueren Eintrag behalten.`,
  } satisfies Translation<typeof REFERENCE_SENTENCES>;
}
