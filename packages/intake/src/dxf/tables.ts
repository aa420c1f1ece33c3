import type { DrawnGroup } from '../drawing/drawn-line.js';
import { numberedColour, INK, trueColour } from './colours.js';
import type { Pairs } from './pairs.js';
import { nextEntity } from './sections.js';
import type { Range } from './sections.js';
import { textAt } from './text.js';
import type { Decode } from './text.js';
import { isWord, numberAt, wholeAt } from './values.js';

/** A layer with what its entities take over from it. */
export interface Layer {
  readonly name: string;
  /** Nothing of it, nor of blocks put on it, is seen. */
  readonly isFrozen: boolean;
  readonly isHidden: boolean;
  readonly colour: string;
  readonly lineType: string;
  /** 1/100 mm; below 0 for the default. */
  readonly lineWeight: number;
  /** The group of the lines that lie on it. */
  readonly group: DrawnGroup;
}

/** Layers by name in small letters, and line types that have gaps. */
export interface Tables {
  readonly layers: Map<string, Layer>;
  readonly dashed: ReadonlyMap<string, boolean>;
}

/** Of LAYER's flags. */
const FROZEN = 1;
const DEFAULT_WEIGHT = -3;
/** The layer of the points by which dimensions hold on; it is never plotted (DXF reference). */
const NEVER_PLOTTED = 'defpoints';

export function readTables(pairs: Pairs, range: Range | undefined, decode: Decode): Tables {
  const layers = new Map<string, Layer>();
  const dashed = new Map<string, boolean>();
  if (range === undefined) return { layers, dashed };
  for (let i = range.from; i < range.to;) {
    const next = nextEntity(pairs, i, range.to);
    if (isWord(pairs, i, 'LAYER')) readLayer(pairs, i, next, decode, layers);
    else if (isWord(pairs, i, 'LTYPE')) readLineType(pairs, i, next, decode, dashed);
    i = next;
  }
  return { layers, dashed };
}

/** The layer of that name; one that the table lacks is as a new layer is. */
export function layerNamed({ layers }: Tables, name: string): Layer {
  const key = name.toLowerCase();
  let layer = layers.get(key);
  if (layer === undefined) layers.set(key, (layer = newLayer(name, layers.size)));
  return layer;
}

function newLayer(name: string, key: number): Layer {
  return {
    name,
    isFrozen: false,
    isHidden: name.toLowerCase() === NEVER_PLOTTED,
    colour: numberedColour(INK),
    lineType: 'continuous',
    lineWeight: DEFAULT_WEIGHT,
    group: { key, labels: { given: [name], classes: [], data: {} }, isClone: false },
  };
}

function readLayer(pairs: Pairs, from: number, to: number, decode: Decode, layers: Map<string, Layer>): void {
  const found: { -readonly [key in keyof Layer]?: Layer[key] } = {};
  let name = '';
  let isOff = false;
  let isPlotted = true;
  for (let i = from + 1; i < to; i++) {
    const code = pairs.codes[i]!;
    if (code === 2) name = textAt(pairs, i, decode).trim();
    else if (code === 70) found.isFrozen = (wholeAt(pairs, i) & FROZEN) !== 0;
    else if (code === 62) {
      const number = wholeAt(pairs, i);
      isOff = number < 0;
      found.colour ??= numberedColour(Math.abs(number));
    } else if (code === 420) found.colour = trueColour(wholeAt(pairs, i));
    else if (code === 6) found.lineType = textAt(pairs, i, decode).trim().toLowerCase();
    else if (code === 370) found.lineWeight = wholeAt(pairs, i);
    else if (code === 290) isPlotted = wholeAt(pairs, i) !== 0;
    else if (code >= 1000) break;
  }
  const plain = newLayer(name, layers.size);
  // Of two with one name the first counts: keys of groups must stay apart.
  if (layers.has(name.toLowerCase())) return;
  const isHidden = plain.isHidden || isOff || !isPlotted || found.isFrozen === true;
  layers.set(name.toLowerCase(), { ...plain, ...found, isHidden });
}

/** Of a line type's elements, those below 0 are gaps (group code 49). */
function readLineType(
  pairs: Pairs,
  from: number,
  to: number,
  decode: Decode,
  dashed: Map<string, boolean>,
): void {
  let name = '';
  let hasGap = false;
  for (let i = from + 1; i < to; i++) {
    if (pairs.codes[i] === 2) name ||= textAt(pairs, i, decode).trim().toLowerCase();
    else if (pairs.codes[i] === 49) hasGap ||= numberAt(pairs, i) < 0;
  }
  dashed.set(name, hasGap);
}

/** Names of line types with gaps that programs use without a table of them. Common practice, no source. */
const DASHED_WORDS = /dash|hidden|dot|center|centre|phantom|border|divide/;

export function isDashedType({ dashed }: Tables, name: string): boolean {
  return dashed.get(name) ?? DASHED_WORDS.test(name);
}
