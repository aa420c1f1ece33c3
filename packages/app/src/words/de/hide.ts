import type { HIDE_EN } from '../en/hide.js';
import type { Translated } from '../translated.js';

/** Wie eine Haut auf den Tisch kommt. */
export const HIDE_DE: Translated<typeof HIDE_EN> = {
  'hide.new': 'Neue Haut',
  'hide.choose': 'Haut: {name}. Eine andere wählen',
  'hide.ofHides': { one: 'die einzige Haut', other: 'eine von {n} Häuten' },
  'hide.area': 'Fläche',
  'hide.scaledBy': 'Maßstab durch',
  'hide.placesWithin': 'Stellen bekannt auf',
  'hide.invoiceAgrees': 'Stimmt mit der Rechnung ({invoiced}) auf {percent} überein.',
  'hide.invoiceLess':
    '{area} weniger als die berechneten {invoiced} ({percent}). Miss die Linien der gedruckten Blätter nach, dann frag den Verkäufer.',
  'hide.invoiceMore':
    '{area} mehr als die berechneten {invoiced} ({percent}). Miss die Linien der gedruckten Blätter nach; eine der beiden Zahlen stimmt nicht.',
  'hide.shortLess': '{percent} weniger als berechnet',
  'hide.shortSame': 'wie berechnet',
  'hide.shortMore': '{percent} mehr als berechnet',
  'hide.tellInvoice': 'Was steht auf der Rechnung?',
  'hide.notUsed': 'Dieser Auftrag verwendet die Haut noch nicht.',
  'hide.useFor': 'Für {leather} verwenden',
  'hide.photoTells': {
    one: 'Was das Foto sagt: ein Hinweis',
    other: 'Was das Foto sagt: {n} Hinweise',
  },
  'hide.chalked': {
    one: 'Ein Kreidezeichen wurde als Fehler übernommen.',
    other: '{n} Kreidezeichen wurden als Fehler übernommen.',
  },
  'hide.severity.note': 'Hinweis:',
  'hide.severity.warning': 'Achtung:',
  'hide.severity.error': 'Falsch:',
  'hide.mend': 'Rand ausbessern',
  'hide.seeOnPhoto': 'Auf dem Foto zeigen',
  'hide.seen': 'Was auf dem Foto gefunden wurde',
  'hide.seenHow':
    'Der gefundene Rand und was den Maßstab gibt, jeweils mit der Abweichung. Zehntelmillimeter sind gut.',
  'hide.backToHide': 'Zurück zur Haut',
  'hide.how.chalk': 'was bekannt ist, mit Kreide',
  'hide.how.sheets': 'gedruckte Blätter vor den Ecken',
  'hide.howTo':
    'Leg die Haut flach auf einen Boden von anderem Ton, gedruckte Blätter vor ihre Ecken, und fotografiere sie gerade von oben, so hoch du kannst. Kreide an, was du weißt: Ringe und Striche werden zu Fehlern.',
  'hide.takePhoto': 'Foto aufnehmen',
  'hide.choosePhotos': 'Fotos wählen',
  'hide.onePhotoMore': 'Noch ein Foto dieser Haut',
  'hide.shows': 'Es zeigt',
  'hide.shows.as it lies': 'die Haut, wie sie liegt, oder einen Teil davon',
  'hide.shows.raking': 'dasselbe im Streiflicht von einer Seite',
  'hide.shows.other side': 'die andere Seite, umgedreht',
  'hide.betweenPhotos': 'Zwischen den Fotos dieser Seite',
  'hide.layStill': 'lag die Haut still',
  'hide.wasMoved': 'wurde sie weitergezogen',
  'hide.stillHow':
    'Jedes Foto zeigt ein Blatt, das auch ein anderes zeigt; dazwischen bewegen sich weder Blätter noch Haut.',
  'hide.movedHow':
    'Die Blätter bleiben liegen, das Leder wandert. Mit Kreide sind drei Kreuze oder mehr, weit auseinander, in jeden Teil gemalt, den zwei Fotos zeigen.',
  'hide.whyMore': 'Wozu weitere Fotos gut sind',
  'hide.whyMore.parts':
    'Eine große Haut Stück für Stück: Jedes Foto zeigt ein Blatt, das auch ein anderes zeigt.',
  'hide.whyMore.raking':
    'Streiflicht von einer Seite, Haut und Blätter unberührt: Falten und verheilte Schnitte werfen Schatten.',
  'hide.whyMore.other':
    'Die andere Seite, umgedreht, mit Blättern darum herum: Was dort mit Kreide angezeichnet ist, kommt auf diese Seite.',
  'hide.missingAsItLies': 'Ein Foto muss die Haut zeigen, wie sie liegt.',
  'hide.movedAndRaking':
    'Eine weitergezogene Haut lässt sich nicht zugleich im Streiflicht lesen; leg eines von beiden weg.',
  'hide.dropPhoto': 'Weglegen',
  'hide.photosOfJob': 'Fotos in diesem Auftrag:',
  'hide.opening': 'Das Foto wird geöffnet …',
  'hide.otherWays': 'Ohne Foto',
  'hide.fromDrawing': 'Nachgezeichnet (SVG)',
  'hide.fromFile': 'Eine Hautdatei, mit Foto',
  'hide.thereAlready': '{name} ist schon in diesem Auftrag.',
  'hide.renamed': 'Eine andere Haut dieses Auftrags heißt {name}, darum heißt diese {other}.',
  'hide.withoutPhoto':
    '{name} kam ohne Foto. Hole die Hautdatei zusammen mit ihren Bildern herein, um es zu sehen.',
  'hide.finishFirst': 'Zeichne erst nach, was auf dem Tisch liegt, oder verlass es; dann hole {file} herein.',
  'hide.isPattern': '{file} ist ein Schnittmuster; Schnittmuster kommen bei den Teilen herein.',
  'hide.leftOut': {
    one: '{file} gehört zu keiner dieser Hautdateien und blieb weg; hole Fotos für sich herein.',
    other:
      '{file} und andere, zusammen {n}, gehören zu keiner dieser Hautdateien und blieben weg; hole Fotos für sich herein.',
  },
  'hide.dropHere': 'Fotos, Hautdateien und Zeichnungen lassen sich auch auf den Tisch ziehen.',
  'hide.fromNumbers': 'Ein Zuschnitt nach Maßen',
  'hide.sheets': 'Maßblätter',
  'hide.sheetsWhy':
    'Sie liegen neben der Haut und sagen, wie groß sie ist. Druck sie mit 100 %, nicht an die Seite angepasst; vier oder mehr.',
  'hide.sheetsMake': 'Blätter zum Drucken (PDF)',
  'hide.linesWhy':
    'Drucker verziehen. Miss die zwei langen Linien eines Blatts mit einem Stahllineal und gib sie einmal an.',
  'hide.lineAcross': 'Linie quer',
  'hide.lineDown': 'Linie längs',
  'hide.fromPhoto': 'Vom Foto zur Haut',
  'hide.whichSide': 'Welche Seite siehst du?',
  'hide.side.grain': 'Narbenseite',
  'hide.side.flesh': 'Fleischseite',
  'hide.whatBeside': 'Was liegt daneben?',
  'hide.beside.sheets': 'Gedruckte Blätter',
  'hide.beside.rectangle': 'Ein Rechteck',
  'hide.beside.card': 'Eine Bankkarte',
  'hide.beside.rules': 'Zwei Stahllineale',
  'hide.placesHow.rectangle':
    'Zieh die vier Ecken auf die des Rechtecks, oder tippe, wo sie hingehören. Je größer das Rechteck, desto besser.',
  'hide.placesHow.card':
    'Zieh die vier Ecken auf die der Karte, dorthin, wo ihre runden Ecken spitz enden würden. Für eine ganze Haut ist eine Karte viel zu klein.',
  'hide.placesHow.rules':
    'Die Lineale liegen im rechten Winkel. Zieh 1 und 2 auf zwei Striche des einen, 3 und 4 auf zwei Striche des anderen, so weit auseinander wie möglich, und gib an, was dort steht.',
  'hide.rectangleWidth': 'Breite',
  'hide.rectangleHeight': 'Höhe',
  'hide.reading': 'Das Lineal zeigt bei {n}',
  'hide.place': 'Stelle {n}',
  'hide.moreKnown': 'Was du noch weißt',
  'hide.thickness': 'Stärke',
  'hide.invoiced': 'Fläche laut Rechnung',
  'hide.helpEdge': 'Beim Finden des Randes helfen',
  'hide.helpEdgeHow':
    'Wo Leder und Boden sich gleichen, zieh einen Strich auf dem Leder, einen auf dem Boden, oder tippe Stellen an, die genau auf dem Rand liegen.',
  'hide.pen.hide': 'Leder',
  'hide.pen.floor': 'Boden',
  'hide.pen.edge': 'Auf dem Rand',
  'hide.forgetStrokes': 'Striche vergessen',
  'hide.missingSide': 'Sag, welche Seite du siehst.',
  'hide.missingLengths': 'Sag, wie lang es ist.',
  'hide.trace': 'Haut umreißen',
  'hide.traceAgain': 'Neu umreißen',
  'hide.stop': 'Anhalten',
  'hide.leave': 'Lassen',
  'hide.done': 'Fertig',
  'hide.tracing': 'Die Haut wird umrissen',
  'hide.step.open': 'Das Foto wird geöffnet …',
  'hide.step.load': 'Was zum Sehen nötig ist, wird geholt …',
  'hide.step.references': 'Gesucht wird, was den Maßstab gibt …',
  'hide.step.floor': 'Wo stand die Kamera? …',
  'hide.step.straighten': 'Das Foto wird entzerrt …',
  'hide.step.outline': 'Der Rand der Haut wird verfolgt …',
  'hide.step.chalk': 'Kreidezeichen werden gelesen …',
  'hide.step.other side': 'Die andere Seite wird aufgelegt …',
  'hide.step.candidates': 'Mögliche Fehler werden gesucht …',
  'hide.step.backbone': 'Die Rückenlinie wird geschätzt …',
  'hide.mendHow':
    'Zieh einen Strich über Leder, das fehlt, oder über Boden, der für Leder gehalten wurde; oder tippe, wo der Rand wirklich verläuft. Dann neu umreißen. Deine Zeichen bleiben.',
  'hide.marksDrawn': {
    one: 'Ein Strich oder eine Stelle ist gezeichnet.',
    other: '{n} Striche und Stellen sind gezeichnet.',
  },
  'hide.panelStem': 'zuschnitt',
  'hide.panelWidth': 'Breite',
  'hide.panelHeight': 'Höhe',
  'hide.panelLeast': 'Am wenigsten dehnt er sich',
  'hide.panelLeast.across': 'quer',
  'hide.panelLeast.down': 'längs',
  'hide.panelLeast.unknown': 'nicht bekannt',
  'hide.panelMake': 'Auf den Tisch legen',
  'hide.undo.traced': 'Haut umrissen',
  'hide.undo.edgeMended': 'Rand neu umrissen',
  'hide.undo.added': 'Haut dazugelegt',
  'hide.undo.used': 'Haut in den Auftrag genommen',
  'hide.undo.lines': 'Linien der Blätter angegeben',
  'hide.reference.sheet': 'Blatt {number}',
  'hide.reference.count': { one: 'ein gedrucktes Blatt', other: '{n} gedruckte Blätter' },
  'hide.reference.sheets': 'die gedruckten Blätter',
  'hide.reference.rectangle': 'Rechteck',
  'hide.reference.rules': 'Lineale',
  'hide.reference.card': 'Karte',
  'hide.cut.whole hide': 'ganze Haut',
  'hide.cut.side': 'halbe Haut',
  'hide.cut.back': 'halbe Haut ohne Bauch',
  'hide.cut.bend': 'halber Croupon',
  'hide.cut.butt': 'Croupon',
  'hide.cut.shoulder': 'Hals',
  'hide.cut.double shoulder': 'Doppelhals',
  'hide.cut.belly': 'Bauch (Flämen)',
  'hide.cut.panel': 'Zuschnitt',
  'hide.cut.offcut': 'Reststück',
  'hide.refused.no-hide-file': 'Das ist keine Hautdatei; wähle eine, deren Name auf .hide.json endet.',
  'hide.refused.not-a-photo':
    '{file} ist kein Foto, das hier gelesen werden kann; wähle ein JPEG, PNG oder WebP.',
  'hide.refused.photo-heic':
    '{file} ist von einer Art, die hier nicht gelesen werden kann; stell die Kamera des Telefons auf JPEG (maximale Kompatibilität), oder exportiere das Foto als JPEG.',
  'hide.refused.photo-broken':
    '{file} ist beschädigt oder hört mittendrin auf; kopiere es noch einmal von der Kamera, oder exportiere es neu als JPEG.',
  'hide.refused.photo-too-many-pixels': '{file} hat mehr als 100 Megapixel; exportiere es kleiner.',
  'hide.refused.photo-too-small':
    '{file} ist zu klein, mit weniger als 300 Pixeln in einer Richtung; nimm das Foto, wie die Kamera es aufnahm, keine Vorschau.',
  'hide.refused.no-reference':
    'In {file} wurde kein gedrucktes Blatt gefunden, also sagt nichts, wie groß die Haut ist. Sind alle vier Zeichen eines Blatts im Bild, scharf, mit Weiß darum? Oder sag unten, was sonst daneben liegt.',
  'hide.refused.photo-not-tied':
    '{file} zeigt kein Blatt, das ein anderes Foto auch zeigt, also sagt nichts, wie sie zusammenliegen; fotografiere dasselbe Blatt in beiden, oder leg ein Foto weg.',
  'hide.refused.bad-reference':
    'Die vier Stellen können so nicht sein: Sie dürfen nicht auf einer Linie liegen, und Längen müssen über 0 sein.',
  'hide.refused.sides-do-not-match':
    'Was {file} zeigt, lässt sich nicht auf die Haut legen, weder am Rand noch an Zeichen, die beide Seiten zeigen. Nimm die ganze umgedrehte Haut neu auf, mit zwei oder mehr Zeichen, die auf beiden Seiten zu sehen sind.',
  'hide.refused.moved-photos-do-not-join':
    '{file} hat weniger als zwei Kreidekreuze mit den anderen Fotos gemeinsam, darum weiß niemand, wo sein Teil der Haut liegt. Male drei oder mehr, weit auseinander, in jeden Teil, den zwei Fotos zeigen.',
  'hide.refused.crosses-disagree':
    'Die Kreuze in {file} liegen nicht wie auf den anderen Fotos: Das Leder war gedehnt oder warf Falten. Leg es flach, zieh es weiter, ohne es zu dehnen, und nimm es neu auf.',
  'hide.refused.no-hide-in-photo':
    'In {file} wurde keine Haut gefunden. Leg sie auf einen Boden von anderem Ton, oder zieh einen Strich auf dem Leder und einen auf dem Boden, und lass neu umreißen.',
  'hide.found.one-reference-only':
    'Nur ein Maß ist zu sehen ({name}), also können Stellen weit davon um {mm} mm abweichen. Leg vor jede Ecke der Haut ein Blatt.',
  'hide.found.steep-view':
    'Das Foto wurde um etwa {degrees}° schräg aufgenommen. Nimm es so gerade von oben auf wie möglich.',
  'hide.found.blurred-photo':
    'Das Foto ist unscharf (Kanten sind {px} Pixel breit). Wisch die Linse ab, stütz die Kamera auf, mach mehr Licht.',
  'hide.found.sheet-too-bright': 'Das Papier von {name} ist zu hell. Nimm das Foto dunkler auf, ohne Blitz.',
  'hide.found.sheet-too-dim':
    'Die Zeichen von {name} sind kaum dunkler als ihr Papier. Mach mehr Licht, druck in vollem Schwarz.',
  'hide.found.bars-not-measured':
    'Niemand hat gesagt, wie lang die zwei Linien der gedruckten Blätter sind, also können alle Längen um {percent} % abweichen. Miss beide mit einem Stahllineal und gib sie unter „Neue Haut“, „Maßblätter“ an.',
  'hide.found.marker-left-out':
    'Ein Zeichen von {name} scheint {mm} mm neben seinem Platz zu liegen und zählt kaum. Ist es verdeckt, verbogen oder verschmiert?',
  'hide.found.reference-does-not-fit':
    'Die Stellen von {name} liegen {mm} mm neben dem, was der Rest des Fotos sagt. Leg es flach, und prüf deine Angaben dazu.',
  'hide.found.sheet-not-flat':
    'Das Papier von {name} scheint um etwa {mm} mm hochzustehen. Leg es flach, mit Gewichten auf den Ecken.',
  'hide.found.sheet-size-differs':
    '{name}: Die Größe scheint um {percent} % von den anderen abzuweichen. Wurde es anders gedruckt? Miss die Linien noch einmal.',
  'hide.found.sheet-stretched':
    'Die Zeichen von {name} sind in einer Richtung um {percent} % zu lang. Miss beide Linien noch einmal.',
  'hide.found.sheet-moved':
    'Zwischen zwei Fotos wurde {name} um {mm} mm verschoben und verbindet sie nicht. Zwischen Fotos dürfen weder Blätter noch Haut bewegt werden.',
  'hide.found.references-to-one-side':
    'Die Maße liegen auf einer Seite der Haut, und ihre ferne Seite kann um {mm} mm abweichen. Leg Blätter vor alle Ecken.',
  'hide.found.references-too-small':
    'Die Maße sind klein neben der Haut, also kann ihr Rand um {mm} mm abweichen. Leg Blätter vor alle Ecken, oder nimm ein größeres Rechteck.',
  'hide.found.too-few-pixels':
    'Das Foto hat nur {value} Pixel je Millimeter, wo die Haut am schlechtesten liegt. Geh näher heran, nimm die volle Größe der Kamera, oder mach mehrere Fotos.',
  'hide.found.shine-on-hide':
    'Auf {percent} % der Haut ist das Licht so hell, dass man vom Leder nichts sieht. Nimm das Foto in gleichmäßigem Licht auf, ohne Blitz.',
  'hide.found.hide-leaves-picture':
    'Die Haut geht entlang von {mm} mm ihres Randes über das Foto hinaus, ist also größer als die Fläche sagt. Nimm sie ganz auf, oder füge ein Foto dazu.',
  'hide.found.edge-points-astray': {
    one: 'Eine Stelle auf dem Rand liegt mehr als 200 mm daneben und wurde weggelassen.',
    other: '{n} Stellen auf dem Rand liegen mehr als 200 mm daneben und wurden weggelassen.',
  },
  'hide.found.edge-unsure':
    'Entlang von {mm} mm des Randes sind Leder und Boden schwer zu unterscheiden; er kann dort um bis zu {most} mm abweichen. Teile werden davon ferngehalten. Bessere den Rand aus, wo er nicht stimmt.',
  'hide.found.no-backbone-guessed':
    'Die Rückenlinie ließ sich nicht schätzen, also sagt nichts, in welcher Richtung sich das Leder am wenigsten dehnt. Zieh eine Linie vom Kopf zum Schwanz.',
  'hide.found.photo-of-moved-hide':
    'Die Haut liegt {mm} mm neben dem, was das erste Foto zeigt. Zwischen Fotos muss sie still liegen: Nimm sie noch einmal auf.',
  'hide.found.other-side-flaws': {
    one: 'Ein Zeichen vom Foto der anderen Seite wurde auf die Haut übertragen.',
    other: '{n} Zeichen vom Foto der anderen Seite wurden auf die Haut übertragen.',
  },
  'hide.found.other-side-ambiguous':
    'Die andere Seite passt auf zwei Arten auf die Haut, auf {misfit} mm und auf {other} mm genau; die bessere wurde genommen. Zwei oder mehr Zeichen, die beide Seiten zeigen, machen es sicher.',
  'hide.found.chalk-hardly-shows':
    'Das Leder ist so hell, dass weiße Kreide kaum zu sehen ist; Zeichen können fehlen. Nimm hellblaue Kreide, und sieh nach, ob jedes gefunden wurde.',
};
