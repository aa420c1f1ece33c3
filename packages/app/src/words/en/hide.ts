/** Texts of how a hide comes in, in English. */
export const HIDE_EN = {
  'hide.new': 'New hide',
  'hide.choose': 'Hide: {name}. Choose another one',
  'hide.ofHides': { one: 'the only hide', other: 'one of {n} hides' },
  'hide.area': 'Area',
  'hide.scaledBy': 'Scale by',
  'hide.placesWithin': 'Places known within',
  'hide.invoiceAgrees': 'Agrees with the invoice ({invoiced}) within {percent}.',
  'hide.invoiceLess':
    '{area} less than the invoiced {invoiced} ({percent}). Measure the lines of the printed sheets, then ask the seller.',
  'hide.invoiceMore':
    '{area} more than the invoiced {invoiced} ({percent}). Measure the lines of the printed sheets; one of the two figures is wrong.',
  'hide.shortLess': '{percent} less than invoiced',
  'hide.shortSame': 'as invoiced',
  'hide.shortMore': '{percent} more than invoiced',
  'hide.tellInvoice': 'What does the invoice say?',
  'hide.notUsed': 'This job does not use the hide yet.',
  'hide.useFor': 'Use it for {leather}',
  'hide.photoTells': {
    one: 'What the photo tells: one remark',
    other: 'What the photo tells: {n} remarks',
  },
  'hide.chalked': {
    one: 'One chalk mark was taken over as a flaw.',
    other: '{n} chalk marks were taken over as flaws.',
  },
  'hide.severity.note': 'Note:',
  'hide.severity.warning': 'Look:',
  'hide.severity.error': 'Wrong:',
  'hide.mend': 'Mend the edge',
  'hide.seeOnPhoto': 'See it on the photo',
  'hide.seen': 'What was found on the photo',
  'hide.seenHow':
    'The traced edge and what gave the scale, each with how far it lies off. Tenths of a millimetre are good.',
  'hide.backToHide': 'Back to the hide',
  'hide.how.chalk': 'what you know, in chalk',
  'hide.how.sheets': 'printed sheets beyond the corners',
  'hide.howTo':
    'Lay the hide flat on a floor of another shade, printed sheets beyond its corners, and photograph it from straight above, as high as you can. Chalk what you know: rings and lines become flaws.',
  'hide.takePhoto': 'Take a photo',
  'hide.choosePhotos': 'Choose photos',
  'hide.onePhotoMore': 'One more photo of this hide',
  'hide.shows': 'It shows',
  'hide.shows.as it lies': 'the hide as it lies, or a part of it',
  'hide.shows.raking': 'the same, lit from low at one side',
  'hide.shows.other side': 'its other side, turned over',
  'hide.betweenPhotos': 'Between the photos of this side the hide',
  'hide.layStill': 'lay still',
  'hide.wasMoved': 'was dragged along',
  'hide.stillHow':
    'Each photo shows a sheet that another one shows, too; neither sheets nor hide move in between.',
  'hide.movedHow':
    'The sheets stay, the leather moves. Three crosses or more, chalked far apart, lie in every part that two photos show.',
  'hide.whyMore': 'What more photos are good for',
  'hide.whyMore.parts': 'A large hide part by part: each photo shows a sheet that another one shows, too.',
  'hide.whyMore.raking':
    'Light from low at one side, hide and sheets untouched: wrinkles and healed cuts throw shadows.',
  'hide.whyMore.other':
    'The other side, turned over, with sheets around it: what is chalked there is laid onto this side.',
  'hide.missingAsItLies': 'One photo has to show the hide as it lies.',
  'hide.movedAndRaking':
    'A hide that was dragged along can’t be lit from one side as well; put one of the two away.',
  'hide.dropPhoto': 'Put away',
  'hide.photosOfJob': 'Photos in this job:',
  'hide.opening': 'The photo is being opened…',
  'hide.otherWays': 'Without a photo',
  'hide.fromDrawing': 'A traced drawing (SVG)',
  'hide.fromFile': 'A hide file, with its photo',
  'hide.thereAlready': '{name} is in this job already.',
  'hide.renamed': 'Another hide of this job is called {name}, so this one is called {other}.',
  'hide.withoutPhoto':
    '{name} came without its photo. Bring in the hide file and its pictures together to see it.',
  'hide.finishFirst': 'Trace or leave what lies on the table first, then bring in {file}.',
  'hide.isPattern': '{file} is a pattern; patterns come in at Pieces.',
  'hide.leftOut': {
    one: '{file} belongs to no hide file here and was left out; bring photos in by themselves.',
    other:
      '{file} and others, {n} in all, belong to no hide file here and were left out; bring photos in by themselves.',
  },
  'hide.dropHere': 'Photos, hide files and drawings can also be dragged onto the table.',
  'hide.fromNumbers': 'A panel by its measures',
  'hide.sheets': 'Reference sheets',
  'hide.sheetsWhy':
    'They lie beside the hide and tell how large it is. Print them at 100 %, not fitted to the page; four or more.',
  'hide.sheetsMake': 'Make the sheets to print (PDF)',
  'hide.linesWhy':
    'Printers stretch. Measure the two long lines of one sheet with a steel rule and tell it once.',
  'hide.lineAcross': 'Line across',
  'hide.lineDown': 'Line down',
  'hide.fromPhoto': 'From photo to hide',
  'hide.whichSide': 'Which side do you see?',
  'hide.side.grain': 'Grain side',
  'hide.side.flesh': 'Flesh side',
  'hide.whatBeside': 'What lies beside it?',
  'hide.beside.sheets': 'Printed sheets',
  'hide.beside.rectangle': 'A rectangle',
  'hide.beside.card': 'A bank card',
  'hide.beside.rules': 'Two steel rules',
  'hide.placesHow.rectangle':
    'Drag the four corners onto those of the rectangle, or tap where they belong. The larger the rectangle, the better.',
  'hide.placesHow.card':
    'Drag the four corners onto those of the card, where its rounded corners would end if they were sharp. A card is far too small for a whole hide.',
  'hide.placesHow.rules':
    'The rules lie at a right angle. Drag 1 and 2 onto two marks of the one, 3 and 4 onto two marks of the other, as far apart as you can, and tell what they read.',
  'hide.rectangleWidth': 'Across',
  'hide.rectangleHeight': 'Down',
  'hide.reading': 'The rule reads at {n}',
  'hide.place': 'Place {n}',
  'hide.moreKnown': 'What else you know',
  'hide.thickness': 'Thickness',
  'hide.invoiced': 'Area on the invoice',
  'hide.helpEdge': 'Help to find the edge',
  'hide.helpEdgeHow':
    'Where leather and floor look alike, draw a stroke on the leather, one on the floor, or tap places that lie exactly on the edge.',
  'hide.pen.hide': 'Leather',
  'hide.pen.floor': 'Floor',
  'hide.pen.edge': 'On the edge',
  'hide.forgetStrokes': 'Forget the strokes',
  'hide.missingSide': 'Say which side you see.',
  'hide.missingLengths': 'Say how long it is.',
  'hide.trace': 'Trace the hide',
  'hide.traceAgain': 'Trace again',
  'hide.stop': 'Stop',
  'hide.leave': 'Leave',
  'hide.done': 'Done',
  'hide.tracing': 'The hide is being traced',
  'hide.step.open': 'Opening the photo…',
  'hide.step.load': 'Fetching what is needed to see…',
  'hide.step.references': 'Looking for what gives the scale…',
  'hide.step.floor': 'Finding out where the camera stood…',
  'hide.step.straighten': 'Straightening the photo…',
  'hide.step.outline': 'Following the edge of the hide…',
  'hide.step.chalk': 'Reading what is chalked on it…',
  'hide.step.other side': 'Laying the other side onto it…',
  'hide.step.candidates': 'Looking for possible flaws…',
  'hide.step.backbone': 'Guessing the backbone…',
  'hide.mendHow':
    'Draw a stroke over leather that was left out, or over floor that was taken for leather; or tap where the edge truly runs. Then trace again. Your marks stay.',
  'hide.marksDrawn': { one: 'One stroke or place is drawn.', other: '{n} strokes and places are drawn.' },
  'hide.panelStem': 'panel',
  'hide.panelWidth': 'Across',
  'hide.panelHeight': 'Down',
  'hide.panelLeast': 'It stretches least',
  'hide.panelLeast.across': 'across',
  'hide.panelLeast.down': 'down',
  'hide.panelLeast.unknown': 'not known',
  'hide.panelMake': 'Lay it on the table',
  'hide.undo.traced': 'hide traced',
  'hide.undo.edgeMended': 'edge traced again',
  'hide.undo.added': 'hide added',
  'hide.undo.used': 'hide taken for the job',
  'hide.undo.lines': 'lines of the sheets told',
  'hide.reference.sheet': 'sheet {number}',
  'hide.reference.count': { one: 'one printed sheet', other: '{n} printed sheets' },
  'hide.reference.sheets': 'the printed sheets',
  'hide.reference.rectangle': 'rectangle',
  'hide.reference.rules': 'rules',
  'hide.reference.card': 'card',
  'hide.cut.whole hide': 'whole hide',
  'hide.cut.side': 'side',
  'hide.cut.back': 'back',
  'hide.cut.bend': 'bend',
  'hide.cut.butt': 'butt',
  'hide.cut.shoulder': 'shoulder',
  'hide.cut.double shoulder': 'double shoulder',
  'hide.cut.belly': 'belly',
  'hide.cut.panel': 'panel',
  'hide.cut.offcut': 'offcut',
  'hide.refused.no-hide-file': 'This is no hide file; choose one whose name ends in .hide.json.',
  'hide.refused.not-a-photo': '{file} is no photo that can be read here; choose a JPEG, PNG or WebP.',
  'hide.refused.photo-heic':
    '{file} is of a kind that can’t be read here; set the phone’s camera to JPEG (the most compatible format), or export the photo as JPEG.',
  'hide.refused.photo-broken':
    '{file} is damaged or stops in the middle; copy it again from the camera, or export it anew as JPEG.',
  'hide.refused.photo-too-many-pixels': '{file} has more than 100 megapixels; export it smaller.',
  'hide.refused.photo-too-small':
    '{file} is too small, with fewer than 300 pixels one way; give the photo as the camera took it, not a preview.',
  'hide.refused.no-reference':
    'No printed sheet was found in {file}, so nothing tells how large the hide is. See that all four marks of a sheet are in the picture, sharp, with white around them; or say below what else lies beside the hide.',
  'hide.refused.photo-not-tied':
    '{file} shows no sheet that another photo shows, so nothing tells how they lie together; photograph the same sheet in both, or put one photo away.',
  'hide.refused.bad-reference':
    'The four places can’t be as they are: they must not lie on one line, and lengths must be above 0.',
  'hide.refused.sides-do-not-match':
    'What {file} shows can’t be laid onto the hide, neither by its edge nor by marks that both sides show. Photograph the whole turned hide again, with two marks or more that both sides show.',
  'hide.refused.moved-photos-do-not-join':
    '{file} shares fewer than two chalked crosses with the other photos, so nothing tells where its part of the hide lies. Chalk three or more, far apart, into each part that two photos show.',
  'hide.refused.crosses-disagree':
    'The crosses in {file} don’t lie as in the other photos: the leather was stretched or creased. Lay it flat, drag it along without pulling, and photograph it again.',
  'hide.refused.no-hide-in-photo':
    'No hide was found in {file}. Lay it on a floor of another shade, or draw one stroke on the leather and one on the floor, and trace again.',
  'hide.found.one-reference-only':
    'Only one reference is seen ({name}), so places far from it may be off by {mm} mm. Lay one sheet beyond each corner of the hide.',
  'hide.found.steep-view':
    'The photo was taken at a slant of about {degrees}°. Take it from as straight above as you can.',
  'hide.found.blurred-photo':
    'The photo is blurred (edges are {px} pixels wide). Wipe the lens, rest the camera on something, give more light.',
  'hide.found.sheet-too-bright': 'The paper of {name} is too bright. Take the photo darker, without flash.',
  'hide.found.sheet-too-dim':
    'The marks of {name} are hardly darker than their paper. Give more light, print in full black.',
  'hide.found.bars-not-measured':
    'Nobody said how long the two lines of the printed sheets are, so all lengths may be off by {percent} %. Measure both with a steel rule and tell it under New hide, Reference sheets.',
  'hide.found.marker-left-out':
    'A mark of {name} seems to lie {mm} mm from its place and hardly counts. See whether it is covered, bent or smeared.',
  'hide.found.reference-does-not-fit':
    'The places of {name} lie {mm} mm off from where the rest of the photo puts them. Lay it flat, and check what was said of it.',
  'hide.found.sheet-not-flat':
    'It looks as if the paper of {name} stood up by some {mm} mm. Lay it flat, with weights on its corners.',
  'hide.found.sheet-size-differs':
    'It looks as if {name} were {percent} % off in size from the others. Was it printed at another size? Measure its lines again.',
  'hide.found.sheet-stretched':
    'The marks of {name} are {percent} % too long one way. Measure both lines again.',
  'hide.found.sheet-moved':
    'Between two photos {name} was moved by {mm} mm, so it does not tie them together. Move neither sheets nor hide between photos.',
  'hide.found.references-to-one-side':
    'The references lie to one side of the hide, and its far side may be off by {mm} mm. Lay sheets beyond all its corners.',
  'hide.found.references-too-small':
    'The references are small beside the hide, so its edge may be off by {mm} mm. Lay sheets beyond all its corners, or use a larger rectangle.',
  'hide.found.too-few-pixels':
    'The photo has only {value} pixels for a millimetre where the hide lies worst. Go nearer, use the camera’s full size, or take several photos.',
  'hide.found.shine-on-hide':
    'On {percent} % of the hide the light is so bright that nothing of the leather is seen. Take the photo in even light, without flash.',
  'hide.found.hide-leaves-picture':
    'The hide goes on beyond the photo along {mm} mm of its edge, so it is larger than the area says. Take it again with the whole hide in it, or add a photo.',
  'hide.found.edge-points-astray': {
    one: 'One place on the edge lies more than 200 mm from it and was left out.',
    other: '{n} places on the edge lie more than 200 mm from it and were left out.',
  },
  'hide.found.edge-unsure':
    'Along {mm} mm of the edge leather and floor are hard to tell apart; it can be off by up to {most} mm there. Layouts keep clear of it. Mend the edge where it is wrong.',
  'hide.found.no-backbone-guessed':
    'No backbone could be guessed, so nothing tells the direction in which the leather stretches least. Draw a line from head to tail.',
  'hide.found.photo-of-moved-hide':
    'The hide lies {mm} mm off from where the first photo shows it. It must lie still between photos: take them again.',
  'hide.found.other-side-flaws': {
    one: 'One mark from the photo of the other side was laid onto the hide.',
    other: '{n} marks from the photo of the other side were laid onto the hide.',
  },
  'hide.found.other-side-ambiguous':
    'The other side fits the hide in two ways, within {misfit} mm and within {other} mm; the better one was taken. Two marks or more that both sides show would make it sure.',
  'hide.found.chalk-hardly-shows':
    'The leather is so pale that white chalk hardly shows, so marks may have been missed. Use pale blue chalk, and look whether each mark was found.',
} as const;
