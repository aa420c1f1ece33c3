import { trueColour, numberedColour } from './colours.js';
import type { EntityHead, EntityLook } from './entity.js';
import { lineOf } from './pairs.js';
import type { Pairs } from './pairs.js';
import { textAt } from './text.js';
import type { Decode } from './text.js';
import { isWord, numberAt, wholeAt, wordAt } from './values.js';

/** The pairs of one entity, and where each group code stands first among them. */
export interface Fields {
  readonly pairs: Pairs;
  readonly decode: Decode;
  readonly type: string;
  readonly from: number;
  /** After the last pair that speaks of the entity itself: other programs' data comes after it. */
  readonly to: number;
  /** By group code: the pair where it stands first, or 0. */
  readonly first: Int32Array;
}

/** Group codes from here on belong to the data that other programs hang on an entity. */
const FOREIGN_DATA = 1000;
const EMBEDDED_OBJECT = 101;
/** Between `{NAME` and `}` of this code stand lists of other programs. */
const FOREIGN_LIST = 102;
const KNOWN_CODES = 512;

/** Finds the fields of the entity between two pairs; `scratch` is taken over and may be used for one entity after another. */
export function fieldsOf(
  pairs: Pairs,
  decode: Decode,
  from: number,
  to: number,
  scratch: Int32Array = newScratch(),
): Fields {
  scratch.fill(0);
  const { codes } = pairs;
  let i = from + 1;
  let isForeign = false;
  for (; i < to; i++) {
    const code = codes[i]!;
    if (code >= FOREIGN_DATA || code === EMBEDDED_OBJECT) break;
    if (code === FOREIGN_LIST) isForeign = wordAt(pairs, i).startsWith('{');
    else if (!isForeign && code > 0 && code < KNOWN_CODES && scratch[code] === 0) scratch[code] = i;
  }
  return { pairs, decode, type: typeAt(pairs, from), from, to: i, first: scratch };
}

/** Types that files are full of, each one string for all. */
const COMMON_TYPES = ['LINE', 'VERTEX', 'LWPOLYLINE', 'POINT', 'ARC', 'CIRCLE', 'INSERT', 'POLYLINE'];

function typeAt(pairs: Pairs, pair: number): string {
  return COMMON_TYPES.find((type) => isWord(pairs, pair, type)) ?? wordAt(pairs, pair);
}

export function newScratch(): Int32Array {
  return new Int32Array(KNOWN_CODES);
}

export function hasField({ first }: Fields, code: number): boolean {
  return first[code] !== 0;
}

export function numberField({ pairs, first }: Fields, code: number, otherwise = 0): number {
  const at = first[code]!;
  return at === 0 ? otherwise : numberAt(pairs, at);
}

export function wholeField({ pairs, first }: Fields, code: number, otherwise = 0): number {
  const at = first[code]!;
  return at === 0 ? otherwise : wholeAt(pairs, at);
}

export function textField({ pairs, decode, first }: Fields, code: number): string {
  const at = first[code]!;
  return at === 0 ? '' : textAt(pairs, at, decode);
}

export function pointField(fields: Fields, code: number): { x: number; y: number } {
  return { x: numberField(fields, code), y: numberField(fields, code + 10) };
}

/** Line weights below 0: by layer, by block, the default. */
const WEIGHT_BY_LAYER = -1;

/** Most entities look as their layer says, and share this. */
const PLAIN_LOOK: EntityLook = { lineWeight: WEIGHT_BY_LAYER };

/** What every entity has; one after the other lies on the same layer as a rule, and then shares the string of its name. */
export function headOf(fields: Fields, layerBefore = '0'): EntityHead {
  const { pairs, type, from, first } = fields;
  const handle = first[5] === 0 ? '' : wordAt(pairs, first[5]!);
  return {
    name: handle === '' ? type : `${type} ${handle}`,
    line: lineOf(from),
    layer: layerOf(fields, layerBefore),
    look: lookOf(fields),
    isInPaperSpace: wholeField(fields, 67) === 1,
    isInvisible: wholeField(fields, 60) === 1,
  };
}

function layerOf(fields: Fields, before: string): string {
  const at = fields.first[8]!;
  if (at === 0) return '0';
  return isWord(fields.pairs, at, before) ? before : textField(fields, 8).trim();
}

/** Of group code 62. */
const BY_BLOCK = 0;
const BY_LAYER = 256;

function lookOf(fields: Fields): EntityLook {
  const { first } = fields;
  if (first[6] === 0 && first[62] === 0 && first[420] === 0 && first[370] === 0) return PLAIN_LOOK;
  const lineType = textField(fields, 6).trim().toLowerCase();
  const colour = colourOf(fields);
  return {
    lineWeight: wholeField(fields, 370, WEIGHT_BY_LAYER),
    ...(colour === undefined ? {} : { colour }),
    ...(lineType === '' || lineType === 'bylayer' ? {} : { lineType }),
  };
}

function colourOf(fields: Fields): string | undefined {
  if (hasField(fields, 420)) return trueColour(wholeField(fields, 420));
  const number = Math.abs(wholeField(fields, 62, BY_LAYER));
  if (number === BY_LAYER) return undefined;
  return number === BY_BLOCK ? 'by block' : numberedColour(number);
}
