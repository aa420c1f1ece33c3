import type { SUIT_SENTENCES } from '../suit.js';
import { reasonsOf } from '../suit.js';
import { whoGerman as who } from './owner.js';
import type { German, Translation } from './say.js';
import { suitRemarkGerman } from './suit-remarks.js';
import { ZONES, joined, nearHint, termList } from './terms.js';

/** `hide 7`, `leather "body"`, `article bag`: whose tannage it is. */
function whoseGerman(whose: string): string {
  return whose
    .replace(/^hide /, 'Haut ')
    .replace(/^leather /, 'Leder ')
    .replace(/^article /, 'Artikel ');
}

/** `"front" and "back" of bag`. */
function piecesGerman(words: string): string {
  return words.replace(/ and (?="[^"]*" of )/, ' und ').replace(/" of (?=[^"]*$)/, '" von ');
}

/** Which leather goes where, in German. */
export function suitGerman(german: German) {
  const { de, figures } = german;
  const remark = suitRemarkGerman(german);
  const why = (p: { readonly why: string; readonly reasons?: string }): string =>
    p.reasons === undefined
      ? p.why
      : reasonsOf(p.reasons)
          .map((each) => `${each.hide}: ${each.remark === undefined ? 'passt nicht' : remark(each.remark)}`)
          .join('; ');
  const lots = (words: string): string => words.replace(/, a lot of its own(?=;|$)/g, ' als eigene Charge');
  return {
    'suit-goods-not-known': (p) =>
      de`In der Tabelle der Waren gibt es keine Zeile „${p.goods}“ (Artikel ${p.article}), darum zählen nur seine Leder und die Regeln seiner Teile.${nearHint(p.near)} Um das zu ändern, in workshop.yaml ergänzen: „goods: { ${p.goods}: { thickness: 2.0-2.8 mm, tannage: vegetable, temper: firm } }“.`,
    'suit-far-from-goods': (p) =>
      de`Für ${piecesGerman(p.who)} sind ${figures(p.asked)} Stärke verlangt, üblich sind aber ${figures(p.usual)} (${p.row}); was der Auftrag sagt, zählt. Nachsehen, ob es so gemeint ist.`,
    'suit-thickness-not-known': (p) =>
      de`Die Stärke der Haut ${p.hide} ist nicht bekannt; an mehreren Stellen messen und eintragen.`,
    'suit-tannage-not-in-table': (p) =>
      de`Die Gerbung „${p.tannage}“ (${whoseGerman(p.whose)}) steht nicht in der Tabelle, darum weiß niemand, was sie nicht kann.${nearHint(p.near)} In workshop.yaml unter „tannages“ ergänzen.`,
    'suit-genuine': (p) =>
      de`Haut ${p.hide} wird als „genuine“ (echt) verkauft: Das Wort sagt, dass es Leder ist, nicht, dass es gutes ist; fragen, welcher Spalt es ist und wie er gegerbt und zugerichtet wurde.`,
    'suit-bonded': (p) =>
      de`Haut ${p.hide} ist Lederfaserstoff: verklebte Fasern, die an Stichen reißen, sich unter Last dehnen und nicht polieren lassen; für nichts verwenden, das Last trägt oder dessen Kante man sieht.`,
    'suit-lots-differ': (p) =>
      de`Die Häute des Leders „${p.leather}“ sind von verschiedenen Chargen (${lots(p.lots)}), deren Farbton abweichen kann; bei Tageslicht vergleichen und jeden Artikel (${joined(p.articles)}), wo man es sieht, aus einer Charge schneiden.`,
    'suit-dye-over-finish': (p) =>
      de`Haut ${p.hide} ist zugerichtet (${p.finish}); die Farbe „${p.dye}“ des Leders „${p.leather}“ zieht da nicht gleichmäßig ein und färbt ab. Nicht zugerichtetes Leder nehmen oder an einem Reststück dieser Haut probieren.`,
    'suit-strap-from-belly': (p) =>
      de`Nach dem Auftrag darf ${who(p)} aus dieser Partie kommen: ${termList(ZONES, p.zones)}. Sie dehnt sich am meisten, und für immer; was Last trägt, aus Kernstück oder Hals schneiden.`,
    'suit-zones-not-drawn': (p) =>
      de`Haut ${p.hide} zeigt keine Partien, darum hält nichts ${joined(p.pieces)} vom Bauch fern; die Partien einzeichnen oder diese Teile nach Augenmaß aus dem Rücken schneiden.`,
    'suit-edge-thin': (p) =>
      de`Einfache Kanten von ${who(p)} werden ${figures(p.thickness)} dick; unter ${figures(p.least)} mm lässt sich eine Kante schwer polieren: umbugen oder vorher mit dem Nachbarteil verkleben.`,
    'suit-thin-for-load': (p) =>
      de`Als eine Lage von ${figures(p.thickness)} ist ${who(p)} zu schwach für die Last (ab ${figures(p.least)} mm hält es); doppeln oder füttern.`,
    'suit-thin-warps': (p) =>
      de`Als festes Leder von ${figures(p.thickness)} verzieht sich ${who(p)}, wenn es auf einer Seite nass gemacht, gefärbt oder geklebt wird; beide Seiten anfeuchten und flach unter Gewicht trocknen.`,
    'suit-too-thick-to-turn': (p) =>
      de`Die Kanten von ${who(p)} sollen umgebugt werden, Leder von ${figures(p.thickness)} bugt sich über ${figures(p.most)} mm aber nicht sauber um; dünneres Leder nehmen oder die Kante roh lassen und polieren.`,
    'suit-beside-steel': (p) =>
      de`Weder Klinge noch Waffe wird in Leder aufbewahrt (${joined(p.articles)}): Was Chrom hinterlässt, lässt Stahl rosten, und auch pflanzlich gegerbtes Leder ist sauer; in Leder tragen, trocken und geölt außerhalb aufbewahren.`,
    'suit-no-hide': (p) =>
      de`Keine vorhandene Haut passt für ${who(p)} (Leder „${p.leather}“)${p.why === '' ? '' : `: ${why(p)}`}.`,
    'suit-other-hide': (p) =>
      de`Keine Haut des Leders „${p.leather}“ passt für ${who(p)} (${why(p)}), wohl aber ${joined(p.hides)}; bei diesem Leder eintragen.`,
  } satisfies Translation<typeof SUIT_SENTENCES>;
}
