import type { German } from '@hidebound/leather/words-de';
import { term } from '@hidebound/leather/words-de';
import type { Sentence } from '../sentence.js';
import { FILE_KINDS } from './terms.js';

const READINGS = {
  dpi: 'Die Auflösung (dpi)',
  scale: 'Der Maßstab',
  'known length': 'Die bekannte Länge',
};

const FAULTS = {
  'The outline has no area': 'Der Umriss umschließt keine Fläche',
  'The opening has no area': 'Das Loch umschließt keine Fläche',
  'The outline crosses itself here': 'Der Umriss schneidet sich hier selbst',
  'The opening crosses itself here': 'Der Rand des Lochs schneidet sich hier selbst',
  'This mark lies outside the outline': 'Dieses Zeichen liegt außerhalb des Umrisses',
};

const REMEDIES = {
  'draw it as a closed line around the leather': 'als geschlossene Linie um das Leder zeichnen',
  'pull the line apart in the drawing': 'die Linie in der Zeichnung auseinanderziehen',
  'move it onto the hide, or name it "ignore"': 'auf die Haut schieben oder „ignore“ nennen',
};

/** Files that can't be read, in German. */
export function refusalsGerman({ de }: German) {
  return {
    'absurd-coordinate': ({ metres, limit }) =>
      de`Ein Punkt liegt ${metres} m von der Ecke der Zeichnung; Schnittmuster reichen höchstens ${limit} m weit. Einheiten und Verschiebungen nachsehen.`,
    'bad-encoding': ({ encoding }) =>
      de`Der Text ist kein gültiges ${encoding}; die Zeichnung neu als UTF-8 sichern.`,
    'bad-number': ({ what }) =>
      de`Die Zahl in „${what}“ ist keine endliche; das Element neu zeichnen oder die Zahl richtigstellen.`,
    'bad-reading': ({ name, value }) =>
      de`${term(READINGS, String(name))} ist mit ${value} angegeben; eine Zahl über 0 angeben.`,
    'binary-file': ({ what }) =>
      de`Das ist ${term(FILE_KINDS, String(what))}, keine Zeichnung, die sich hier lesen lässt; als einfaches SVG exportieren (ein Schnittmuster auch als PDF oder DXF).`,
    'compressed-file': () => 'Das ist ein gepacktes SVG (svgz); als einfaches, ungepacktes SVG sichern.',
    'empty-file': () => 'Die Datei ist leer; die Zeichnung neu sichern.',
    'entity-bomb': ({ name }) =>
      de`Der Textbaustein „${name}“ wächst ohne Ende oder viel zu groß; die Zeichnung als einfaches SVG sichern, ohne Textbausteine.`,
    'external-entity': ({ name }) =>
      de`Der Textbaustein „${name}“ verlangt eine andere Datei, und geholt wird nie etwas; die Zeichnung als einfaches SVG sichern, alles in einer Datei.`,
    'known-length-missing': ({ element }) =>
      de`Keine gezeichnete Linie heißt „${element}“, darum sagt ihre bekannte Länge nichts; eine Linie dieser Datei nennen, nach Kennung oder Beschriftung.`,
    'no-outline': () =>
      'Kein Umriss der Haut wurde gefunden; als eine geschlossene Linie zeichnen und sie oder ihre Ebene „outline“ nennen.',
    'bad-hide': ({ what, remedy }) => de`${term(FAULTS, String(what))}; ${term(REMEDIES, String(remedy))}.`,
    'not-svg': ({ root }) =>
      root === undefined
        ? 'Das ist keine Zeichnung, die sich hier lesen lässt; als einfaches SVG exportieren (ein Schnittmuster auch als PDF oder DXF).'
        : de`Die Datei enthält <${root}>, keine SVG-Zeichnung; als einfaches SVG exportieren (ein Schnittmuster auch als PDF oder DXF).`,
    // What the reader of XML says of it has no German.
    'not-well-formed': () =>
      'Ab dieser Zeile ist das XML kaputt; die Zeichnung in dem Programm, aus dem sie kommt, neu sichern.',
    'path-too-long': ({ limit }) =>
      de`Hier sind mehr als ${limit} Strecken, weit mehr, als ein Umriss braucht; die Linie im Zeichenprogramm vereinfachen.`,
    'too-deep': ({ limit }) =>
      de`Gruppen sind mehr als ${limit}-fach geschachtelt; die Gruppierung aufheben und neu sichern.`,
    'too-large': ({ megabytes, limit }) =>
      de`Die Datei hat ${megabytes} MB; ein Schnittmuster hat höchstens ${limit} MB. Bilder und verborgene Ebenen herausnehmen.`,
    'too-many-elements': ({ limit }) =>
      de`Die Zeichnung hat mehr als ${limit} Elemente; auf mehrere Dateien verteilen.`,
    'too-many-clones': ({ limit }) =>
      de`Klone von Klonen würden mehr als ${limit} Elemente zeichnen; im Zeichenprogramm auflösen.`,
    'truncated-file': () => 'Die Datei hört mitten in der Zeichnung auf; noch einmal kopieren oder sichern.',
    'use-cycle': ({ target }) => de`Der Klon ${target} enthält sich selbst; im Zeichenprogramm auflösen.`,
  } as const satisfies Readonly<Record<string, Sentence>>;
}
