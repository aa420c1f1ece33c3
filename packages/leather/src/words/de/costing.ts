import type { COSTING_SENTENCES } from '../costing.js';
import type { German, Translation } from './say.js';
import { term } from './terms.js';

const QUALITIES = {
  tannage: 'eine andere Gerbung',
  temper: 'einen anderen Griff',
  finish: 'eine andere Zurichtung',
  colour: 'eine andere Farbe',
  thickness: 'eine andere Stärke',
};

const PLACES = {
  'all else': 'alles Übrige',
  'the price': 'der Preis',
  'the amount that prices are rounded to': 'der Betrag, auf den Preise gerundet werden',
  leather: 'das Leder',
  thread: 'der Faden',
  hardware: 'die Beschläge',
  liquid: 'die Flüssigkeiten',
  work: 'die Arbeit',
};

/** Where a sum of money comes from, at the beginning of a clause. */
function placeGerman(place: string): string {
  return term(PLACES, place)
    .replace(/^the leather /, 'das Leder ')
    .replace(/^the thread (.*) of the order$/s, 'der Faden $1 des Auftrags')
    .replace(/^the hardware (".*") of /s, 'die Beschläge $1 von ');
}

const WHAT = { 'The usable area': 'Die brauchbare Fläche', 'the usable area': 'Die brauchbare Fläche' };
const UNITS = { hide: 'Haut', m2: 'm²', dm2: 'dm²', ft2: 'ft²' };

/** Money and prices, in German. */
export function costingGerman({ de, count }: German) {
  const what = (words: string): string =>
    term(WHAT, words).replace(/^The last yield of /, 'Die letzte Ausbeute von ');
  const missing = (n: number): string => count(n, 'Teil', 'Teile');
  return {
    'mixed-currencies': (p) =>
      de`Summen in zwei Währungen lassen sich nicht addieren: ${placeGerman(p.first)} in ${p.currency}, ${placeGerman(p.second)} in ${p.other}; alle Preise in einer Währung schreiben.`.replace(
        /^./,
        (first) => first.toUpperCase(),
      ),
    'rounding-to-nothing': () =>
      'Auf Vielfache von 0 lässt sich nicht runden; unter „rounding“ einen Betrag über 0 schreiben, etwa „0.50 EUR“, oder nichts.',
    'unknown-price-unit': (p) =>
      de`Mit einem Preis je ${p.found} lässt sich nicht rechnen; unter „per“ eines davon schreiben: ${p.known}.`,
    'price-without-area': (p) =>
      de`Haut ${p.hide} kostet ${p.price} je ${term(UNITS, p.per)} der berechneten Fläche, die aber nicht bekannt ist; „invoicedMm2“ in ihre Datei schreiben, oder den Preis für die Haut oder die gemessene Fläche angeben.`,
    'yield-of-zero': (p) =>
      de`${what(p.what)} ist 0, damit lässt sich nicht rechnen; einen Anteil über 0 schreiben.`,
    'nothing-priced': () =>
      'Nichts hier hat einen Preis; Preise in die Hautdateien schreiben, oder „offers“, „prices“ und „hourlyRate“ in die Werkstattdatei.',
    'sets-not-known': (p) =>
      de`Für ${p.article} lässt sich vor dem Auslegen nichts rechnen, denn es werden so viele Sätze, wie passen; unter „sets“ eine Zahl schreiben oder die Auslegung rechnen lassen.`,
    'no-price-leather': (p) =>
      de`Das Leder von ${p.name} hat keinen Preis, die Summen sind ohne es; einen Preis in die Hautdatei oder ein passendes Angebot in die Werkstattdatei schreiben.`,
    'no-price-thread': (p) =>
      de`Der Faden „${p.name}“ hat keinen Preis, die Summen sind ohne ihn; eine Länge mit Preis in den Auftrag oder einen Preis je m in die Werkstattdatei schreiben.`,
    'no-price-hardware': (p) =>
      de`Der Beschlag „${p.name}“ hat keinen Preis, die Summen sind ohne ihn; einen in den Auftrag oder einen Stückpreis in die Werkstattdatei schreiben.`,
    'no-price-liquid': (p) =>
      de`Die Flüssigkeit „${p.name}“ hat keinen Preis, die Summen sind ohne sie; einen Preis je L in die Werkstattdatei schreiben.`,
    'no-price-work': () =>
      'Eine Arbeitsstunde hat keinen Preis, die Summen sind ohne Arbeit; „hourlyRate“ in die Werkstattdatei schreiben.',
    'no-hours': (p) =>
      de`Niemand sagt, wie viele Arbeitsstunden „${p.article}“ braucht, der Preis ist ohne Arbeit; „hours“ in den Artikel schreiben.`,
    'card-leathers-differ': (p) =>
      de`${p.article} verlangt für das Leder ${p.leather} ${term(QUALITIES, p.what)} als ein Artikel davor; getrennt bestellen oder den Ledern eigene Namen geben.`,
    'article-not-in-layout': (p) =>
      de`In der Auslegung liegt kein Teil von ${p.article}, sie sagt also nichts über dessen Ausbeute; eine Auslegung angeben, in der es liegt.`,
    'article-not-all-laid': (p) =>
      de`Nicht ausgelegt: ${missing(p.count)} von ${p.article}; so sagt die Auslegung nichts über dessen Ausbeute. Erst ganz auslegen.`,
    'yield-not-cut-yet': (p) =>
      de`Von den Teilen von „${p.article}“ sind ${p.planned} von ${p.all} noch nicht als geschnitten abgehakt; das ist also die Ausbeute, wie ausgelegt wurde.`,
    'cost-not-all-laid': (p) =>
      de`Nicht ausgelegt: ${missing(p.count)} von „${p.article}“; der Preis ist ohne deren Leder.`,
  } satisfies Translation<typeof COSTING_SENTENCES>;
}
