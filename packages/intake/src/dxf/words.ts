import type { Sentence } from '../sentence.js';

/** What can make such a file unreadable. */
export const DXF_REFUSALS = {
  'dxf-binary': () => 'This is a DXF in binary form; export it as DXF in text (ASCII) form.',
  'dxf-is-dwg': ({ version }) =>
    `This is a DWG file (${version}), which only its own programs can read; export the drawing as DXF in text (ASCII) form.`,
  'dxf-truncated': () => 'The file stops in the middle of the drawing; copy or export it again.',
  'dxf-bad-pair': ({ text }) =>
    `A group code is expected here, a whole number on a line of its own, not "${text}"; export the drawing again.`,
  'dxf-no-entities': () =>
    'The file holds no entities, so nothing is drawn; export the drawing as DXF again.',
  'dxf-block-cycle': ({ block }) =>
    `The block "${block}" contains itself; take it apart in the drawing program and export again.`,
  'dxf-too-many-inserted': ({ limit }) =>
    `Blocks within blocks would draw more than ${limit} elements; take them apart, or draw fewer copies.`,
  'dxf-no-units': ({ mm, inches, hint }) =>
    `The drawing does not say its unit: it is ${mm} wide if that is mm, ${inches} if it is inches${hint}; say which, with "units" in the order or --units on the command line.`,
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const DXF_FINDINGS = {
  'dxf-no-end': () =>
    'The file has no end mark, but its drawing is complete; if something is missing, export it again.',
  'dxf-units-disagree': ({ header, pieces }) =>
    `The header says ${header} and the pieces' own text says ${pieces}; the header is followed, so check a known length.`,
  'dxf-curves-through-points': ({ count }) =>
    Number(count) === 1
      ? 'Of 1 curve the file gives only points on it, so what is drawn between them is a guess; export it with its control points, or check it against the drawing.'
      : `Of ${count} curves, the first one here, the file gives only points on them, so what is drawn between those is a guess; export them with their control points, or check them against the drawing.`,
  'dxf-pieces-apart': ({ count }) =>
    `${count} pieces lie one over the other in the file, as pattern programs write them, and are set apart.`,
  'dxf-quantity': ({ value }) =>
    `The quantity "${value}" can't be read and is left out; it should be a number, or two for left and right ("1,1").`,
  'dxf-point-off-boundary': () =>
    'The notch is a point that lies away from the boundary, so nothing says where it cuts; move it onto the boundary.',
} as const satisfies Readonly<Record<string, Sentence>>;

/** Why an element of a DXF was left out. */
export const DXF_LEFT_OUT = {
  'paper space': 'it stands on a page, not in the drawing itself',
  'layer off': 'its layer is off, frozen or never plotted',
  'filled area': 'a filled area has no line of its own',
  'measure or pointer': 'dimensions and pointers are no lines of a pattern',
  'endless line': 'a line without ends',
  'not flat': 'it does not lie in the plane of the drawing',
  'kind not read': 'a kind of entity that is not read',
  point: 'a point has no size',
  'point of a boundary': 'points that only say where the boundary turns or bends',
  'missing block': 'its block is not in the file',
} as const satisfies Readonly<Record<string, string>>;
