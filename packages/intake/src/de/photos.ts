import type { German } from '@hidebound/leather/words-de';
import { CUTS, cutShort, referenceTerm, term } from '@hidebound/leather/words-de';
import type { Sentence } from '../sentence.js';
import { FILE_KINDS, TAKEN_FOR } from './terms.js';

const STATED = {
  rectangle: 'Das angegebene Rechteck',
  rules: 'Die angegebenen Lineale',
  card: 'Die angegebene Karte',
};
const SIZES = { larger: 'größer', smaller: 'kleiner' };
const SIDES = { wide: 'breit', long: 'lang' };

/** "sheet 3", "sheet 3 (or sheet 4 the other way)". */
function referenceGerman(name: string | number | undefined): string {
  const [, first, other] = /^(.*) \(or (.*) the other way\)$/.exec(String(name)) ?? [];
  return first === undefined || other === undefined
    ? referenceTerm(String(name))
    : `${referenceTerm(first)} (oder ${referenceTerm(other)} umgekehrt)`;
}

/** Photos, references beside the hide and the camera, in German. */
export function cameraGerman({ de, figures }: German) {
  const kind = (what: string | number | undefined): string => term(FILE_KINDS, String(what));
  const name = referenceGerman;
  const pixels = (width: unknown, height: unknown): string => de`${Number(width)} × ${Number(height)} Pixel`;
  return {
    'not-a-photo': ({ what }) =>
      de`Das ist ${kind(what)}, kein Foto, das sich hier lesen lässt; ein JPEG, PNG oder WebP nehmen.`,
    'photo-heic': ({ what }) =>
      de`Das Foto ist ${kind(what)}, das sich hier nicht lesen lässt; in den Kameraeinstellungen des Telefons für neue Fotos JPEG wählen (maximale Kompatibilität) und dieses als JPEG exportieren.`,
    'photo-broken': () =>
      'Das Bild ist beschädigt oder hört mittendrin auf; noch einmal von der Kamera kopieren oder neu als JPEG exportieren.',
    'photo-too-many-pixels': ({ width, height, megapixels, limit }) =>
      de`Das Bild hat ${pixels(width, height)}, ${Number(megapixels)} Megapixel, und höchstens ${limit} werden gelesen; kleiner exportieren.`,
    'photo-too-small': ({ width, height, least }) =>
      de`Das Bild hat nur ${pixels(width, height)}, nötig sind mindestens ${least} nach jeder Seite; das Foto nehmen, wie die Kamera es aufnahm, keine Vorschau.`,

    'no-reference': () =>
      'Im Foto wurde kein Maßblatt gefunden, darum sagt nichts seinen Maßstab; gedruckte Blätter flach neben die Haut legen oder ein Rechteck, Lineale oder eine Karte angeben.',
    'photo-not-tied': () =>
      'Nichts, was in diesem Foto den Maßstab gibt, ist auch in einem der anderen zu sehen, darum sagt nichts, wie sie zusammenliegen; in beiden dasselbe Blatt fotografieren oder die Fotos einzeln lesen.',
    'bad-reference': ({ name: stated }) =>
      de`${term(STATED, String(stated))}: so kann es nicht sein. Die Stellen dürfen nicht auf einer Linie liegen, die Längen müssen über 0 sein; die Ecken im Uhrzeigersinn von links oben angeben.`,

    'one-reference-only': ({ name: seen, mm }) =>
      de`Nur ein Maß ist zu sehen (${name(seen)}), darum können Stellen weit davon um ${mm} mm abweichen; vor jede Ecke der Haut ein Blatt legen.`,
    'steep-view': ({ degrees }) =>
      de`Das Foto wurde um etwa ${degrees}° schräg aufgenommen; die ferne Seite ist klein, und jede Beule verschiebt den Rand. So gerade von oben aufnehmen wie möglich.`,
    'blurred-photo': ({ px }) =>
      de`Das Foto ist unscharf (Kanten sind ${px} Pixel breit), Zeichen und Ränder werden ungenauer gefunden; die Linse abwischen, die Kamera aufstützen, mehr Licht machen.`,
    'sheet-too-bright': ({ name: sheet }) =>
      de`Das Papier von ${name(sheet)} ist im Foto so hell, dass sein Licht abgeschnitten ist; dunkler oder ohne Blitz aufnehmen.`,
    'sheet-too-dim': ({ name: sheet }) =>
      de`Die Zeichen von ${name(sheet)} sind kaum dunkler als ihr Papier; mehr Licht machen und in vollem Schwarz drucken.`,
    'bars-not-measured': ({ percent }) =>
      de`Niemand hat gesagt, wie lang die zwei Linien der gedruckten Blätter sind, darum können alle Längen um ${percent} % abweichen; beide mit einem Stahllineal messen und angeben.`,
    'marker-left-out': ({ name: sheet, mm }) =>
      de`Ein Zeichen von ${name(sheet)} scheint ${mm} mm neben seinem Platz zu liegen und zählt kaum; nachsehen, ob es verdeckt, verbogen oder verschmiert ist.`,
    'reference-does-not-fit': ({ name: sheet, mm }) =>
      de`Die Stellen von ${name(sheet)} liegen ${mm} mm neben dem, was der Rest des Fotos sagt; flach hinlegen und die Angaben dazu prüfen.`,
    'sheet-not-flat': ({ name: sheet, mm }) =>
      de`Das Papier von ${name(sheet)} scheint um etwa ${mm} mm vom Boden abzustehen; flach hinlegen, mit Gewichten auf den Ecken.`,
    'sheet-size-differs': ({ name: sheet, percent, direction }) =>
      de`Die Größe von ${name(sheet)} scheint um ${percent} % ${term(SIZES, String(direction))} zu sein, als die anderen sagen; anders gedruckt, oder die Linien sind falsch angegeben. Noch einmal messen.`,
    'sheet-stretched': ({ name: sheet, percent, direction }) =>
      de`Die Zeichen von ${name(sheet)} sind um ${percent} % zu ${term(SIDES, String(direction))} für ihre andere Seite; beide Linien noch einmal messen und angeben, was das Lineal zeigt.`,
    'sheet-moved': ({ name: sheet, mm }) =>
      de`Zwischen zwei Fotos wurde ${name(sheet)} um ${mm} mm verschoben und verbindet sie nicht; zwischen Fotos weder Blätter noch Haut bewegen.`,
    'references-to-one-side': ({ mm }) =>
      de`Was den Maßstab gibt, liegt auf einer Seite der Haut, ihre ferne Seite kann um ${mm} mm abweichen; vor alle Ecken Blätter legen.`,
    'references-too-small': ({ mm }) =>
      de`Was den Maßstab gibt, ist klein neben der Haut, ihr Rand kann um ${mm} mm abweichen; vor alle Ecken Blätter legen oder ein größeres Rechteck angeben.`,
    'too-few-pixels': ({ value }) =>
      de`Wo die Haut am schlechtesten liegt, hat das Foto nur ${figures(String(value))} Pixel je Millimeter, ihr Rand lässt sich nicht gut verfolgen; näher herangehen, die volle Größe der Kamera nehmen oder mehrere Fotos machen.`,
    'not-in-photo': () =>
      'Ein Stück des Gesuchten liegt außerhalb aller Fotos; eines machen, das die ganze Haut mit Boden darum zeigt.',
    'shine-on-hide': ({ percent }) =>
      de`Auf ${percent} % der Haut ist das Licht so hell, dass man vom Leder nichts sieht; in gleichmäßigem Licht aufnehmen, ohne Blitz.`,
  } as const satisfies Readonly<Record<string, Sentence>>;
}

/** Outlines and chalk in photos, tracing, and cards, in German. */
export function tracingGerman({ de, figures, count: counted }: German) {
  const one = (count: string | number | undefined): boolean => Number(count) === 1;
  return {
    'no-hide-in-photo': () =>
      'Im Foto wurde keine Haut gefunden; auf einen Boden von anderer Farbe legen oder in den Angaben einen Strich auf dem Leder und einen auf dem Boden ziehen.',
    'hide-leaves-picture': ({ mm }) =>
      de`Die Haut geht entlang von ${mm} mm ihres Randes über das Foto hinaus; noch einmal ganz aufnehmen oder eines dazunehmen, das den Rest zeigt.`,
    'edge-points-astray': ({ count }) =>
      de`${counted(count, 'Stelle, die auf dem Rand liegen soll, liegt', 'Stellen, die auf dem Rand liegen sollen, liegen')} mehr als 200 mm daneben und ${one(count) ? 'bleibt' : 'bleiben'} weg; die Angaben richtigstellen.`,
    'edge-unsure': ({ mm, most, count }) =>
      de`Auf ${one(count) ? de`${count} Stück` : de`${count} Stücken`} des Randes, zusammen ${mm} mm, sind Leder und Boden schwer zu unterscheiden, der Umriss kann um bis zu ${most} mm abweichen; ansehen und Stellen auf dem Rand angeben.`,

    'sides-do-not-match': ({ photo }) =>
      de`Was ${photo} zeigt, ließ sich weder nach dem Umriss noch nach gemeinsamen Zeichen auf die Haut legen; noch einmal mit der ganzen Haut aufnehmen und mit Zeichen, die beide Seiten zeigen, wenn die Beine nicht gleich liegen können.`,
    'moved-photos-do-not-join': ({ photo, crosses }) =>
      de`Von den Kreidekreuzen in ${photo} (${counted(crosses, 'Kreuz', 'Kreuze')} gefunden) haben die anderen Fotos weniger als zwei, darum ist nicht klar, wo sein Stück der Haut liegt; in jedes Stück, das zwei Fotos zeigen, mindestens drei Kreuze zeichnen, weit auseinander.`,
    'crosses-disagree': ({ crosses, misfit }) =>
      de`Die ${crosses} Kreidekreuze, die auch die anderen Fotos zeigen, liegen bis zu ${misfit} mm daneben; das Leder wurde zwischen den Fotos gedehnt oder geknickt. Flach hinlegen, ohne Zug weiterziehen und neu aufnehmen.`,
    'chalk-hardly-shows': () =>
      'Das Leder ist so hell, dass weiße Kreide kaum zu sehen ist, Zeichen können fehlen; hellblaue Kreide nehmen und nachsehen, ob jedes gefunden wurde.',
    'other-side-ambiguous': ({ misfit, other }) =>
      de`Das Foto der anderen Seite passt auf zwei Arten auf die Haut, auf ${misfit} mm und auf ${other} mm, die bessere gilt; auf beiden Seiten zwei oder mehr Stellen anzeichnen, um sicherzugehen.`,

    'no-photo': () => 'Kein Foto ist da; mindestens eines nehmen, das die Haut von oben zeigt.',
    'trace-stopped': () => 'Von Hand angehalten; nichts wurde geschrieben.',
    'cards-without-scale': () =>
      'Nichts sagt, wie groß dieses Bild ist: Kein Maßblatt wurde gefunden, und die Datei nennt keine Auflösung; die Pixel je Zoll des Scans angeben oder ein Maßblatt neben die Schablonen legen.',
    'hints-for-no-photo': ({ photo }) =>
      de`In den Angaben ist von einem Foto „${photo}“ die Rede, das nicht da ist; das Foto so nennen, wie seine Datei heißt.`,
    'hint-off-photo': ({ x, y, width, height }) =>
      de`Eine Angabe bei ${x}, ${y} liegt neben diesem Foto, das ${width} × ${height} Pixel hat, und bleibt weg; die Stellen vom Foto in voller Größe nehmen.`,
    'area-differs': ({ invoiced, measured, difference, error }) =>
      de`Verkauft ist die Haut als ${figures(String(invoiced))}, das Foto zeigt ${figures(String(measured))}: ${Math.abs(Number(difference))} % ${Number(difference) < 0 ? 'weniger' : 'mehr'}, während das Foto um ${figures(String(error))} % abweichen kann; die Linien der Maßblätter messen, dann den Verkäufer fragen.`,
    'backbone-guessed': ({ confidence }) =>
      de`Die Rückenlinie ist geraten (${confidence} von 100 sicher); ansehen, dann bestätigen oder selbst ziehen.`,
    'cut-guessed': ({ cut }) =>
      de`Nach der Form ist das vermutlich: ${term(CUTS, String(cut))}; die Art angeben, wenn das nicht stimmt.`,
    'no-backbone-guessed': () =>
      'Die Rückenlinie ließ sich nicht schätzen, darum sagt nichts, in welcher Richtung sich das Leder am wenigsten dehnt; eine Linie vom Kopf zum Schwanz ziehen.',
    'photo-of-moved-hide': ({ mm }) =>
      de`Die Haut liegt ${mm} mm neben dem, was das erste Foto zeigt; wurde sie weitergezogen, das angeben.`,
    'other-side-flaws': ({ count }) =>
      de`Vom Foto der anderen Seite auf die Haut übertragen: ${counted(count, 'Zeichen', 'Zeichen')}.`,

    'no-cards-found': () =>
      'Im Bild wurde keine Schablone aus Pappe oder Papier gefunden; einzeln auf einfarbigen Grund von anderem Ton legen, ohne Schatten.',
    'card-cut-off': () =>
      'Eine Schablone liegt hier am Rand des Bildes oder unter oder auf einem Maßblatt und bleibt weg; frei von beidem hinlegen.',
    'card-edge-rough': ({ piece, off }) =>
      de`Der Rand von „${piece}“ liegt hier bis zu ${off} mm neben seiner sauberen Linie; die gesicherte Zeichnung mit der Schablone vergleichen.`,
    'card-edge-unclear': ({ piece, length }) =>
      de`Auf ${length} mm, von hier an, ist der Rand von „${piece}“ kaum von Grund oder Schatten zu unterscheiden und kann um 1 mm abweichen; auf anderen Ton legen oder gleichmäßig beleuchten.`,
    'card-edge-as-seen': ({ piece }) =>
      de`Der Rand von „${piece}“ ist zu ausgefranst für saubere Linien und wird gezeichnet, wie er zu sehen ist; nachziehen, wenn es darauf ankommt.`,
    'card-lines-guessed': ({ how, count, role, pieces }) =>
      de`${how === 'solid' ? counted(count, 'durchgezogene Linie', 'durchgezogene Linien') : counted(count, 'Linie aus Strichen oder Punkten', 'Linien aus Strichen oder Punkten')} auf Schablonen ${one(count) ? 'gilt' : 'gelten'} als ${term(TAKEN_FOR, String(role))} (${cutShort(String(pieces))}); in der gesicherten Zeichnung ändern, wenn das nicht stimmt.`,
    'card-notches-guessed': ({ count, pieces }) =>
      de`${counted(count, 'kurze Linie am Rand gilt als Kerbe', 'kurze Linien am Rand gelten als Kerben')} (${cutShort(String(pieces))}).`,
    'card-direction-guessed': ({ pieces }) =>
      de`Ein Pfeil gilt als Richtung zum Schwanz (${cutShort(String(pieces))}); aus der gesicherten Zeichnung nehmen, wenn er etwas anderes meint.`,
    'card-several-arrows': ({ piece }) =>
      de`Auf „${piece}“ sind mehrere Pfeile gezeichnet, der längste gilt als Richtung; nur einen behalten.`,
    'card-marks-left': ({ count, pieces }) =>
      de`Weggelassen: ${counted(count, 'gezeichneter Strich', 'gezeichnete Striche')} ohne klare Linie, etwa Schrift (${cutShort(String(pieces))}).`,
    'names-left-over': ({ names, pieces }) =>
      de`Für ${one(pieces) ? de`${pieces} Teil` : de`${pieces} Teile`} ${one(names) ? 'ist' : 'sind'} ${counted(names, 'Name', 'Namen')} angegeben, die letzten bleiben übrig; Namen zählen in Leserichtung.`,
  } as const satisfies Readonly<Record<string, Sentence>>;
}
