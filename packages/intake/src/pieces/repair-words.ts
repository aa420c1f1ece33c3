import { plural } from '../sentence.js';
import type { Sentence } from '../sentence.js';

const SIZE_SIGNS: Readonly<Record<string, string>> = {
  rules: "the order's rules",
  blocks: 'what their blocks say',
  names: 'their names',
  layers: 'the names of their layers',
};

/** Findings about what was unfolded, taken for a size or an allowance, or repaired. */
export const REPAIR_FINDINGS = {
  unfolded: ({ piece, by, width, height }) =>
    `"${piece}" is drawn as a half and is unfolded about ${by === 'text' ? 'that edge' : 'its mirror line'}; the whole measures ${width} x ${height} mm.`,
  'unfolded-by-text': ({ piece, text, length }) =>
    `"${piece}" bears the words "${text}", so it is unfolded about the straight edge beside them, ${length} mm long; draw a line named "mirror" on another edge if it is not this one, or say "unfold: false" in the order.`,
  'half-unclear': ({ piece, text }) =>
    `"${piece}" bears the words "${text}" and seems to be a half, but it is not clear at which edge; draw a line named "mirror" on the fold edge, or give such a line the role "mirror" in the order.`,
  'half-left': ({ piece }) => `"${piece}" has a mirror line and is left a half, as the order asks.`,
  'already-whole': ({ piece }) =>
    `The mirror line of "${piece}" has both halves beside it already, so nothing is unfolded.`,
  'mirror-line-inside': ({ piece }) =>
    `The mirror line lies within "${piece}", whose sides are not alike, and is left out; draw it on a straight edge to unfold the piece, or name it "fold".`,
  'mirror-line-bent': () => 'A mirror line is one straight line; this one is not and is left out.',
  'several-mirrors': ({ piece }) =>
    `"${piece}" has more mirror lines than a half or a quarter can have, and the others are left out; keep one, or two square to each other.`,
  'line-over-fold': ({ piece, count }) =>
    `${plural(count, 'line', 'lines')} of "${piece}" ${Number(count) === 1 ? 'reaches' : 'reach'} over the mirror line and ${Number(count) === 1 ? 'is' : 'are'} doubled all the same; end lines on the mirror line.`,
  'direction-askew': ({ piece }) =>
    `The direction arrow of "${piece}" lies neither along nor across the mirror line and is kept as drawn; it says the same of both halves.`,
  'sizes-found': ({ sizes, by }) =>
    `The file holds several sizes (${sizes}), told apart by ${SIZE_SIGNS[String(by)] ?? String(by)}; the name of a piece ends with its size.`,
  'too-many-sizes': ({ count, lines }) =>
    `The file says ${count} different sizes and has ${plural(lines, 'line', 'lines')} of no size, more than are read apart, so it is read as if it said no size; tell the sizes apart in the order ("sizes"), or split the file.`,
  'dashes-gathered': ({ dashes, lines }) =>
    `${plural(dashes, 'dash', 'dashes')} drawn one by one became ${plural(lines, 'dashed line', 'dashed lines')}.`,
  allowance: ({ element, width }) =>
    `${element} runs ${width} mm inside the cut line all round, so it is taken for the stitch line, with an allowance of ${width} mm; give it the role "fold" if the edge is turned there, or "cut-out" if it is an opening.`,
  'looks-graded': ({ count }) =>
    `${count} outlines of one shape lie one in the other, each drawn differently, so they look like sizes; say in the order which colour, dash or layer is which size ("sizes"), else all but the largest are read as lines within it.`,
  'loops-removed': ({ count, most }) =>
    `${plural(count, 'tiny loop', 'tiny loops')} in outlines, ${most} mm at the most, ${Number(count) === 1 ? 'was' : 'were'} cut off where the line crosses itself; the repair report names each place.`,
  'curves-fitted': ({ count, most }) =>
    `${plural(count, 'run', 'runs')} of short lines or curves that lie on a circle became arcs, nowhere more than ${most} mm from what was drawn.`,
} as const satisfies Readonly<Record<string, Sentence>>;
