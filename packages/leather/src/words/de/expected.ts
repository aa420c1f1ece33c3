/**
 * What the readers of files say they expect, in German: the words are the schemas' own, by the shape of the phrase.
 * Numbers and quoted values stay as they are, since they are to be written just so.
 */
const PHRASES: readonly (readonly [RegExp, string])[] = [
  [/^something else$/, 'etwas anderes'],
  [/^a value$/, 'ein Wert'],
  [/^a number$/, 'eine Zahl'],
  [/^a finished string$/, 'ein Text mit Anführungszeichen am Ende'],
  [/^a key in double quotes$/, 'ein Schlüssel in doppelten Anführungszeichen'],
  [/^the end of the file$/, 'das Ende der Datei'],
  [/^true or false$/, 'true oder false'],
  [/^at most (\d+) MB$/, 'höchstens $1 MB'],
  [/^at least one segment$/, 'mindestens eine Strecke'],

  [
    /^a whole number from (\S+) to (\S+), or "as many as fit"$/,
    'eine ganze Zahl von $1 bis $2, oder "as many as fit"',
  ],
  [/^a whole number from (\S+) to (\S+)$/, 'eine ganze Zahl von $1 bis $2'],
  [/^a number from (\S+) to (\S+)$/, 'eine Zahl von $1 bis $2'],
  [/^a number above 0$/, 'eine Zahl über 0'],
  [/^a number above 0, at most (\S+)$/, 'eine Zahl über 0, höchstens $1'],
  [/^a number of pixels per mm above 0, at most (\S+)$/, 'eine Zahl von Pixeln je mm über 0, höchstens $1'],
  [/^a share from 0 to 1$/, 'ein Anteil von 0 bis 1'],
  [/^a percentage from (\S+) to (\S+)$/, 'ein Anteil in Prozent von $1 bis $2'],
  [
    /^a percentage: a bare number \(20\), or "20 %"(?:, from 0 to (\S+))?$/,
    'ein Anteil in Prozent: eine bloße Zahl (20) oder "20 %"',
  ],
  [
    /^two percentages, least and most, as \[90, 95\](.*)$/,
    'zwei Anteile in Prozent, kleinster und größter, als [90, 95]',
  ],
  [/^least and most, as (\[.*?\])(.*)$/, 'kleinster und größter Wert als $1, der kleinere zuerst'],

  [/^a coordinate in mm, at most (\S+) either way$/, 'eine Koordinate in mm, höchstens $1 nach jeder Seite'],
  [/^a length in mm from (\S+) to (\S+)$/, 'eine Länge in mm von $1 bis $2'],
  [/^a length in mm above 0, at most (\S+)$/, 'eine Länge in mm über 0, höchstens $1'],
  [/^a width in mm$/, 'eine Breite in mm'],
  [
    /^a length: millimetres as a bare number \(40\), or with a unit (\(.*\))$/,
    'eine Länge: Millimeter als bloße Zahl (40) oder mit Einheit $1',
  ],
  [/^a length above 0$/, 'eine Länge über 0'],
  [
    /^a length from 0 to 1 km: millimetres as a bare number, or with a unit (\(.*\))$/,
    'eine Länge von 0 bis 1 km: Millimeter als bloße Zahl oder mit Einheit $1',
  ],
  [/^a length, or two as \[across, down\]$/, 'eine Länge, oder zwei als [quer, längs]'],
  [/^a thickness in mm above 0, at most (\S+)$/, 'eine Stärke in mm über 0, höchstens $1'],
  [
    /^a thickness: millimetres as a bare number \(2\), (".*?") or (".*?")$/,
    'eine Stärke: Millimeter als bloße Zahl (2), $1 oder $2',
  ],
  [/^"any", or a thickness such as (".*?") or (".*?")$/, '"any", oder eine Stärke wie $1 oder $2'],
  [/^an area in mm², 0 or more$/, 'eine Fläche in mm², 0 oder mehr'],
  [
    /^an area or a span of it, such as (".*?"), (".*?") or (".*?")$/,
    'eine Fläche oder eine Spanne davon, etwa $1, $2 oder $3',
  ],
  [
    /^an area such as (".*?"), as this row is your own$/,
    'eine Fläche wie $1, denn diese Zeile ist eine eigene',
  ],
  [
    /^a cut such as (\S+), as this row is your own$/,
    'eine Art der Haut wie $1, denn diese Zeile ist eine eigene',
  ],
  [
    /^the area that one coat went over, such as (".*?") or (".*?")$/,
    'die Fläche, für die ein Auftrag gereicht hat, etwa $1 oder $2',
  ],
  [/^an angle in degrees from (\S+) to (\S+)$/, 'ein Winkel in Grad von $1 bis $2'],
  [/^an angle from (\S+) to (\S+) degrees$/, 'ein Winkel von $1 bis $2 Grad'],
  [
    /^an angle: degrees as a bare number \(90\), or "90 deg"$/,
    'ein Winkel: Grad als bloße Zahl (90) oder "90 deg"',
  ],
  [/^a price such as (".*?")$/, 'ein Preis wie $1'],
  [/^an amount in text such as (".*?")$/, 'ein Betrag als Text wie $1'],
  [/^a currency of three letters such as (".*?")$/, 'eine Währung aus drei Buchstaben wie $1'],

  [/^a name of 1 to (\d+) characters on one line$/, 'ein Name von 1 bis $1 Zeichen in einer Zeile'],
  [/^text of at most (\S+) characters$/, 'ein Text von höchstens $1 Zeichen'],
  [/^the path of a file$/, 'der Pfad einer Datei'],
  [/^a SHA-256 sum: 64 digits 0-9 and a-f$/, 'eine SHA-256-Summe: 64 Ziffern 0-9 und a-f'],
  [/^a day such as (".*?")$/, 'ein Tag wie $1'],
  [
    /^a version as a whole number, or in quotes \("1\.10"\)$/,
    'eine Version als ganze Zahl oder in Anführungszeichen ("1.10")',
  ],
  [/^a colour as "#rrggbb"$/, 'eine Farbe als "#rrggbb"'],
  [
    /^an iron of the workshop’s table: its name, or its pitch in mm \(3\.4\)$/,
    'ein Vorstecheisen aus der Tabelle der Werkstatt: sein Name oder seine Teilung in mm (3.4)',
  ],
  [/^a tannage, or a list of them$/, 'eine Gerbung oder eine Liste davon'],
  [/^(soft, medium, firm, hard), or a list of them$/, '$1, oder eine Liste davon'],
  [/^"any", or a list of zones such as (\[.*?\])$/, '"any", oder eine Liste von Partien wie $1'],
  [/^page numbers such as (".*?")$/, 'Seitenzahlen wie $1'],
  [/^the other piece and its line as "piece\/line"$/, 'das andere Teil und seine Linie als "piece/line"'],
  [
    /^("along", "across", "free"), or a group with rule, tolerance, halfTurn and angle$/,
    '$1, oder eine Gruppe mit rule, tolerance, halfTurn und angle',
  ],
  [
    /^"alike", or a group with tolerance and distance$/,
    '"alike", oder eine Gruppe mit tolerance und distance',
  ],
  [
    /^a number, or a group with from, to, unit and source$/,
    'eine Zahl, oder eine Gruppe mit from, to, unit und source',
  ],

  [
    /^("never here", "only where hidden", "anywhere"), or a group with looks, strength and void$/,
    '$1, oder eine Gruppe mit looks, strength und void',
  ],
  [/^("tail", "head", "backbone", "belly") or an angle in degrees$/, '$1 oder ein Winkel in Grad'],
  [
    /^a group with from and to \(mL per m²\), or with before and after \(g\) and over \(an area\)$/,
    'eine Gruppe mit from und to (mL je m²), oder mit before und after (g) und over (eine Fläche)',
  ],
  [
    /^a pitch in mm such as 3\.4, or a group with pitch and source$/,
    'eine Teilung in mm wie 3.4, oder eine Gruppe mit pitch und source',
  ],
  [
    /^a pitch: millimetres as a bare number \(3\.4\), or with its unit \("3\.4 mm"\); never by the inch$/,
    'eine Stichweite: Millimeter als bloße Zahl (3.4) oder mit Einheit ("3.4 mm"); nie je Zoll',
  ],
  [
    /^the name of a cutting method, or a group with method, gap, edge, void and kerf$/,
    'der Name einer Schnittart, oder eine Gruppe mit method, gap, edge, void und kerf',
  ],
  [
    /^an article: a file with its sets, or an article written out$/,
    'ein Artikel: eine Datei mit ihren Sätzen, oder ein ausgeschriebener Artikel',
  ],
  [/^a segment: (\{.*\}), (\{.*\}) or (\{.*\})$/, 'eine Strecke: $1, $2 oder $3'],
  [/^at most (\d+) segments$/, 'höchstens $1 Strecken'],
  [/^the content of a file as text$/, 'der Inhalt einer Datei als Text'],
  [
    /^the name of a hide file within the stock, such as (".*")$/,
    'der Name einer Hautdatei im Lager, etwa $1',
  ],
  [/^two lengths as \[across, down\] in mm$/, 'zwei Längen als [quer, längs] in mm'],
  [/^two sides as \[mm, mm\]$/, 'zwei Seiten als [mm, mm]'],

  [/^a list$/, 'eine Liste'],
  [/^a list of at least one number of a sheet$/, 'eine Liste mit mindestens einer Blattnummer'],
  [/^a list of at least (\d+) entr(?:y|ies)$/, 'eine Liste mit mindestens $1 Einträgen'],
  [/^a list of at least two readings$/, 'eine Liste mit mindestens zwei Ablesungen'],
  [/^a list of at least one photo$/, 'eine Liste mit mindestens einem Foto'],
  [/^a list of names$/, 'eine Liste von Namen'],
  [/^a list of needs$/, 'eine Liste von Anforderungen'],
  [/^a list of segments$/, 'eine Liste von Strecken'],
  [/^a list of rings$/, 'eine Liste von Umrissen'],
  [/^a list of page numbers$/, 'eine Liste von Seitenzahlen'],
  [/^a point as \[x, y\] in mm$/, 'ein Punkt als [x, y] in mm'],
  [/^a unit vector as \[x, y\]$/, 'ein Einheitsvektor als [x, y]'],
  [
    /^a line as a list of at least two points \[x, y\]$/,
    'eine Linie als Liste von mindestens zwei Punkten [x, y]',
  ],
  [
    /^a ring as a list of at least three points \[x, y\]$/,
    'ein Umriss als Liste von mindestens drei Punkten [x, y]',
  ],
  [/^two handles as (\[\[.*\]\])$/, 'zwei Anfasser als $1'],
  [/^a place on the photo in pixels, from 0 to (\S+)$/, 'eine Stelle auf dem Foto in Pixeln, von 0 bis $1'],
  [/^a place on the photo as \[x, y\] in pixels$/, 'eine Stelle auf dem Foto als [x, y] in Pixeln'],
  [
    /^a stroke as a list of at least two places \[x, y\]$/,
    'ein Strich als Liste von mindestens zwei Stellen [x, y]',
  ],
  [
    /^four corners \[x, y\], clockwise from the top left one$/,
    'vier Ecken [x, y] im Uhrzeigersinn, von der linken oberen an',
  ],
  [/^a pair of piece names as \[front, back\]$/, 'ein Paar von Namen von Teilen als [vorn, hinten]'],
  [/^a pair of piece names$/, 'ein Paar von Namen von Teilen'],
  [/^a span of widths as \[from, to\] in mm$/, 'eine Spanne von Breiten als [von, bis] in mm'],
  [/^a span of stroke widths as \[from, to\]$/, 'eine Spanne von Strichbreiten als [von, bis]'],
  [
    /^the two sides of the smallest leftover worth keeping, as (\[.*\])$/,
    'die zwei Seiten des kleinsten Reststücks, das sich aufzuheben lohnt, als $1',
  ],
  [/^a group with the key (".*?")$/, 'eine Gruppe mit dem Schlüssel $1'],
  [/^a group with the keys (.*) and (.*)$/, 'eine Gruppe mit den Schlüsseln $1 und $2'],
  [/^a group with the keys (.*)$/, 'eine Gruppe mit dem Schlüssel $1'],
  [/^a group with one key for each (.*)$/, 'eine Gruppe mit einem Schlüssel für jede einzelne Sache ($1)'],
];

const EACH: readonly (readonly [string, string])[] = [
  ['cutting method', 'Schnittart'],
  ['stitching iron', 'Vorstecheisen'],
  ['kind of goods', 'Art der Ware'],
  ['pattern file', 'Schnittmusterdatei'],
  ['tannage', 'Gerbung'],
  ['product', 'Mittel'],
  ['grade', 'Sorte'],
  ['figure', 'Wert'],
  ['cut', 'Art der Haut'],
  ['leather', 'Leder'],
];

/** `"a", "b" or "c"`, `"hide"`: words that are to be written just so. */
const CHOICE = /^(".*", )*".*" or ".*"$/;

/** "50,000" would be read as fifty. */
const GROUPED = /(\d),(?=\d{3}\b)/g;

/** What would be right, in German; a phrase that is not known stays as it is. */
export function expectedGerman(phrase: string): string {
  const words = phrase.replace(GROUPED, '$1');
  for (const [pattern, german] of PHRASES) {
    if (!pattern.test(words)) continue;
    const translated = words.replace(pattern, german);
    const each = EACH.find(([what]) => translated.endsWith(`(${what})`));
    return each === undefined ? translated : translated.replace(`(${each[0]})`, `(${each[1]})`);
  }
  return CHOICE.test(words) ? words.replace(/" or "(?=[^"]*"$)/, '" oder "') : words;
}
