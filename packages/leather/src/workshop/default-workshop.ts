import type { Coverage, Workshop } from '../model/workshop.js';
import { DEFAULT_FLAW_EFFECTS, DEFAULT_ZONE_EFFECTS } from '../parts/effects.js';
import { DEFAULT_CUTS, DEFAULT_GRADES } from '../buying/cut-table.js';
import { DEFAULT_GOODS } from '../goods/goods-table.js';
import { DEFAULT_TANNAGES } from '../goods/tannage-table.js';
import { DEFAULT_PARTS } from '../parts/part-table.js';
import { DEFAULT_IRONS } from '../stitch/irons.js';
import { DEFAULT_FIGURES } from './figures.js';

const PRACTICE = 'common practice, no source';
const MEMORY = 'from memory';
/** Distances from outline and void: tanneries' clamp marks and drawn edges are trimmed by 10–25 mm. */
const EDGES = `edge: ${PRACTICE} (drawn edge 10–25 mm); void: own`;
const EDGE_MM = 10;
const VOID_MM = 5;

function method(
  name: string,
  gapMm: number,
  kerfMm: number,
  source: string,
): Workshop['cuttingMethods'][number] {
  return { method: name, gapMm, edgeMm: EDGE_MM, voidMm: VOID_MM, kerfMm, source: `${source}; ${EDGES}` };
}

/** 2–3 mm along straight lines, 5 mm where the hide is turned around curves. */
const HAND_KNIFE = method('hand knife', 3, 0, `gap 2–3 mm ${MEMORY}`);

const CUTTING_METHODS: Workshop['cuttingMethods'] = [
  HAND_KNIFE,
  method('strap cutter', 0, 0, `shared edge, ${PRACTICE}`),
  method('press and dies', 3, 0, `gap 2–3 mm so that the bevel does not bite the neighbour, ${MEMORY}`),
  // 3/32 in between rules for the ejection rubber; a two-point rule is 0.028 in thick.
  method('steel rule die', 2.4, 0.71, 'a die maker’s figures (paper dies)'),
  method('drag knife', 4, 0, `gap 3–5 mm ${MEMORY}`),
  method('laser', 3, 0.2, `kerf 0.15–0.2 mm from laser service bureaux; gap 2–3 mm ${MEMORY}`),
  method('water jet', 4, 1, `kerf 0.5–1.2 mm from water-jet bureaux; gap 3–5 mm ${MEMORY}`),
];

const WEIGH = `${MEMORY}, low confidence: weigh the bottle before and after a known area`;

function coverage(product: string, minMlPerM2: number, maxMlPerM2: number): Coverage {
  return { product, minMlPerM2, maxMlPerM2, source: WEIGH };
}

const COVERAGES: readonly Coverage[] = [
  coverage('spirit dye', 100, 200),
  coverage('oil dye', 100, 200),
  coverage('water dye', 120, 250),
  coverage('pigment', 60, 120),
  coverage('oil', 50, 120),
  coverage('acrylic finish', 50, 100),
  coverage('wax or resin finish', 30, 60),
];

/** The built-in workshop. Each figure carries where it comes from; a workshop file overrules any of them. */
export const DEFAULT_WORKSHOP: Workshop = {
  parts: DEFAULT_PARTS,
  flawDefaults: DEFAULT_FLAW_EFFECTS,
  zoneDefaults: DEFAULT_ZONE_EFFECTS,
  cuttingMethods: CUTTING_METHODS,
  // Common practice, no source: 80 x 80 mm, or a strip of 20 x 200 mm; only the square is told by two sides.
  keepMm: [80, 80],
  irons: DEFAULT_IRONS,
  goods: DEFAULT_GOODS,
  tannages: DEFAULT_TANNAGES,
  cuts: DEFAULT_CUTS,
  grades: DEFAULT_GRADES,
  figures: DEFAULT_FIGURES,
  offers: [],
  coverages: COVERAGES,
  prices: [],
};
