import type { Point } from '@hidebound/geometry';
import type { Entity } from './entity.js';
import { fieldsOf, pointField, textField, wholeField } from './fields.js';
import type { Pairs } from './pairs.js';
import { readEntities } from './read-entities.js';
import { nextEntity } from './sections.js';
import type { Range } from './sections.js';
import type { Decode } from './text.js';
import { isWord } from './values.js';

/** A drawing that inserts repeat. */
export interface Block {
  readonly name: string;
  readonly base: Point;
  /** It stands in another file. */
  readonly isElsewhere: boolean;
  readonly range: Range;
}

/** Of BLOCK's flags: a reference to another file, and one laid over. */
const ELSEWHERE = 4 | 8;

/** Blocks by name in small letters; their entities are read when they are first needed. */
export function findBlocks(pairs: Pairs, range: Range | undefined, decode: Decode): Map<string, Block> {
  const blocks = new Map<string, Block>();
  for (let i = range?.from ?? 0; i < (range?.to ?? 0);) {
    const next = nextEntity(pairs, i, range!.to);
    if (!isWord(pairs, i, 'BLOCK')) {
      i = next;
      continue;
    }
    const fields = fieldsOf(pairs, decode, i, next);
    let end = next;
    while (end < range!.to && !isWord(pairs, end, 'ENDBLK')) end = nextEntity(pairs, end, range!.to);
    const name = textField(fields, 2).trim();
    const block = {
      name,
      base: pointField(fields, 10),
      isElsewhere: (wholeField(fields, 70) & ELSEWHERE) !== 0,
      range: { from: next, to: end },
    };
    if (!blocks.has(name.toLowerCase())) blocks.set(name.toLowerCase(), block);
    i = end;
  }
  return blocks;
}

/** A block's entities; `known` keeps those that were read before. */
export function entitiesOf(
  pairs: Pairs,
  block: Block,
  decode: Decode,
  known: Map<Block, readonly Entity[]>,
): readonly Entity[] {
  let entities = known.get(block);
  if (entities === undefined) known.set(block, (entities = readEntities(pairs, block.range, decode)));
  return entities;
}
