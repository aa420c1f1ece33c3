import type { German } from '@hidebound/leather/words-de';
import { CUTS, cutShort, term } from '@hidebound/leather/words-de';
import type { Sentence } from '../sentence.js';
import { LEFT_OUT, TAKEN_FOR } from './terms.js';

const SIDES = { width: 'Die Breite', height: 'Die Höhe' };

/** Size and structure of drawings, in German. */
export function structureGerman({ de, count: counted }: German) {
  return {
    'bad-view-box': ({ value }) =>
      de`Die viewBox „${value}“ lässt sich nicht lesen und bleibt weg; es sollten vier Zahlen sein, die letzten zwei über 0.`,
    'bad-size': ({ name, value }) =>
      de`${term(SIDES, String(name))} „${value}“ lässt sich nicht lesen und bleibt weg; es sollte eine Länge wie „300mm“ sein.`,
    'dpi-without-effect': () =>
      'Die Zeichnung nennt ihre Größe in echten Einheiten, darum ändern Pixel je Zoll nichts; weglassen oder einen Maßstab angeben.',
    'other-resolution': ({ dpi, now, then }) =>
      de`Die Zeichnung sieht aus, als wäre sie mit ${dpi} Pixeln je Zoll gemacht: Ihr größtes Teil misst jetzt ${now} mm und wäre ${then} mm groß; wenn das stimmt, mit ${dpi} dpi lesen.`,
    'bad-transform': ({ value }) =>
      de`Die Verschiebung „${value}“ lässt sich nicht lesen und bleibt weg; nachsehen, wo das Element liegt.`,
    'flat-transform': () =>
      'Seine Verschiebung drückt alles zu einer Linie zusammen, darum wird nichts davon gezeichnet.',
    'nothing-drawn': () => 'Die ganze Zeichnung ist verborgen; sichtbar machen und neu sichern.',
    'broken-path': ({ character }) =>
      de`Die Daten der Linie sind ab Zeichen ${character} nicht zu lesen; was davor steht, bleibt. Das Ende der Linie nachsehen.`,
    'left-out': ({ reason, count, elements }) =>
      de`Weggelassen, ${term(LEFT_OUT, String(reason))}: ${counted(count, 'Element', 'Elemente')} (${inLinesGerman(elements)}).`,
  } as const satisfies Readonly<Record<string, Sentence>>;
}

/** "<path> in line 12 and 3 more". */
function inLinesGerman(elements: string | number | undefined): string {
  return cutShort(String(elements).replace(/ in line (\d+)/g, ' in Zeile $1'));
}

/** Lines and pieces, in German. */
export function patternsGerman({ de, count: counted }: German) {
  const one = (count: string | number | undefined): boolean => Number(count) === 1;
  return {
    'lettering-left-out': ({ count, rows }) =>
      de`Für Schrift gehalten und weggelassen: ${counted(count, 'kleiner gefüllter Umriss', 'kleine gefüllte Umrisse')} in ${counted(rows, 'Reihe', 'Reihen')}, der erste hier; eine Regel mit der Rolle „cut“ oder „cut-out“ für Beschriftung oder Farbe sagt es anders.`,
    'lines-joined': ({ from, to }) =>
      de`${counted(from, 'offene Linie', 'offene Linien')}, deren Enden sich auf 0,1 mm treffen, wurden zu ${counted(to, 'Linie', 'Linien')}.`,
    'piece-in-opening': () =>
      'Ein Umriss innerhalb eines Ausschnitts gilt als eigenes Teil; „ignore“ nennen, wenn es keines ist.',
    'too-small-for-a-piece': ({ area }) =>
      de`Ein Umriss von ${area} mm² außerhalb aller Teile ist zu klein für ein Teil und bleibt weg; innerhalb eines Teils oder größer zeichnen.`,
    'holes-outside-pieces': ({ count, most }) =>
      de`${counted(count, 'Kreis', 'Kreise')} von höchstens ${most} mm ${one(count) ? 'liegt' : 'liegen'} in keinem Teil und ${one(count) ? 'bleibt als Loch' : 'bleiben als Löcher'} weg; „cut“ nennen, wenn ${one(count) ? 'es ein Teil ist' : 'es Teile sind'}.`,
    'dashed-outline-as-cut': ({ element }) =>
      de`Der gestrichelte Umriss ${inLinesGerman(element)} liegt in keinem anderen und gilt als Schnittlinie; Schnittlinien durchgezogen zeichnen oder nach ihrer Rolle benennen.`,
    'inner-outline-as-stitch': ({ share }) =>
      de`Eine geschlossene Linie innerhalb eines Teils, ${share} % seiner Fläche, gilt als Nahtlinie; „cut-out“ nennen, wenn es ein Ausschnitt ist.`,
    'holes-as-stitch-line': ({ rows, holes }) =>
      de`${counted(holes, 'kleines Loch', 'kleine Löcher')} in ${counted(rows, 'Reihe', 'Reihen')} wurden zu Nahtlinien durch ihre Mitten.`,
    'role-guessed': ({ pieces, role, count }) =>
      de`${counted(count, 'Linie ohne Rolle gilt', 'Linien ohne Rolle gelten')} als ${term(TAKEN_FOR, String(role))} (${cutShort(String(pieces))}); die Ebene oder die Linie benennen, um es anders zu sagen.`,
    'outline-crosses-itself': ({ piece }) =>
      de`Die Schnittlinie von „${piece}“ schneidet sich hier selbst; die Linie in der Zeichnung auseinanderziehen.`,
    'direction-not-drawn': ({ count, pieces }) =>
      de`${counted(count, 'Teil hat', 'Teile haben')} keinen Richtungspfeil, darum gilt die lange Achse (${cutShort(String(pieces))}); eine Linie namens „direction“ zum Schwanz hin zeichnen, um es anders zu sagen.`,
    'several-directions': ({ piece }) =>
      de`„${piece}“ hat mehrere Richtungslinien, die längste gilt; nur eine behalten.`,
    'closed-direction': () =>
      'Das Richtungszeichen ist ein geschlossener Umriss ohne Enden; eine Linie vom Kopf zum Schwanz zeichnen.',
    'open-cut-line': ({ gap }) =>
      de`Die Schnittlinie ist offen: Ihre Enden liegen ${gap} mm auseinander; schließen oder auf 0,1 mm zusammenbringen.`,
    'open-face-line': ({ gap }) =>
      de`Der Rand der Sichtfläche ist offen: Seine Enden liegen ${gap} mm auseinander; schließen.`,
    'punch-without-diameter': () =>
      'Ein Loch wird als Kreis seines Durchmessers gezeichnet; dieses Zeichen ist kein Kreis und bleibt weg.',
    'notch-off-the-edge': () => 'Die Kerbe beginnt nicht an der Schnittlinie; dorthin schieben.',
    'lines-outside-pieces': ({ count, elements }) =>
      de`${counted(count, 'Linie liegt', 'Linien liegen')} in keinem Teil und ${one(count) ? 'bleibt' : 'bleiben'} weg (${inLinesGerman(elements)}); den Umriss darum schließen oder „ignore“ nennen.`,
    'name-used-twice': ({ name, unique }) =>
      de`Noch ein Teil heißt „${name}“, darum heißt dieses „${unique}“; jedem einen eigenen Namen geben.`,
    'text-too-long-for-name': ({ count, pieces, limit }) =>
      de`Der Text in ${one(count) ? de`${count} Teil` : de`${count} Teilen`} hat mehr als ${limit} Buchstaben, zu viele für einen Namen, darum eine Nummer (${cutShort(String(pieces))}); einen kurzen Namen hineinschreiben.`,
    'bad-data-number': ({ name, value }) =>
      de`In ${name} steht „${value}“, das ist keine ganze Zahl und bleibt weg.`,
    'no-pieces': () => 'Kein Teil wurde gefunden; jedes Teil braucht eine geschlossene Schnittlinie.',
  } as const satisfies Readonly<Record<string, Sentence>>;
}

const AREAS = { opening: 'Das Loch', zone: 'Die Partie' };

/** Traced hides, in German. */
export function hidesGerman({ de, count: counted }: German) {
  return {
    'outline-guessed': () =>
      'Keine Linie heißt „outline“, darum gilt die größte geschlossene als Rand der Haut; benennen, um sicherzugehen.',
    'several-outlines': () =>
      'Mehrere geschlossene Linien heißen „outline“, die größte gilt; die anderen nach dem benennen, was sie sind.',
    'several-backbones': () => 'Mehrere Linien heißen „backbone“, die längste gilt; nur eine behalten.',
    'hide-cut-guessed': ({ cut }) =>
      de`Nach der Zeichnung ist das vermutlich: ${term(CUTS, String(cut))}; mit data-cut am svg-Element lässt es sich anders sagen.`,
    'flaw-without-kind': () =>
      'Der Fehler sagt weder, was er ist, noch, was er bewirkt, darum wird von dort nichts geschnitten; benennen, etwa „flaw scar“ oder „flaw hidden“.',
    'zone-without-kind': () =>
      'Die Partie sagt nicht, welche sie ist, und bleibt weg; benennen, etwa „zone belly“.',
    'open-area-line': ({ what }) =>
      de`${term(AREAS, String(what))} ist als offene Linie gezeichnet und bleibt weg; schließen.`,
    'unnamed-marks': ({ count, elements }) =>
      de`${counted(count, 'Linie sagt', 'Linien sagen')} nicht, was sie ${Number(count) === 1 ? 'ist, und bleibt' : 'sind, und bleiben'} weg (${inLinesGerman(elements)}); die Ebene oder die Linie benennen.`,
    'reading-without-number': () =>
      'Die Stärkemessung hat keine Zahl und bleibt weg; benennen wie „thickness 2.4“, in mm.',
    'bad-mark-number': ({ name, value }) =>
      de`In ${name} steht „${value}“, das ist keine passende Zahl über 0 und bleibt weg.`,
    'bad-hide-data': ({ name, value }) =>
      de`In ${name} steht „${value}“, das lässt sich nicht lesen und bleibt weg.`,
  } as const satisfies Readonly<Record<string, Sentence>>;
}
