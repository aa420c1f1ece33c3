import type { German } from '@hidebound/leather/words-de';
import { term } from '@hidebound/leather/words-de';
import type { Sentence } from '../sentence.js';

const HINTS = {
  ' (a hint in its header is for inches)': ' (ein Hinweis im Kopf der Datei spricht für Zoll)',
  ' (a hint in its header is for metric units)':
    ' (ein Hinweis im Kopf der Datei spricht für metrische Einheiten)',
};
const UNITS = {
  inches: 'Zoll',
  feet: 'Fuß',
  microinches: 'Mikrozoll',
  mils: 'Tausendstel Zoll',
  yards: 'Yard',
  microns: 'µm',
};

/** DXF files, in German. */
export function dxfGerman({ de, figures }: German) {
  const unit = (name: string | number | undefined): string => term(UNITS, String(name));
  return {
    'dxf-binary': () => 'Das ist ein DXF in binärer Form; als DXF in Textform (ASCII) exportieren.',
    'dxf-is-dwg': ({ version }) =>
      de`Das ist eine DWG-Datei (${version}), die nur ihre eigenen Programme lesen können; die Zeichnung als DXF in Textform (ASCII) exportieren.`,
    'dxf-truncated': () =>
      'Die Datei hört mitten in der Zeichnung auf; noch einmal kopieren oder exportieren.',
    'dxf-bad-pair': ({ text }) =>
      de`Hier wird ein Gruppencode erwartet, eine ganze Zahl in einer eigenen Zeile, nicht „${text}“; die Zeichnung neu exportieren.`,
    'dxf-no-entities': () =>
      'Die Datei enthält keine Elemente, also ist nichts gezeichnet; die Zeichnung neu als DXF exportieren.',
    'dxf-block-cycle': ({ block }) =>
      de`Der Block „${block}“ enthält sich selbst; im Zeichenprogramm auflösen und neu exportieren.`,
    'dxf-too-many-inserted': ({ limit }) =>
      de`Blöcke in Blöcken würden mehr als ${limit} Elemente zeichnen; auflösen oder weniger Kopien zeichnen.`,
    'dxf-no-units': ({ mm, inches, hint }) =>
      de`Die Zeichnung nennt ihre Einheit nicht: Sie ist ${figures(String(mm))} breit, wenn es mm sind, ${figures(String(inches))}, wenn es Zoll sind${term(HINTS, String(hint))}; angeben, welche es ist.`,

    'dxf-no-end': () =>
      'Die Datei hat kein Endzeichen, ihre Zeichnung ist aber vollständig; fehlt etwas, neu exportieren.',
    'dxf-units-disagree': ({ header, pieces }) =>
      de`Im Kopf steht ${unit(header)}, im Text der Teile selbst ${unit(pieces)}; es gilt der Kopf. Eine bekannte Länge nachmessen.`,
    'dxf-curves-through-points': ({ count }) =>
      Number(count) === 1
        ? de`Von ${1} Bogen gibt die Datei nur Punkte darauf; was dazwischen gezeichnet ist, ist geraten. Mit seinen Kontrollpunkten exportieren oder mit der Zeichnung vergleichen.`
        : de`Von ${count} Bögen, der erste hier, gibt die Datei nur Punkte darauf; was dazwischen gezeichnet ist, ist geraten. Mit ihren Kontrollpunkten exportieren oder mit der Zeichnung vergleichen.`,
    'dxf-pieces-apart': ({ count }) =>
      de`${count} Teile liegen in der Datei übereinander, wie Schnittprogramme sie schreiben, und werden auseinandergelegt.`,
    'dxf-quantity': ({ value }) =>
      de`Die Stückzahl „${value}“ lässt sich nicht lesen und bleibt weg; es sollte eine Zahl sein, oder zwei für links und rechts („1,1“).`,
    'dxf-point-off-boundary': () =>
      'Die Kerbe ist ein Punkt abseits des Randes, darum sagt nichts, wo sie schneidet; auf den Rand schieben.',
  } as const satisfies Readonly<Record<string, Sentence>>;
}
