import type { German } from '@hidebound/leather/words-de';
import { term } from '@hidebound/leather/words-de';
import type { Sentence } from '../sentence.js';

const SIZE_SIGNS = {
  rules: 'den Regeln des Auftrags',
  blocks: 'dem, was ihre Blöcke sagen',
  names: 'ihren Namen',
  layers: 'den Namen ihrer Ebenen',
};

/** What was unfolded, taken for a size or an allowance, or repaired, in German. */
export function repairsGerman({ de, count: counted }: German) {
  const inZeile = (element: string | number | undefined): string =>
    String(element).replace(/ in line (\d+)/g, ' in Zeile $1');
  return {
    unfolded: ({ piece, by, width, height }) =>
      de`„${piece}“ ist als Hälfte gezeichnet und wird an ${by === 'text' ? 'dieser Kante' : 'der Spiegellinie'} aufgeklappt; das Ganze misst ${width} × ${height} mm.`,
    'unfolded-by-text': ({ piece, text, length }) =>
      de`„${piece}“ trägt die Worte „${text}“, darum wird es an der geraden Kante daneben aufgeklappt, ${length} mm lang; eine Linie namens „mirror“ an eine andere Kante zeichnen, wenn es nicht diese ist, oder „unfold: false“ in den Auftrag schreiben.`,
    'half-unclear': ({ piece, text }) =>
      de`„${piece}“ trägt die Worte „${text}“ und scheint eine Hälfte zu sein, an welcher Kante, ist aber nicht klar; eine Linie namens „mirror“ auf die Bruchkante zeichnen oder einer solchen Linie im Auftrag die Rolle „mirror“ geben.`,
    'half-left': ({ piece }) =>
      de`„${piece}“ hat eine Spiegellinie und bleibt eine Hälfte, wie der Auftrag es will.`,
    'already-whole': ({ piece }) =>
      de`Neben der Spiegellinie von „${piece}“ liegen schon beide Hälften, darum wird nichts aufgeklappt.`,
    'mirror-line-inside': ({ piece }) =>
      de`Die Spiegellinie liegt innerhalb von „${piece}“, dessen Seiten nicht gleich sind, und bleibt weg; zum Aufklappen auf eine gerade Kante zeichnen, oder „fold“ nennen.`,
    'mirror-line-bent': () => 'Eine Spiegellinie ist eine gerade Linie; diese ist keine und bleibt weg.',
    'several-mirrors': ({ piece }) =>
      de`„${piece}“ hat mehr Spiegellinien, als eine Hälfte oder ein Viertel haben kann, die übrigen bleiben weg; eine behalten, oder zwei im rechten Winkel.`,
    'line-over-fold': ({ piece, count }) =>
      de`${counted(count, 'Linie', 'Linien')} von „${piece}“ ${Number(count) === 1 ? 'reicht' : 'reichen'} über die Spiegellinie und ${Number(count) === 1 ? 'wird' : 'werden'} trotzdem verdoppelt; Linien an der Spiegellinie enden lassen.`,
    'direction-askew': ({ piece }) =>
      de`Der Richtungspfeil von „${piece}“ liegt weder längs noch quer zur Spiegellinie und bleibt wie gezeichnet; für beide Hälften sagt er dasselbe.`,
    'sizes-found': ({ sizes, by }) =>
      de`Die Datei enthält mehrere Größen (${sizes}), unterschieden nach ${term(SIZE_SIGNS, String(by))}; der Name eines Teils endet mit seiner Größe.`,
    'too-many-sizes': ({ count, lines }) =>
      de`Die Datei nennt ${count} verschiedene Größen und hat ${counted(lines, 'Linie', 'Linien')} ohne Größe, mehr, als auseinandergehalten werden; gelesen wird sie, als nennte sie keine. Die Größen im Auftrag unterscheiden („sizes“) oder die Datei aufteilen.`,
    'dashes-gathered': ({ dashes, lines }) =>
      de`${counted(dashes, 'einzeln gezeichneter Strich', 'einzeln gezeichnete Striche')} wurden zu ${counted(lines, 'gestrichelten Linie', 'gestrichelten Linien')}.`,
    allowance: ({ element, width }) =>
      de`${inZeile(element)} läuft ringsum ${width} mm innerhalb der Schnittlinie, darum gilt sie als Nahtlinie mit einer Zugabe von ${width} mm; die Rolle „fold“ geben, wenn die Kante dort umgebugt wird, oder „cut-out“, wenn es ein Ausschnitt ist.`,
    'looks-graded': ({ count }) =>
      de`${count} Umrisse von einer Form liegen ineinander, jeder anders gezeichnet, sie sehen also nach Größen aus; im Auftrag sagen, welche Farbe, Strichart oder Ebene welche Größe ist („sizes“), sonst gelten alle außer dem größten als Linien darin.`,
    'loops-removed': ({ count, most }) =>
      de`Abgeschnitten, wo die Linie sich selbst schneidet: ${counted(count, 'winzige Schlinge', 'winzige Schlingen')} in Umrissen, höchstens ${most} mm groß; die Liste des Ausgebesserten nennt jede Stelle.`,
    'curves-fitted': ({ count, most }) =>
      de`Wieder zu Bögen geworden: ${counted(count, 'Folge', 'Folgen')} kurzer Linien oder Kurven, die auf einem Kreis liegen, nirgends mehr als ${most} mm neben dem Gezeichneten.`,
  } as const satisfies Readonly<Record<string, Sentence>>;
}
