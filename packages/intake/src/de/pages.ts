import type { German } from '@hidebound/leather/words-de';
import { term } from '@hidebound/leather/words-de';
import type { Sentence } from '../sentence.js';
import { WAYS } from './terms.js';

const BY = {
  'their marks': 'ihren Marken',
  'lines that go on': 'durchlaufenden Linien',
  'the grid': 'dem Raster',
};

/** Patterns on several pages, in German. */
export function pagesGerman({ de, count: counted }: German) {
  const one = (count: string | number | undefined): boolean => Number(count) === 1;
  const way = (word: string | number | undefined): string => term(WAYS, String(word));
  return {
    'pages-do-not-fit': ({ pages }) =>
      de`Die Seiten ${pages} passen nicht zusammen; mit einem Raster aus Spalten und Überlappung angeben, wie sie liegen, oder einzeln lesen.`,
    'pages-on-one-place': ({ pages }) =>
      de`Die Seiten ${pages} kommen auf ein und dieselbe Stelle; nur eine davon nehmen oder einzeln lesen.`,
    'grid-does-not-fit': ({ missed, pages }) =>
      de`Im angegebenen Raster ${one(missed) ? 'endet' : 'enden'} ${counted(missed, 'Linie', 'Linien')} am Rand einer Seite, ohne woanders weiterzugehen (Seiten ${pages}); Spalten, Reihenfolge und Überlappung nachsehen oder das Raster weglassen.`,
    'grid-without-columns': () =>
      'Ein Raster von Seiten braucht die Zahl seiner Spalten; angeben, wie viele Seiten nebeneinander liegen.',
    'grid-too-wide': ({ columns, pages }) =>
      de`Ein Raster von ${columns} Spalten ist breiter als die ${pages} Seiten; höchstens ${pages} Spalten angeben oder mehr Seiten nehmen.`,
    'no-shared-marks': () =>
      'Keine Marken wurden gefunden, die zwei Seiten gemeinsam haben; die Seiten nach ihren Linien oder in einem Raster zusammensetzen oder einzeln lesen.',
    'no-lines-over-edges': () =>
      'Keine Linien wurden gefunden, die von Seite zu Seite weitergehen; die Seiten nach Marken oder in einem Raster zusammensetzen oder einzeln lesen.',
    'too-many-pages-to-search': ({ pages, limit }) =>
      de`Die ${pages} Seiten sind mehr als die ${limit}, deren Platz sich herausfinden lässt; Spalten und Überlappung angeben oder weniger Seiten nehmen.`,

    'pages-joined': ({ count, how, pages }) =>
      de`${count} Seiten sind nach ${term(BY, String(how))} zusammengesetzt (Seiten ${pages}); Seite für Seite ansehen und angeben, wie sie liegen, wenn das nicht stimmt.`,
    'pages-apart': ({ count }) =>
      de`Nichts verbindet die ${count} Seiten, darum wird jede als eigene Zeichnung gelesen; Spalten und Überlappung angeben, wenn sie zusammengehören.`,
    'pages-in-groups': ({ groups }) =>
      de`Die Seiten ergeben ${groups} Ganze, die nichts verbindet, darum wird jedes für sich gelesen; Spalten und Überlappung angeben, wenn sie zusammengehören.`,
    'pages-left-out': ({ count, pages, reason }) =>
      de`${counted(count, 'Seite bleibt', 'Seiten bleiben')} weg, ${reason === 'blank' ? 'weil leer' : `weil nichts ${one(count) ? 'sie' : 'sie alle'} mit den anderen verbindet`} (${pages}).`,
    'pages-by-order': ({ count, pages }) =>
      de`${counted(count, 'Seite liegt', 'Seiten liegen')} dort, wo die Reihenfolge es nahelegt, denn keine Linie oder Marke verbindet sie mit den ersten (${pages}); nachsehen, ob das stimmt.`,
    'pages-alike': ({ pages }) =>
      de`Die Seiten ${pages} zeigen ein und dieselbe Zeichnung; nachsehen, ob eine Seite zweimal in der Datei ist, und dann nur eine nehmen.`,
    'pages-miss': ({ page, miss }) =>
      de`Wo Seite ${page} an ihre Nachbarn stößt, verfehlen sich Linien oder Marken um bis zu ${miss} mm; nachsehen, ob die Seiten richtig liegen.`,
    'page-ends-loose': ({ count, pages }) =>
      de`${counted(count, 'Linie ist', 'Linien sind')} am Rand einer Seite abgeschnitten, ohne woanders weiterzugehen (Seiten ${pages}); nachsehen, ob eine Seite fehlt.`,
    'overlap-found': ({ across, down }) =>
      de`Nach den Linien liegt das Papier der Nachbarn quer ${across} mm und längs ${down} mm übereinander.`,
    'overlap-not-found': () =>
      'Nichts sagt, wie weit Seiten übereinander liegen, darum gelten ihre Ränder als anstoßend; die Überlappung angeben, wenn das nicht stimmt.',
    'overlap-not-told': ({ way: along, taken, from, across, down, columns }) =>
      de`Nichts Gezeichnetes sagt, wie weit die Seiten ${way(along)} übereinander liegen, darum ${from === 'edges' ? de`gilt, dass sich ihr Inhalt dort berührt (${taken} mm Papier)` : de`gelten ${taken} mm Papier, wie ${along === 'down' ? 'quer' : 'längs'}`}; ein Teil nachmessen und es angeben, wenn das nicht stimmt (--columns ${columns} --overlap „${across} mm x ${down} mm“).`,
    'pitch-not-told': ({ way: along, pitch, taken, other, across, down, columns }) =>
      de`Gleiche Teile stehen ${pitch} mm auseinander, und nichts sagt, welche davon zwei Seiten beide zeigen: ${way(along)} passen Seiten mit ${taken} mm Papier übereinander so gut wie mit ${other} mm. Genommen sind ${taken} mm; die Teile zählen und die Überlappung angeben, wenn das nicht stimmt (--columns ${columns} --overlap „${across} mm x ${down} mm“).`,
    'pages-step-unevenly': ({ pages }) =>
      de`Die Seiten ${pages} liegen weiter oder weniger weit über ihren Nachbarn als die anderen Seiten; gleiche Teile in gleichem Abstand können in die Irre geführt haben. Ansehen und Spalten und Überlappung angeben, wenn sie falsch liegen.`,
    'page-furniture': ({ frames, marks, texts, signs }) => {
      const parts: readonly (readonly [number | string | undefined, string, string])[] = [
        [frames, 'Linie eines Rahmens', 'Linien von Rahmen'],
        [marks, 'Linie einer Marke', 'Linien von Marken'],
        [signs, 'Linie eines Zeichens von Hidebound selbst', 'Linien von Zeichen von Hidebound selbst'],
        [texts, 'Text', 'Texte'],
      ];
      const found = parts.filter(([count]) => Number(count ?? 0) > 0);
      return de`Weggelassen, weil zum Papier gehörig: ${found.map((part) => counted(...part)).join(', ')}.`;
    },
    'beyond-windows': ({ count }) =>
      de`${counted(count, 'Linie liegt', 'Linien liegen')} in den Rändern der Seiten, jenseits dessen, was das Schnittmuster zeigt, und ${one(count) ? 'bleibt' : 'bleiben'} weg.`,
    'lines-over-seams': ({ joints, lines }) =>
      de`Verbunden: ${counted(joints, 'Trennung', 'Trennungen')} am Rand von Seiten; ${counted(lines, 'Linie geht', 'Linien gehen')} über mehrere Seiten.`,
  } as const satisfies Readonly<Record<string, Sentence>>;
}
