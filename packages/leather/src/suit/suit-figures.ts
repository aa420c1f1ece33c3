import type { Figure } from '../model/workshop-rules.js';

const PRACTICE = 'common practice, no source';
const MEMORY = 'from memory';

/** Names of the figures, so that a slip of the pen is found when it is compiled. */
export const SUIT = {
  tolerance: 'tolerance of a stated thickness',
  thinning: 'thinning all over, at most',
  thinnest: 'thinnest skived leather',
  turnedEdge: 'turned edge, skived to',
  turnedEdgeWidth: 'turned edge, skived so wide',
  turnsUnskived: 'turns without skiving, up to',
  turnsSkived: 'turns after skiving, up to',
  fold: 'fold, thinned to',
  foldTaper: 'fold, taper to both sides',
  foldsUnskived: 'folds without thinning, up to',
  layers: 'layers glued to one thickness, at most',
  edge: 'edge of one layer, at least',
  weak: 'one layer keeps its strength, from',
  warps: 'warps when wet or glued, below',
} as const;

/** Figures of choosing leather that a user may know better. */
export const SUIT_FIGURES: readonly Figure[] = [
  {
    name: SUIT.tolerance,
    words: 'How far the thickness of split leather may be from the stated one',
    value: { min: 0.2, max: 0.2 },
    unit: 'mm',
    source: 'a training lecture on cutting',
  },
  {
    name: SUIT.thinning,
    words:
      'How much of the thickness is skived off all over at most; beyond, leather of another thickness is right',
    value: { min: 50, max: 50 },
    unit: '%',
    source: PRACTICE,
  },
  {
    name: SUIT.thinnest,
    words: 'Thinnest that leather is skived to, where it lies hidden between layers',
    value: { min: 0.3, max: 0.4 },
    unit: 'mm',
    source: MEMORY,
  },
  {
    name: SUIT.turnedEdge,
    words: 'What the edge is skived to before it is turned over',
    value: { min: 0.5, max: 0.5 },
    unit: 'mm',
    source: 'a teaching article on leather goods',
  },
  {
    name: SUIT.turnedEdgeWidth,
    words: 'How wide an edge is skived that is to be turned over',
    value: { min: 12, max: 12 },
    unit: 'mm',
    source: 'a teaching article on leather goods',
  },
  {
    name: SUIT.turnsUnskived,
    words: 'Up to this thickness an edge turns over without skiving',
    value: { min: 0.6, max: 0.6 },
    unit: 'mm',
    source: MEMORY,
  },
  {
    name: SUIT.turnsSkived,
    words: 'Thicker leather does not turn over neatly even where its edge is skived',
    value: { min: 2, max: 2 },
    unit: 'mm',
    source: PRACTICE,
  },
  {
    name: SUIT.fold,
    words: 'What a fold is thinned to, of the thickness',
    value: { min: 50, max: 50 },
    unit: '%',
    source: MEMORY,
  },
  {
    name: SUIT.foldTaper,
    words: 'How far the thinning of a fold runs out',
    value: { min: 30, max: 50 },
    unit: 'mm',
    source: MEMORY,
  },
  {
    name: SUIT.foldsUnskived,
    words: 'Up to this thickness leather folds without thinning',
    value: { min: 1.2, max: 1.2 },
    unit: 'mm',
    source: PRACTICE,
  },
  {
    name: SUIT.layers,
    words: 'How many layers are glued together to make up a thickness',
    value: { min: 2, max: 2 },
    unit: 'times',
    source: PRACTICE,
  },
  {
    name: SUIT.edge,
    words: 'Thinner than this, the edge of one layer is hard to finish',
    value: { min: 0.8, max: 0.8 },
    unit: 'mm',
    source: 'a wallet factory’s page',
  },
  {
    name: SUIT.weak,
    words: 'Thinner than this, one layer loses strength',
    value: { min: 0.7, max: 0.7 },
    unit: 'mm',
    source: 'a wallet factory’s page',
  },
  {
    name: SUIT.warps,
    words: 'Thinner than this, firm leather warps when it is wetted, dyed or glued on one side',
    value: { min: 1, max: 1 },
    unit: 'mm',
    source: PRACTICE,
  },
];
