import type { STOCK_SENTENCES } from '../stock.js';
import type { German, Translation } from './say.js';

/** What can be wrong with a stock of hides and its journal, in German. */
export function stockGerman({ de }: German) {
  return {
    'journal-finished': (p) =>
      de`Laut Lagerbuch sind ${p.finished} seiner ${p.entries} Einträge fertig; nur der letzte kann unfertig sein. Es fehlen Einträge, oder „finished“ stimmt nicht.`,
    'journal-change': (p) =>
      de`Die Änderung von ${p.file} sagt weder, wie die Datei war, noch, wie sie wurde; eines davon muss da stehen.`,

    'stock-not-in': (p) =>
      de`Ausgelegt ist auf Haut ${p.hide}, die nicht in diesem Lager ist; ihre Hautdatei in den Ordner legen oder den richtigen Ordner nehmen.`,
    'stock-id-twice': (p) =>
      de`${p.first} und ${p.second} geben sich beide als Haut ${p.hide} aus; einer eine andere Kennung geben oder die Kopie wegnehmen.`,
    'stock-already-cut': (p) =>
      de`Haut ${p.hide} ist schon zerschnitten, davon lässt sich nichts mehr nehmen; auf dem Rest neu auslegen.`,
    'stock-cut-by-step': (p) =>
      de`Haut ${p.hide} wurde schon am ${p.date} mit ${p.layout} zerschnitten (Schritt ${p.number}); war das ein Versehen, zuerst diesen Schritt zurücknehmen.`,
    'stock-hide-changed': (p) =>
      de`Haut ${p.hide} (${p.file}) wurde nach der Auslegung geändert, ihr Rest ist darum nicht bekannt; neu auslegen.`,
    'stock-nothing-laid': () =>
      'Kein Teil dieser Auslegung liegt auf einer Haut, also ist nichts zu entnehmen; die Auslegung angeben, nach der geschnitten wurde.',
    'stock-offcuts-differ': (p) =>
      de`Die Reststücke, die die Auslegung für Haut ${p.hide} nennt, sind nicht, was ihre Teile übrig lassen; neu auslegen oder die Auslegung aus einer guten Kopie wiederherstellen.`,
    'stock-layout-not-proven': (p) =>
      de`Die Auslegung bricht ${p.faults === 1 ? 'eine Regel' : de`${p.faults} Regeln`}, ohne dass es jemand hingenommen hat; „hidebound check“ nennt sie. Das Leder wird trotzdem entnommen.`,
    'stock-nothing-to-undo': () => 'Aus diesem Lager wurde nichts entnommen, das nicht schon zurückliegt.',
    'stock-no-such-step': (p) =>
      p.last === 0
        ? de`Einen Schritt ${p.number} gibt es nicht: Aus diesem Lager wurde noch nichts entnommen.`
        : de`Einen Schritt ${p.number} gibt es nicht; die Schritte gehen von 1 bis ${p.last}.`,
    'stock-undone-already': (p) =>
      de`Schritt ${p.number} ist schon zurückgenommen oder selbst eine Rücknahme.`,
    'stock-offcut-cut-since': (p) =>
      de`Schritt ${p.number} lässt sich nicht zurücknehmen: Reststück ${p.offcut} daraus wurde in Schritt ${p.by} geschnitten; zuerst diesen zurücknehmen.`,
    'stock-offcut-marked-cut': (p) =>
      de`Schritt ${p.number} lässt sich nicht zurücknehmen: Reststück ${p.offcut} daraus gilt als zerschnitten; das Leder ist nicht mehr ganz.`,
    'stock-offcut-gone': (p) =>
      de`Schritt ${p.number} lässt sich nicht zurücknehmen: Reststück ${p.offcut} (${p.file}) ist nicht mehr im Lager; zuerst seine Datei zurücklegen.`,
    'stock-hide-gone': (p) =>
      de`Schritt ${p.number} lässt sich nicht zurücknehmen: Haut ${p.hide} (${p.file}) ist nicht mehr im Lager; zuerst ihre Datei zurücklegen.`,
    'stock-in-the-way': (p) =>
      de`Schritt ${p.number} wurde unterbrochen und ${p.file} seither geändert; diese Datei aus dem Ordner nehmen, noch einmal versuchen und die beiden vergleichen.`,
    'stock-kept-missing': (p) =>
      de`Was Schritt ${p.number} aus ${p.file} macht, liegt nicht mehr so in „stock.kept“, wie es geschrieben wurde; diesen Ordner aus einer Kopie zurückholen.`,
    'stock-completed': (p) =>
      de`Schritt ${p.number} vom ${p.date} war unterbrochen; jetzt ist er abgeschlossen.`,
    'stock-says-whole': (p) =>
      de`Laut Lagerbuch wurde Haut ${p.hide} am ${p.date} zerschnitten (Schritt ${p.number}), ihre Datei sagt seither anderes; sie gilt als zerschnitten.`,
    'stock-shape-changed': (p) =>
      de`Die Form des Reststücks ${p.offcut} ist nicht mehr, was Schritt ${p.number} von seiner Haut übrig ließ; es wurde seither neu gezeichnet.`,
    'stock-file-gone': (p) =>
      de`Reststück ${p.offcut} aus Schritt ${p.number} hat keine Datei mehr (${p.file}); ist es nicht verbraucht, die Datei zurücklegen.`,
    'stock-no-such-piece': (p) => de`Ein Teil „${p.piece}“ gibt es hier nicht; es gibt ${p.known}.`,
    'stock-piece-of-several': (p) =>
      de`Mehrere Artikel haben ein Teil „${p.piece}“ (${p.articles}); den Artikel dazu nennen.`,
    'stock-broken-file': (p) =>
      de`${p.file} bleibt weg, denn die Datei lässt sich nicht lesen: ${p.problem.replace(/\.$/, '')}.`,
    'stock-too-many': (p) =>
      de`In diesem Ordner sind ${p.count} Hautdateien, höchstens ${p.most} werden gelesen; das Lager auf mehrere Ordner verteilen.`,
  } satisfies Translation<typeof STOCK_SENTENCES>;
}
