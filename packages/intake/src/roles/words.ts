import type { LineRole } from '@hidebound/leather';

/**
 * Trade words in layer names, labels, ids and classes, by the role that they stand for; several words are one phrase.
 * The table is the same for every file format. Common practice, no source; the order's own rules come first.
 */
export const ROLE_PHRASES: readonly { readonly role: LineRole; readonly phrases: readonly string[] }[] = [
  {
    role: 'cut-out',
    phrases: [
      'cut out',
      'cutout',
      'cut outs',
      'cutouts',
      'opening',
      'openings',
      'window',
      'windows',
      'inside cut',
      'inner cut',
      'cut inside',
      'slot',
      'slots',
    ],
  },
  {
    role: 'stitch',
    phrases: [
      'stitch',
      'stitches',
      'stitching',
      'stitched',
      'sew',
      'sewing',
      'sewn',
      'seam',
      'seams',
      'stitch hole',
      'stitch holes',
      'stitching hole',
      'stitching holes',
      'sewing holes',
    ],
  },
  {
    role: 'punch',
    phrases: [
      'punch',
      'punches',
      'punching',
      'punched',
      'hole',
      'holes',
      'rivet',
      'rivets',
      'rivet hole',
      'rivet holes',
      'snap',
      'snaps',
      'hole punch',
      'punch hole',
      'punch holes',
      'belt holes',
    ],
  },
  { role: 'notch', phrases: ['notch', 'notches', 'nick', 'nicks'] },
  { role: 'fold', phrases: ['fold', 'folds', 'folding', 'crease', 'creases'] },
  { role: 'skive', phrases: ['skive', 'skives', 'skiving', 'skived'] },
  { role: 'cement', phrases: ['cement', 'cementing', 'glue', 'gluing', 'glued', 'adhesive'] },
  { role: 'face', phrases: ['face', 'faces', 'visible', 'seen'] },
  {
    role: 'direction',
    phrases: [
      'direction',
      'directions',
      'grain',
      'grainline',
      'grain direction',
      'direction arrow',
      'grain arrow',
    ],
  },
  { role: 'text', phrases: ['text', 'texts', 'label', 'labels', 'lettering', 'caption', 'captions'] },
  {
    role: 'ignore',
    phrases: [
      'ignore',
      'ignored',
      'guide',
      'guides',
      'construction',
      'helper',
      'helpers',
      'dimension',
      'dimensions',
      'background',
      'reference',
      'do not cut',
      'no cut',
      'scale bar',
      'legend',
      'calibration',
    ],
  },
  {
    role: 'cut',
    phrases: ['cut', 'cuts', 'cutting', 'cutline', 'cutlines', 'outline', 'outlines', 'contour', 'contours'],
  },
];

/** Words that say nothing of the role and may stand beside a phrase: "stitch lines", "the cut layer". */
export const FILLER_WORDS: ReadonlySet<string> = new Set([
  'line',
  'lines',
  'layer',
  'layers',
  'mark',
  'marks',
  'marking',
  'markings',
  'the',
  'all',
  'and',
  'path',
  'paths',
  'area',
  'areas',
  'outer',
  'outside',
  'for',
  'of',
  'edge',
  'edges',
]);

/**
 * Roles that the first word of an element's own name may give, whatever follows ("stitch-left", "fold 2"): words that
 * start no piece's name. "cut", "face", "text" and the like must be all of the name.
 */
export const LEADING_ROLES: ReadonlySet<LineRole> = new Set([
  'cut-out',
  'stitch',
  'punch',
  'notch',
  'fold',
  'skive',
  'cement',
  'direction',
]);
