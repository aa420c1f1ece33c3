import type { STAGES_SENTENCES } from '../stages.js';
import { ownerGerman } from './owner.js';
import type { German, Translation } from './say.js';
import { FLAWS, joined, nearHint, term, termList } from './terms.js';

const STATES = { cut: 'geschnitten', spoiled: 'verdorben', 'still to be cut': 'noch zu schneiden' };

/** "number 12", "numbers 1-4": how the person asked. */
function askedGerman(asked: string): string {
  return asked.replace(/^number /, 'Nummer ').replace(/^numbers /, 'Nummern ');
}

/** Cutting in stages, in German. */
export function stagesGerman({ de, figures, count }: German) {
  return {
    'tick-no-such-number': (p) =>
      p.first === ''
        ? de`Eine Nummer ${p.number} gibt es nicht: In dieser Auslegung liegt nichts.`
        : de`Ein Teil mit Nummer ${p.number} gibt es in dieser Auslegung nicht; die Nummern gehen von ${p.first} bis ${p.last}, die Teileliste zeigt sie.`,
    'tick-range-backwards': (p) => de`${p.asked} läuft rückwärts; die kleinere Nummer zuerst schreiben.`,
    'tick-no-such-piece': (p) =>
      de`Kein ausgelegtes Teil heißt ${p.asked}.${nearHint(p.near)} Die Nummer schreiben, oder den Namen mit Satz und Stück, etwa „front 2/1“.`,
    'tick-piece-of-several': (p) =>
      de`${p.asked} ist ein Teil mehrerer Artikel (${joined(p.articles)}); den Artikel davor schreiben, etwa „saddlebag: front 2/1“.`,
    'tick-bad-words': (p) =>
      de`${p.asked} lässt sich nicht lesen; Nummern („1-12, 15, 37.2“) oder Namen („front 2/1“) mit Kommas dazwischen schreiben.`,
    'tick-twice': (p) =>
      de`${ownerGerman(p.what)} ist zweimal genannt (noch einmal durch ${askedGerman(p.asked)}); ein Teil ist geschnitten, verdorben oder noch zu schneiden, also nur einmal nennen.`,
    'tick-cut-already': (p) =>
      de`${ownerGerman(p.what)} (${askedGerman(p.asked)}) ist schon als geschnitten abgehakt; weglassen oder den Haken zurücknehmen.`,
    'tick-spoiled-already': (p) =>
      de`${ownerGerman(p.what)} (${askedGerman(p.asked)}) ist schon als verdorben abgehakt; neu auslegen oder den Haken zurücknehmen.`,
    'tick-not-ticked': (p) =>
      de`${ownerGerman(p.what)} (${askedGerman(p.asked)}) hat keinen Haken, der sich zurücknehmen ließe; es ist noch zu schneiden.`,
    'tick-nothing-left': (p) =>
      de`Unter ${askedGerman(p.asked)} ist nichts mehr übrig, das sich abhaken ließe als: ${term(STATES, p.state)}.`,
    'tick-hide-changed': (p) =>
      de`Haut ${p.hide} (${p.file}) wurde nach dieser Auslegung geändert, Stellen darauf können falsch sein; die alte Datei zurückholen oder neu auslegen.`,
    'tick-hide-cut': (p) =>
      de`Haut ${p.hide} (${p.file}) gilt als zerschnitten, ihr Leder ist nicht mehr im Lager; wenn noch geschnitten wird, zuerst diese Entnahme aus dem Lager zurücknehmen.`,
    'flaw-bad-words': (p) =>
      de`Der Fehler ${p.found} lässt sich nicht lesen; wenn gewünscht eine Art schreiben (${termList(FLAWS, p.kinds)}), dann eine Stelle und einen Radius in mm, etwa „hole 310,420 12“, oder mehrere Stellen und eine Breite, etwa „scar 310,420 390,460 8“.`,
    'flaw-without-size': (p) =>
      de`Der Fehler ${p.found} muss breiter als nichts und höchstens ${5000} mm sein; den Radius eines Flecks oder die Breite einer Linie in mm angeben.`,
    'flaw-off-hide': (p) =>
      de`Der Fehler ${p.found} liegt nicht auf dem Leder der Haut ${p.hide}; nachmessen oder die richtige Haut nennen.`,
    'flaw-which-hide': (p) =>
      de`Ausgelegt ist auf mehreren Häuten (${joined(p.hides)}); angeben, auf welcher der Fehler ist.`,
    'flaw-no-such-hide': (p) =>
      de`Die Auslegung hat keine Haut ${p.asked}; ihre Häute sind ${joined(p.hides)}.`,
    'flaw-under-planned': (p) =>
      de`${ownerGerman(p.what)} (Nummer ${p.number}) lässt sich wegen ${p.flaw} nicht mehr dort schneiden, wo es liegt; es ist neu auszulegen.`,
    'flaw-under-cut': (p) =>
      de`${ownerGerman(p.what)} (Nummer ${p.number}) ist schon geschnitten, und ${p.flaw} bricht dort seine Regel; wenn es nicht zu gebrauchen ist, als verdorben abhaken.`,
    'laid-again-numbers': (p) =>
      de`Neue Nummern: ${count(p.count, 'Teil', 'Teile')}; vor dem Weiterschneiden die Blätter neu drucken.`,
    'rest-left-over-file': (p) => de`${p.file} stammt von früher und stimmt nicht mehr; wegnehmen.`,
    'left-unlaid': (p) =>
      de`Noch zu schneiden und ohne Platz: ${count(p.count, 'Teil', 'Teile')}, zusammen ${figures(p.pieces)} Teile, etwa ${figures(p.leather)} Leder bei der Ausbeute dieser Auslegung.`,
  } satisfies Translation<typeof STAGES_SENTENCES>;
}
