import { DXF_FINDINGS, DXF_LEFT_OUT, DXF_REFUSALS } from './dxf/words.js';
import { PAGES_FINDINGS, PAGES_REFUSALS } from './pages/words.js';
import { PDF_FINDINGS, PDF_REFUSALS } from './pdf/words.js';
import { PHOTO_CAMERA_FINDINGS, PHOTO_CAMERA_REFUSALS } from './photo/camera/words.js';
import { PHOTO_CARDS_FINDINGS, PHOTO_CARDS_REFUSALS } from './photo/cards/words.js';
import { PHOTO_DECODE_FINDINGS, PHOTO_DECODE_REFUSALS } from './photo/decode/words.js';
import { PHOTO_MARKS_FINDINGS, PHOTO_MARKS_REFUSALS } from './photo/marks/words.js';
import { PHOTO_OUTLINE_FINDINGS, PHOTO_OUTLINE_REFUSALS } from './photo/outline/words.js';
import { PHOTO_TRACE_FINDINGS, PHOTO_TRACE_REFUSALS } from './photo/trace/words.js';
import { REPAIR_FINDINGS } from './pieces/repair-words.js';
import { plural } from './sentence.js';
import type { Sentence } from './sentence.js';

/** Files that can't be read. */
const REFUSALS = {
  'absurd-coordinate': ({ metres, limit }) =>
    `A point lies ${metres} m from the corner of the drawing; patterns reach ${limit} m at most, so check the units and transforms.`,
  'bad-encoding': ({ encoding }) => `The text is not valid ${encoding}; save the drawing again as UTF-8.`,
  'bad-number': ({ what }) =>
    `The number in its ${what} is not a finite one; draw the element again or correct the number.`,
  'bad-reading': ({ name, value }) => `The ${name} is given as ${value}; give a number above 0.`,
  'binary-file': ({ what }) =>
    `This is ${what}, no drawing that can be read here; export it as plain SVG (a pattern as PDF or DXF, too).`,
  'compressed-file': () => 'This is a compressed SVG (svgz); save it as plain, uncompressed SVG.',
  'empty-file': () => 'The file is empty; save the drawing again.',
  'entity-bomb': ({ name }) =>
    `The entity "${name}" grows without end or far too large; save the drawing as plain SVG, without entities.`,
  'external-entity': ({ name }) =>
    `The entity "${name}" asks for another file, and nothing is ever fetched; save the drawing as plain SVG, all in one file.`,
  'known-length-missing': ({ element }) =>
    `No drawn line is called "${element}", so its known length says nothing; name a line of this file by its id or label.`,
  'no-outline': () =>
    'No outline of the hide was found; draw it as one closed line and name it or its layer "outline".',
  'bad-hide': ({ what, remedy }) => `${what}; ${remedy}.`,
  'not-svg': ({ root }) =>
    root === undefined
      ? 'This is no drawing that can be read here; export it as plain SVG (a pattern as PDF or DXF, too).'
      : `The file holds <${root}>, not an SVG drawing; export it as plain SVG (a pattern as PDF or DXF, too).`,
  'not-well-formed': ({ what }) =>
    `The XML is broken here (${what}); save the drawing again from the program that made it.`,
  'path-too-long': ({ limit }) =>
    `There are more than ${limit} segments here, far more than an outline needs; simplify the path in the drawing program.`,
  'too-deep': ({ limit }) =>
    `Groups are nested more than ${limit} deep; ungroup the drawing and save it again.`,
  'too-large': ({ megabytes, limit }) =>
    `The file has ${megabytes} MB; a pattern has ${limit} MB at most, so take pictures and hidden layers out of it.`,
  'too-many-elements': ({ limit }) =>
    `The drawing has more than ${limit} elements; split the drawing into several files.`,
  'too-many-clones': ({ limit }) =>
    `Clones of clones would draw more than ${limit} elements; unlink them in the drawing program.`,
  'truncated-file': () => 'The file stops in the middle of the drawing; copy or save it again.',
  'use-cycle': ({ target }) =>
    `The clone ${target} contains itself; unlink the clone in the drawing program.`,
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings about size and structure. */
const STRUCTURE = {
  'bad-view-box': ({ value }) =>
    `The viewBox "${value}" can't be read and is left out; it should be four numbers, the last two above 0.`,
  'bad-size': ({ name, value }) =>
    `The ${name} "${value}" can't be read and is left out; it should be a length such as "300mm".`,
  'dpi-without-effect': () =>
    'The drawing gives its size in real units, so the px per inch make no difference; leave them out, or give a scale.',
  'other-resolution': ({ dpi, now, then }) =>
    `The drawing looks as if it were made at ${dpi} px per inch: its largest part measures ${now} mm now and would be ${then} mm; if that is right, read it with dpi ${dpi}.`,
  'bad-transform': ({ value }) =>
    `The transform "${value}" can't be read and is left out; check the element's place.`,
  'flat-transform': () => 'Its transform flattens everything to a line, so nothing of it is drawn.',
  'nothing-drawn': () => 'The whole drawing is hidden; show it and save it again.',
  'broken-path': ({ character }) =>
    `The path data can't be read from character ${character} on; what stands before it is kept, so check the line's end.`,
  'left-out': ({ reason, count, elements }) => {
    const what = Number(count) === 1 ? '1 element' : `${count} elements`;
    return `Left out, ${LEFT_OUT_WORDS[String(reason)] ?? String(reason)}: ${what} (${elements}).`;
  },
} as const satisfies Readonly<Record<string, Sentence>>;

const LEFT_OUT_WORDS: Readonly<Record<string, string>> = {
  ...DXF_LEFT_OUT,
  'clip path': 'a clip path, so lines are read as if nothing were cut off',
  'external reference': 'it points to another file, and nothing is ever fetched',
  filter: 'a filter, which changes no line',
  'foreign object': 'it is no drawing',
  hidden: 'hidden',
  image: 'a picture has no lines',
  lettering: 'it draws a letter of a text',
  mask: 'a mask, so lines are read as if nothing were covered',
  'missing target': 'a clone whose original is not in the file',
  'no size': 'it has no size',
  'not painted': 'it has neither stroke nor fill',
  'marked to be ignored': 'its name or a rule says that it is not to be read',
  'other branch of a switch': 'another branch of the switch was taken',
  script: 'scripts are never run',
  'style not read': 'a style rule that is not read',
  text: 'text is no line (one within a piece may name it)',
  'drawn twice': 'drawn twice on the same place',
  'unknown element': 'an element that SVG does not know',
  view: 'a view is no drawing',
};

/** Findings about lines and pieces. */
const PATTERNS = {
  'lettering-left-out': ({ count, rows }) =>
    `${plural(count, 'small filled outline', 'small filled outlines')} in ${plural(rows, 'row', 'rows')} ${Number(count) === 1 ? 'is' : 'are'} taken for lettering and left out, the first one here; a rule with the role "cut" or "cut-out" for their label or colour says otherwise.`,
  'lines-joined': ({ from, to }) =>
    `${plural(from, 'open line', 'open lines')} whose ends meet within 0.1 mm became ${plural(to, 'line', 'lines')}.`,
  'piece-in-opening': () =>
    'An outline within an opening is taken for a piece of its own; name it "ignore" if it is none.',
  'too-small-for-a-piece': ({ area }) =>
    `An outline of ${area} mm² outside any piece is too small for a piece and is left out; draw it within a piece, or larger.`,
  'holes-outside-pieces': ({ count, most }) =>
    `${plural(count, 'circle', 'circles')} of at most ${most} mm ${Number(count) === 1 ? 'lies' : 'lie'} in no piece and ${Number(count) === 1 ? 'is' : 'are'} left out as ${Number(count) === 1 ? 'a hole' : 'holes'}; name ${Number(count) === 1 ? 'it' : 'them'} "cut" if ${Number(count) === 1 ? 'it is a piece' : 'they are pieces'}.`,
  'dashed-outline-as-cut': ({ element }) =>
    `The dashed outline ${element} lies in no other one and is taken for a cut line; draw cut lines solid, or name it by its role.`,
  'inner-outline-as-stitch': ({ share }) =>
    `A closed line within a piece, ${share} % of its area, is taken for a stitch line; name it "cut-out" if it is an opening.`,
  'holes-as-stitch-line': ({ rows, holes }) =>
    `${plural(holes, 'small hole', 'small holes')} in ${plural(rows, 'row', 'rows')} became stitch lines through their centres.`,
  'role-guessed': ({ pieces, role, count }) =>
    `${plural(count, 'line', 'lines')} without a role ${Number(count) === 1 ? 'is' : 'are'} taken for ${role} ${Number(count) === 1 ? 'line' : 'lines'} (${pieces}); name the layer or the line to say otherwise.`,
  'outline-crosses-itself': ({ piece }) =>
    `The cut line of "${piece}" crosses itself here; pull the line apart in the drawing.`,
  'direction-not-drawn': ({ count, pieces }) =>
    `${plural(count, 'piece has', 'pieces have')} no direction arrow, so the long axis is taken (${pieces}); draw a line named "direction" towards the tail to say otherwise.`,
  'several-directions': ({ piece }) =>
    `"${piece}" has several direction lines and the longest is taken; keep one.`,
  'closed-direction': () =>
    'The direction mark is a closed outline, which has no ends; draw a line from head to tail.',
  'open-cut-line': ({ gap }) =>
    `The cut line is open: its ends are ${gap} mm apart; close it, or bring them within 0.1 mm.`,
  'open-face-line': ({ gap }) => `The face's outline is open: its ends are ${gap} mm apart; close it.`,
  'punch-without-diameter': () =>
    'A punch is drawn as a circle of its diameter; this mark is no circle and is left out.',
  'notch-off-the-edge': () => 'The notch does not start at the cut line; move it there.',
  'lines-outside-pieces': ({ count, elements }) =>
    `${plural(count, 'line lies', 'lines lie')} in no piece and ${Number(count) === 1 ? 'is' : 'are'} left out (${elements}); close the outline around them, or name them "ignore".`,
  'name-used-twice': ({ name, unique }) =>
    `Another piece is called "${name}" too, so this one is called "${unique}"; give each its own name.`,
  'text-too-long-for-name': ({ count, pieces, limit }) =>
    `The text in ${plural(count, 'piece', 'pieces')} has more than ${limit} letters, too many for a name, so ${Number(count) === 1 ? 'it has' : 'they have'} a number (${pieces}); write a short name into ${Number(count) === 1 ? 'it' : 'each'}.`,
  'bad-data-number': ({ name, value }) =>
    `${name} says "${value}", which is no whole number, and is left out.`,
  'no-pieces': () => 'No pieces were found; each piece needs one closed cut line.',
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings about traced hides. */
const HIDES = {
  'outline-guessed': () =>
    'No line is named "outline", so the largest closed line is taken for the edge of the hide; name it to be sure.',
  'several-outlines': () =>
    'Several closed lines are named "outline" and the largest is taken; name the others by what they are.',
  'several-backbones': () => 'Several lines are named "backbone" and the longest is taken; keep one.',
  'hide-cut-guessed': ({ cut }) =>
    `The drawing is taken for a ${cut}; say otherwise with data-cut on the svg element.`,
  'flaw-without-kind': () =>
    'The flaw says neither what it is nor what it does, so nothing is cut from there; name it, such as "flaw scar" or "flaw hidden".',
  'zone-without-kind': () =>
    'The zone does not say which one it is and is left out; name it, such as "zone belly".',
  'open-area-line': ({ what }) => `The ${what} is drawn as an open line and is left out; close it.`,
  'unnamed-marks': ({ count, elements }) =>
    `${plural(count, 'line says', 'lines say')} nothing of what ${Number(count) === 1 ? 'it is and is' : 'they are and are'} left out (${elements}); name the layer or the line.`,
  'reading-without-number': () =>
    'The thickness reading has no number and is left out; name it such as "thickness 2.4", in mm.',
  'bad-mark-number': ({ name, value }) =>
    `${name} says "${value}", which is no number above 0 that fits here, and is left out.`,
  'bad-hide-data': ({ name, value }) => `${name} says "${value}", which can't be read, and is left out.`,
} as const satisfies Readonly<Record<string, Sentence>>;

const ALL = {
  ...REFUSALS,
  ...STRUCTURE,
  ...PATTERNS,
  ...HIDES,
  ...PDF_REFUSALS,
  ...PDF_FINDINGS,
  ...PAGES_REFUSALS,
  ...PAGES_FINDINGS,
  ...DXF_REFUSALS,
  ...DXF_FINDINGS,
  ...REPAIR_FINDINGS,
  ...PHOTO_DECODE_REFUSALS,
  ...PHOTO_DECODE_FINDINGS,
  ...PHOTO_CAMERA_REFUSALS,
  ...PHOTO_CAMERA_FINDINGS,
  ...PHOTO_OUTLINE_REFUSALS,
  ...PHOTO_OUTLINE_FINDINGS,
  ...PHOTO_MARKS_REFUSALS,
  ...PHOTO_MARKS_FINDINGS,
  ...PHOTO_CARDS_REFUSALS,
  ...PHOTO_CARDS_FINDINGS,
  ...PHOTO_TRACE_REFUSALS,
  ...PHOTO_TRACE_FINDINGS,
};

/** A code that has a sentence in this package. */
export type IntakeSentenceCode = keyof typeof ALL;

/** Every sentence of this package by code: what is wrong, and what would be right; the place is put in front of it. */
export const INTAKE_SENTENCES: Readonly<Record<string, Sentence>> = ALL;
