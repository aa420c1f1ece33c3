import type { FILE_SENTENCES } from '../files.js';
import { expectedGerman } from './expected.js';
import { foundGerman } from './found.js';
import type { German, Translation } from './say.js';
import { joined, nearHint, term } from './terms.js';

/** Formats of files by the word in their first line. */
const FORMATS = {
  hide: 'eine Hautdatei',
  order: 'eine Auftragsdatei',
  layout: 'eine Auslegungsdatei',
  article: 'eine Artikeldatei',
  workshop: 'eine Werkstattdatei',
  'photo-hints': 'eine Datei mit Angaben zu Fotos',
  job: 'eine Datei mit einem ganzen Auftrag',
  'stock-journal': 'ein Lagerbuch',
  'reference-sheets': 'eine Datei der gedruckten Maßblätter',
};

const LINES = {
  'the outline': 'des Umrisses',
  'the backbone': 'der Rückenlinie',
  opening: 'des Lochs',
  flaw: 'des Fehlers',
  zone: 'der Partie',
  'tightness stroke': 'des Strichs für die Zugrichtung',
  'unsure edge': 'des unsicheren Randes',
};

const COUNTED = { flaws: 'Fehler', zones: 'Partien' };
const UNITS = { degrees: 'Grad', m2: 'm²' };
const STRAPS = {
  'its slot ends beyond the strap': 'Sein Schlitz endet jenseits des Riemens',
  'its row of holes is longer than the strap': 'Seine Lochreihe ist länger als der Riemen',
};
const SOURCES = { 'no shape': 'keine Form' };

/** The line that a sentence is about, after "Die Linie": "flaw 3" is „des Fehlers 3“. */
function lineGerman(what: string): string {
  const [, kind = what, name] = /^(flaw|zone|opening|tightness stroke|unsure edge) (.*)$/s.exec(what) ?? [];
  return [term(LINES, kind), ...(name === undefined ? [] : [name])].join(' ');
}

/** "Hide "7"", "Copy 1 of piece "front" in set 2 of "bag"", as a layout's reader says it. */
function entryGerman(what: string): string {
  return what
    .replace(/^Hide /, 'Haut ')
    .replace(/^The id /, 'Die Kennung ')
    .replace(/^Piece (.*) of article /, 'Teil $1 des Artikels ')
    .replace(
      /^Copy (\d+)( \(mirrored\))? of piece (.*) in set (\d+) of /,
      (_, copy: string, mirrored: string | undefined, piece: string, set: string) =>
        `Stück ${copy}${mirrored === undefined ? '' : ' (gespiegelt)'} des Teils ${piece} in Satz ${set} von `,
    );
}

/** What can be wrong with a file or a quantity, in German. Values come in already quoted. */
export function filesGerman({ de, figures }: German) {
  const aKind = (kind: string): string => term(FORMATS, kind);
  return {
    'too-large': (p) =>
      de`Die Datei hat ${p.sizeMb} MB Text, höchstens ${p.limitMb} MB werden gelesen; aufteilen oder nachsehen, ob es die richtige ist.`,
    'empty-file': (p) => de`Die Datei ist leer; sie sollte mit einer Zeile „format: ${p.format}“ beginnen.`,
    'not-json': (p) =>
      de`Ab hier ist der Text kein JSON mehr: Da steht ${foundGerman(p.found)}, erwartet wird ${expectedGerman(p.wanted)}.`,
    'cut-off': () =>
      'Die Datei bricht hier mitten im Text ab, sie wurde also nicht ganz gespeichert oder kopiert; hole sie noch einmal von dort, wo sie herkam.',
    // What the reader of YAML says of it has no German.
    'not-yaml': () =>
      'Ab dieser Zeile lässt sich der Text nicht als YAML lesen; Einrückung und Anführungszeichen dieser und der vorigen Zeile nachsehen.',
    'several-documents': () =>
      'Die Datei enthält mehrere Dokumente, getrennt durch „---“; nur eines behalten, ohne solche Zeile dazwischen.',
    'too-deep': (p) =>
      de`Im Text sind Listen und Gruppen mehr als ${p.limit} Stufen tief geschachtelt; keine Datei dieser Art braucht das.`,
    'too-many-aliases': (p) =>
      de`Im Text werden Teile durch „*“ mehr als ${p.limit}-mal wiederholt; die Teile ausschreiben.`,
    'duplicate-key': (p) =>
      de`Der Schlüssel ${p.key === 'on this line' ? 'in dieser Zeile' : p.key} steht zweimal in derselben Gruppe; einen davon behalten.`,
    'reserved-key': (p) =>
      de`Der Schlüssel ${p.key} lässt sich nicht als Name verwenden; einen anderen wählen.`,
    'not-a-group': (p) =>
      de`Die Datei enthält ganz oben ${foundGerman(p.found)}, wo eine Gruppe von Schlüsseln mit einer Formatzeile stehen sollte.`,

    'format-missing': (p) =>
      de`Die Formatzeile fehlt; „format: ${p.format}“ als erste Zeile schreiben, wenn es so eine Datei ist.`,
    'format-strange': (p) =>
      de`In der Formatzeile steht ${foundGerman(p.found)}, das ist kein Format von Hidebound; dort sollte ${p.format} stehen.`,
    'format-other': (p) =>
      de`Das ist ${aKind(p.found)}, gebraucht wird hier aber ${aKind(p.format)}; die andere Datei nehmen.`,
    'format-newer': (p) =>
      de`Die Datei stammt von einem neueren Hidebound (${p.found}); dieses liest bis ${p.newest}. Zum Öffnen das neuere installieren.`,

    'area-reversed': (p) =>
      de`${p.found} läuft von mehr zu weniger; die Fläche von der kleineren zur größeren schreiben, etwa „20-22 ft2“.`,
    'workshop-row-stale': (p) =>
      de`In „${p.topic}“ wurde die Zeile „${p.name}“ aus den eingebauten Werten ausgeschrieben, und die lauten jetzt anders; die eigene zählt. „hidebound workshop --topic ${p.topic}“ zeigt die neue.`,
    'no-such-figure': (p) =>
      de`Einen Wert ${p.found} gibt es nicht.${nearHint(p.near)} „hidebound workshop“ zählt alle auf.`,
    'figure-unit': (p) =>
      de`Der Wert ${p.figure} steht in ${p.unit}, nicht in ${p.found}; in ${p.unit} angeben.`,
    'figure-reversed': (p) =>
      de`Der Wert ${p.figure} läuft von ${p.from} bis ${p.to}; den kleineren als „from“ schreiben.`,
    'offer-unknown': (p) =>
      de`Das Angebot nennt ${term({ cut: 'die Art der Haut', grade: 'die Sorte' }, p.what)} ${p.found}, die in der Tabelle fehlt (${p.known}); dort ergänzen oder eine andere nennen.`,
    'unknown-key': (p) =>
      de`Der Schlüssel ${p.key} ist hier nicht bekannt.${nearHint(p.near)} Bekannt sind: ${p.known}.`,
    'missing-file': (p) =>
      de`Im Auftrag fehlt die Datei „${p.file}“, oder sie lässt sich nicht lesen; hinzufügen oder aus dem Auftrag nehmen.`,
    'missing-key': (p) => de`Der Schlüssel „${p.key}“ fehlt; gebraucht wird ${expectedGerman(p.right)}.`,
    'wrong-value': (p) => de`Hier steht ${foundGerman(p.found)}, gebraucht wird ${expectedGerman(p.right)}.`,

    'bad-length': (p) =>
      de`${p.found} ist keine Länge; Millimeter als bloße Zahl schreiben (40) oder eine Zahl mit Einheit in Anführungszeichen („4 cm“, „1 1/2 in“).`,
    'bad-angle': (p) => de`${p.found} ist kein Winkel; Grad als bloße Zahl schreiben (90) oder „90 deg“.`,
    'bad-thickness': (p) =>
      de`${p.found} ist keine Stärke; Millimeter als bloße Zahl schreiben (2), eine Spanne („2.0-2.4 mm“) oder Unzen („4-5 oz“).`,
    'ambiguous-ounces': (p) =>
      de`${p.found} lässt sich auf zwei Arten lesen: als ${p.from} bis ${p.to} oz oder als ${p.ounces} oz; für das Erste „${p.from}-${p.to} oz“ schreiben, für das Zweite „${p.ounces} oz“.`,
    'bad-area': (p) =>
      de`${p.found} ist keine Fläche; eine Zahl mit Einheit schreiben, etwa „22 3/4 ft2“, „2.1 m2“ oder „210 dm2“.`,
    'area-needs-unit': (p) =>
      de`${p.found} ist eine Fläche ohne Einheit; „22 3/4 ft2“, „2.1 m2“ oder „210 dm2“ schreiben.`,
    'ambiguous-area': (p) =>
      de`${p.found} lässt sich auf zwei Arten lesen: als Viertel eines Fußes sind es ${figures(p.quartersFt2)} ft² (${figures(p.quartersM2)} m²), als Zehntel ${figures(p.tenths)} ft² (${figures(p.tenthsM2)} m²); für das Erste „${p.quarters} ft2“ schreiben, für das Zweite „${p.tenths} ft2“.`,
    'ambiguous-comma': (p) =>
      de`${p.found} lässt sich wegen des Kommas auf zwei Arten lesen: als ${p.decimal} oder als ${p.thousands}; die Zahl mit Punkt oder ohne Komma schreiben.`,
    'bad-money': (p) =>
      de`${p.found} ist kein Preis; einen Betrag ab 0 und eine Währung aus drei Buchstaben schreiben, etwa „12.50 EUR“.`,
    'thickness-reversed': (p) =>
      de`Die Stärke läuft von ${figures(p.from)} mm hinunter zu ${figures(p.to)} mm; die kleinere Zahl zuerst schreiben.`,
    'out-of-range': (p) =>
      de`${p.found} liegt außerhalb; möglich ist hier ${p.from === 'above 0' ? 'mehr als 0' : figures(p.from)} bis ${figures(p.to)} ${term(UNITS, p.unit)}.`,

    'hide-outline-crosses': (p) =>
      de`Die Linie ${lineGerman(p.what)} schneidet sich an dieser Stelle selbst; so zeichnen, dass sie einmal rundum läuft.`,
    'hide-no-area': (p) =>
      de`Die Linie ${lineGerman(p.what)} umschließt keine Fläche; als geschlossene Linie mit etwas Leder darin zeichnen.`,
    'hide-open-line': (p) =>
      de`Die Linie ${lineGerman(p.what)} endet nicht, wo sie beginnt; „closed“ auf true setzen und die letzte Strecke am Anfang enden lassen.`,
    'hide-opening-outside': (p) =>
      de`Loch ${p.index} liegt an dieser Stelle nicht innerhalb des Umrisses; nach innen schieben oder den Umriss ändern.`,
    'hide-openings-overlap': (p) =>
      de`Die Löcher ${p.index} und ${p.other} überlappen sich an dieser Stelle; als ein Loch zeichnen.`,
    'hide-flaw-outside': (p) =>
      de`Fehler ${p.id} liegt ganz außerhalb des Umrisses; auf die Haut schieben oder wegnehmen.`,
    'hide-zone-outside': (p) =>
      de`Partie ${p.id} liegt ganz außerhalb des Umrisses; auf die Haut schieben oder wegnehmen.`,
    'hide-duplicate-id': (p) =>
      de`Zwei ${term(COUNTED, p.what)} haben die Kennung ${p.id}; jedem eine eigene geben.`,
    'hide-flaw-without-effect': (p) =>
      de`Fehler ${p.id} hat keine Art, darum muss seine Wirkung ausgeschrieben sein: looks, strength, isVoid.`,
    'hide-short-line': (p) =>
      de`Die Linie ${lineGerman(p.what)} hat keine Länge; mindestens zwei verschiedene Punkte angeben.`,
    'hide-reading-outside': (p) =>
      de`Stärkemessung ${p.index} liegt außerhalb des Umrisses; auf die Haut schieben oder wegnehmen.`,

    'piece-source': (p) =>
      de`Teil ${p.piece} hat ${term(
        SOURCES,
        p.found.replace(
          /^several shapes \((.*)\)$/,
          (_, shapes: string) => `mehrere Formen (${joined(shapes)})`,
        ),
      )}; genau eines von pattern, strap, rectangle oder disc angeben.`,
    'piece-without-pattern': (p) =>
      de`Teil ${p.piece} nennt mit „piece“ ein Teil einer Schnittmusterdatei, aber keine Datei; „pattern: datei.svg“ ergänzen.`,
    'piece-mirrored-count': (p) =>
      de`Von Teil ${p.piece} sollen ${p.mirrored} von ${p.count} gespiegelt sein; „mirrored“ zählt innerhalb von „count“ mit, mehr geht nicht.`,
    'piece-duplicate': (p) =>
      de`Im Artikel ${p.article} heißen zwei Teile ${p.piece}; jedem einen eigenen Namen geben.`,
    'article-duplicate': (p) =>
      de`Zwei Artikel heißen ${p.article}; jedem einen eigenen Namen geben oder die Zahl der Sätze erhöhen.`,
    'no-such-piece': (p) => de`Im Artikel ${p.article} gibt es kein Teil ${p.piece}.${nearHint(p.near)}`,
    'no-such-leather': (p) =>
      de`Teil ${p.piece} soll aus dem Leder ${p.leather} sein, das unter „leathers“ nicht steht (${p.known}).${nearHint(p.near)}`,
    'leather-duplicate': (p) => de`Das Leder ${p.leather} steht zweimal da; jedem einen eigenen Namen geben.`,
    'article-leather-not-in-order': (p) =>
      de`Artikel ${p.article} braucht ein Leder ${p.leather}, das im Auftrag nicht steht; unter „leathers“ mit seinen Häuten ergänzen.`,
    'bad-page-numbers': (p) =>
      de`${p.found} sind keine Seitenzahlen; ab 1 schreiben, jede einmal, etwa „2-7, 9“.`,
    'fixed-needs-angle': () => 'Die Richtung „fixed“ braucht einen Winkel; „angle“ ergänzen, in Grad.',
    'seam-target': (p) =>
      de`${p.found} ist keine andere Seite einer Naht; „Teil/Linie“ schreiben, mit Schrägstrich.`,
    'strap-does-not-fit': (p) => de`Riemen ${p.piece} lässt sich nicht schneiden: ${term(STRAPS, p.what)}.`,
    'no-such-method': (p) =>
      de`Die Schnittart ${p.method} steht nicht in der Tabelle der Werkstatt (${p.known}).${nearHint(p.near)} Oder hier die Werte gap, edge, void und kerf angeben.`,

    'layout-no-such-hide': (p) =>
      de`Haut ${p.hide} ist nicht unter den Häuten der Auslegung; dort ergänzen oder den Namen richtigstellen.`,
    'layout-no-such-piece': (p) =>
      de`Teil ${p.piece} des Artikels ${p.article} ist nicht unter den Teilen der Auslegung; dort ergänzen oder den Namen richtigstellen.`,
    'layout-no-such-block': (p) =>
      de`In dieser Auslegung gibt es weder Bahn noch Grobzuschnitt mit der Kennung ${p.id}.`,
    'layout-duplicate': (p) =>
      de`${entryGerman(p.what)} steht zweimal in der Auslegung; jedes darf nur einmal da stehen.`,
    'curve-not-closed': () =>
      'Eine geschlossene Linie muss genau dort enden, wo sie beginnt; die letzte Strecke am Anfang enden lassen.',

    'journal-number': (p) =>
      de`Eintrag ${p.found} steht, wo ${p.wanted} stehen sollte; Einträge zählen ab 1 ohne Lücke und kommen nur hinzu.`,
    'journal-undo': (p) =>
      de`Eintrag ${p.number} lässt sich hier nicht zurücknehmen: Er ist keine frühere Entnahme oder schon zurückgenommen.`,
    'bundle-path': (p) =>
      de`${p.path} ist kein Pfad innerhalb des Auftrags; einen Pfad mit „/“ und ohne „..“ schreiben.`,
    'bundle-duplicate': (p) => de`Die Datei ${p.path} ist zweimal enthalten; eine davon behalten.`,
    'bundle-content': (p) =>
      de`Der Inhalt von ${p.path} ist kein gültiger base64-Text; den Auftrag neu als Datei sichern.`,
  } satisfies Translation<typeof FILE_SENTENCES>;
}
