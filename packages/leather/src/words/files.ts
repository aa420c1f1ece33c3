import type { SentenceTable } from './sentence.js';

const near = (word: string | undefined): string => (word === undefined ? '' : ` Did you mean "${word}"?`);

/** "a hide", "an order". */
const aKind = (kind: string): string => `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind}`;

/** English sentences for what can be wrong with a file or a quantity. Values come in already quoted. */
export const FILE_SENTENCES = {
  'too-large': (p: { sizeMb: number; limitMb: number }) =>
    `The file has ${p.sizeMb} MB of text, and at most ${p.limitMb} MB are read; split it or check that it is the right file.`,
  'empty-file': (p: { format: string }) =>
    `The file is empty; it should start with a line that says format: ${p.format}.`,
  'not-json': (p: { found: string; wanted: string }) =>
    `The text breaks off being JSON here: found ${p.found}, but expected ${p.wanted}.`,
  'cut-off': () =>
    'The file stops in the middle, so it was not saved or copied whole; fetch it again from where it came.',
  'not-yaml': (p: { problem: string }) =>
    `The text can't be read as YAML (${p.problem}); check the indentation and the quotes of this line and of the one above.`,
  'several-documents': () =>
    'The file holds several documents separated by "---"; keep one document, without such a line between parts.',
  'too-deep': (p: { limit: number }) =>
    `The text nests lists and groups deeper than ${p.limit} levels; no file of this kind needs that.`,
  'too-many-aliases': (p: { limit: number }) =>
    `The text repeats parts by "*" aliases more than ${p.limit} times over; write the parts out.`,
  'duplicate-key': (p: { key: string }) =>
    `The key ${p.key} stands twice in the same group; keep one of the two.`,
  'reserved-key': (p: { key: string }) => `The key ${p.key} can't be used as a name; choose another one.`,
  'not-a-group': (p: { found: string }) =>
    `The file holds ${p.found} at its top, where a group of keys with a format line should be.`,

  'format-missing': (p: { format: string }) =>
    `The format line is missing; add format: ${p.format} as the first line, if this is such a file.`,
  'format-strange': (p: { found: string; format: string }) =>
    `The format line says ${p.found}, which is no format of Hidebound; it should say ${p.format}.`,
  'format-other': (p: { found: string; format: string }) =>
    `This is ${aKind(p.found)} file, but ${aKind(p.format)} file is wanted here; give the other file.`,
  'format-newer': (p: { found: string; newest: string }) =>
    `The file was written by a newer Hidebound (${p.found}); this one reads up to ${p.newest}, so install the newer one to open it.`,

  'area-reversed': (p: { found: string }) =>
    `${p.found} runs from more to less; write the area from the smaller to the larger, such as "20-22 ft2".`,
  'workshop-row-stale': (p: { topic: string; name: string }) =>
    `In "${p.topic}", the row "${p.name}" was written out from what was built in, and that is another value now; yours counts. "hidebound workshop --topic ${p.topic}" shows the new one.`,
  'no-such-figure': (p: { found: string; near?: string }) =>
    `There is no figure ${p.found}.${near(p.near)} "hidebound workshop" lists all of them.`,
  'figure-unit': (p: { figure: string; found: string; unit: string }) =>
    `The figure ${p.figure} is in ${p.unit}, not in ${p.found}; give it in ${p.unit}.`,
  'figure-reversed': (p: { figure: string; from: number; to: number }) =>
    `The figure ${p.figure} runs from ${p.from} to ${p.to}; write the smaller one as "from".`,
  'offer-unknown': (p: { what: string; found: string; known: string }) =>
    `The offer names the ${p.what} ${p.found}, which its table does not have (${p.known}); add it there or name another one.`,
  'unknown-key': (p: { key: string; near?: string; known: string }) =>
    `The key ${p.key} is not known here.${near(p.near)} Known keys: ${p.known}.`,
  'missing-file': (p: { file: string }) =>
    `The job has no file "${p.file}" that could be read; add it, or take it out of the order.`,
  'missing-key': (p: { key: string; right: string }) =>
    `The key "${p.key}" is missing; it should be ${p.right}.`,
  'wrong-value': (p: { found: string; right: string }) => `This is ${p.found}, but it should be ${p.right}.`,

  'bad-length': (p: { found: string }) =>
    `${p.found} is not a length; write millimetres as a bare number (40) or a number with its unit in quotes ("4 cm", "1 1/2 in").`,
  'bad-angle': (p: { found: string }) =>
    `${p.found} is not an angle; write degrees as a bare number (90) or "90 deg".`,
  'bad-thickness': (p: { found: string }) =>
    `${p.found} is not a thickness; write millimetres as a bare number (2), a span ("2.0-2.4 mm") or ounces ("4-5 oz").`,
  'ambiguous-ounces': (p: { found: string; from: string; to: string; ounces: string }) =>
    `${p.found} can be read two ways: as ${p.from} to ${p.to} oz or as ${p.ounces} oz; write "${p.from}-${p.to} oz" for the first or "${p.ounces} oz" for the second.`,
  'bad-area': (p: { found: string }) =>
    `${p.found} is not an area; write a number with its unit, such as "22 3/4 ft2", "2.1 m2" or "210 dm2".`,
  'area-needs-unit': (p: { found: string }) =>
    `${p.found} is an area without a unit; write "22 3/4 ft2", "2.1 m2" or "210 dm2".`,
  'ambiguous-area': (p: {
    found: string;
    quarters: string;
    quartersFt2: string;
    tenths: string;
    quartersM2: string;
    tenthsM2: string;
  }) =>
    `${p.found} can be read two ways: quarters of a foot make it ${p.quartersFt2} ft2 (${p.quartersM2} m2), tenths make it ${p.tenths} ft2 (${p.tenthsM2} m2); write "${p.quarters} ft2" for the first or "${p.tenths} ft2" for the second.`,
  'ambiguous-comma': (p: { found: string; decimal: string; thousands: string }) =>
    `${p.found} can be read two ways because of its comma: as ${p.decimal} or as ${p.thousands}; write the number with a point, or without the comma.`,
  'bad-money': (p: { found: string }) =>
    `${p.found} is not a price; write an amount of 0 or more and a three-letter currency, such as "12.50 EUR".`,
  'thickness-reversed': (p: { from: string; to: string }) =>
    `The thickness runs from ${p.from} mm down to ${p.to} mm; write the smaller figure first.`,
  'out-of-range': (p: { found: string; unit: string; from: string; to: string }) =>
    `${p.found} is out of range; from ${p.from} to ${p.to} ${p.unit} is possible here.`,

  'hide-outline-crosses': (p: { what: string }) =>
    `The line of ${p.what} crosses itself at this place; redraw it so that it runs once around.`,
  'hide-no-area': (p: { what: string }) =>
    `The line of ${p.what} encloses no area; draw it as a closed line with some leather inside.`,
  'hide-open-line': (p: { what: string }) =>
    `The line of ${p.what} does not end where it starts; set "closed" to true and end the last segment at the start.`,
  'hide-opening-outside': (p: { index: number }) =>
    `Opening ${p.index} does not lie within the outline at this place; an opening is a hole within the hide, so move it inside or change the outline.`,
  'hide-openings-overlap': (p: { index: number; other: number }) =>
    `Openings ${p.index} and ${p.other} overlap at this place; draw them as one opening.`,
  'hide-flaw-outside': (p: { id: string }) =>
    `Flaw ${p.id} lies wholly outside the outline; move it onto the hide or remove it.`,
  'hide-zone-outside': (p: { id: string }) =>
    `Zone ${p.id} lies wholly outside the outline; move it onto the hide or remove it.`,
  'hide-duplicate-id': (p: { what: string; id: string }) =>
    `Two ${p.what} have the id ${p.id}; give each its own.`,
  'hide-flaw-without-effect': (p: { id: string }) =>
    `Flaw ${p.id} has no kind, so its effect must be written out: looks, strength and isVoid.`,
  'hide-short-line': (p: { what: string }) =>
    `The line of ${p.what} has no length; give it at least two different points.`,
  'hide-reading-outside': (p: { index: number }) =>
    `Thickness reading ${p.index} lies outside the outline; move it onto the hide or remove it.`,

  'piece-source': (p: { piece: string; found: string }) =>
    `Piece ${p.piece} has ${p.found}; give exactly one of pattern, strap, rectangle or disc.`,
  'piece-without-pattern': (p: { piece: string }) =>
    `Piece ${p.piece} names a "piece" of a pattern file, but no pattern; add "pattern: file.svg".`,
  'piece-mirrored-count': (p: { piece: string; mirrored: number; count: number }) =>
    `Piece ${p.piece} asks for ${p.mirrored} mirrored out of ${p.count}; "mirrored" counts within "count", so it can't be more.`,
  'piece-duplicate': (p: { piece: string; article: string }) =>
    `Article ${p.article} has two pieces named ${p.piece}; give each its own name.`,
  'article-duplicate': (p: { article: string }) =>
    `Two articles are named ${p.article}; give each its own name, or raise its number of sets.`,
  'no-such-piece': (p: { piece: string; article: string; near?: string }) =>
    `There is no piece ${p.piece} in article ${p.article}.${near(p.near)}`,
  'no-such-leather': (p: { leather: string; piece: string; near?: string; known: string }) =>
    `Piece ${p.piece} is to be of leather ${p.leather}, which is not listed under "leathers" (${p.known}).${near(p.near)}`,
  'leather-duplicate': (p: { leather: string }) =>
    `The leather ${p.leather} is listed twice; give each its own name.`,
  'article-leather-not-in-order': (p: { leather: string; article: string }) =>
    `Article ${p.article} needs a leather named ${p.leather}, but the order does not list it; add it under "leathers" with its hides.`,
  'bad-page-numbers': (p: { found: string }) =>
    `${p.found} are no page numbers; write them from 1 up, each once, such as "2-7, 9".`,
  'fixed-needs-angle': () => 'The direction "fixed" needs an angle; add "angle", in degrees.',
  'seam-target': (p: { found: string }) => `${p.found} is not a seam's other side; write "piece/line".`,
  'strap-does-not-fit': (p: { piece: string; what: string }) => `Strap ${p.piece} can't be cut: ${p.what}.`,
  'no-such-method': (p: { method: string; near?: string; known: string }) =>
    `The cutting method ${p.method} is not in the workshop's table (${p.known}).${near(p.near)} Or give its gap, edge, void and kerf here.`,

  'layout-no-such-hide': (p: { hide: string }) =>
    `Hide ${p.hide} is not among the layout's hides; list it there, or correct the name.`,
  'layout-no-such-piece': (p: { piece: string; article: string }) =>
    `Piece ${p.piece} of article ${p.article} is not among the layout's pieces; list it there, or correct the name.`,
  'layout-no-such-block': (p: { id: string }) =>
    `There is no lane or rough cut with the id ${p.id} in this layout.`,
  'layout-duplicate': (p: { what: string }) =>
    `${p.what} stands twice in the layout; each may stand there once.`,
  'curve-not-closed': () =>
    'A closed line must end exactly where it starts; let its last segment end at its start.',

  'journal-number': (p: { found: number; wanted: number }) =>
    `Entry number ${p.found} stands where ${p.wanted} should be; entries are numbered from 1 without a gap and only ever added.`,
  'journal-undo': (p: { number: number }) =>
    `Entry ${p.number} can't be undone here: it is not an earlier "taken" entry, or it was undone already.`,
  'bundle-path': (p: { path: string }) =>
    `${p.path} is not a path within the bundle; write a relative path with "/" and without "..".`,
  'bundle-duplicate': (p: { path: string }) => `The file ${p.path} stands twice in the bundle; keep one.`,
  'bundle-content': (p: { path: string }) =>
    `The content of ${p.path} is not valid base64 text; export the bundle again.`,
} as const satisfies SentenceTable;
