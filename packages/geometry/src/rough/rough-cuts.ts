import { ringArea } from '../shape/ring.js';
import type { CopyRef, NestProblem, Placement, RoughCut, Sheet } from '../types/problem.js';
import type { Ring } from '../types/shape.js';
import { baseBlocks } from './blocks.js';
import type { Block } from './blocks.js';
import { findConflicts, groupless } from './conflicts.js';
import type { Draft, RoughCutConflict } from './conflicts.js';
import { TIGHT_ROUNDS } from './constants.js';
import { createGrow, pieceOf } from './grown.js';
import type { Grow, GrownItems, Piece } from './grown.js';
import { joinBlocks } from './join.js';
import type { Drawing } from './join.js';
import { createObstacles, NO_PIECE } from './obstacles.js';
import { straighten } from './straighten.js';

export interface RoughCutDrawing {
  /** Blocks around every placed copy with a margin that belongs to a group; those in conflicts break the check. */
  readonly roughCuts: readonly RoughCut[];
  /** Empty: the rough cuts pass the exact check. */
  readonly conflicts: readonly RoughCutConflict[];
}

/**
 * The rough cuts of a layout: on each sheet, blocks around the pieces of each group, margins included. Pieces whose
 * margins overlap share a block, near blocks are joined where that makes cutting simpler, and outlines run straight
 * and convex where nothing foreign is in the way. Rings are on the grid of 0.001 mm; ids are the group's name and a
 * number. Deterministic.
 *
 * Where pieces lie as far apart as `keptApart` and `keptFromOutline` tell, conflicts can only be `encloses` and
 * `no-group`. Placements of unknown items or sheets are left out.
 */
export function roughCutsFor(problem: NestProblem, placements: readonly Placement[]): RoughCutDrawing {
  const items = new Map(problem.items.map((item) => [item.id, item]));
  const fixed = new Set(problem.fixed.map(keyOf));
  const known: GrownItems = new Map();
  const drawn = problem.sheets.map((sheet) => {
    const pieces = placements.flatMap((placement) => {
      const item = placement.sheet === sheet.id ? items.get(placement.item) : undefined;
      return item === undefined ? [] : [pieceOf(item, placement, fixed.has(keyOf(placement)))];
    });
    return pieces.some(({ item }) => item.roughMargin !== undefined)
      ? drawSheet(sheet, pieces, known)
      : { blocks: [], conflicts: [] };
  });
  return {
    roughCuts: named(drawn.flatMap(({ blocks }) => blocks)),
    conflicts: drawn.flatMap(({ conflicts }) => conflicts),
  };
}

export function keyOf({ item, set, copy }: CopyRef): string {
  return JSON.stringify([item, set, copy]);
}

type Unnamed = Omit<RoughCut, 'id'>;

function named(blocks: readonly Unnamed[]): RoughCut[] {
  const counts = new Map<string, number>();
  return blocks.map((block) => {
    const number = (counts.get(block.group) ?? 0) + 1;
    counts.set(block.group, number);
    return { id: `${block.group} ${number}`, ...block };
  });
}

interface DrawnSheet {
  readonly blocks: readonly Unnamed[];
  readonly conflicts: readonly RoughCutConflict[];
}

/** With easy outlines; pieces that these don't fit around are drawn tight. */
function drawSheet(sheet: Sheet, pieces: readonly Piece[], known: GrownItems): DrawnSheet {
  const tight = new Set<string>();
  let best = draftWith(
    sheet,
    pieces,
    createGrow(() => false, known),
  );
  for (let round = 0; round < TIGHT_ROUNDS; round++) {
    const before = tight.size;
    for (const key of keysOfClose(best.conflicts)) tight.add(key);
    if (tight.size === before) break;
    const isTight = ({ copy }: Piece): boolean => tight.has(keyOf(copy));
    const next = draftWith(sheet, pieces, createGrow(isTight, known));
    if (next.conflicts.length > best.conflicts.length) break;
    best = next;
  }
  return {
    blocks: drawBlocks(best.draft),
    conflicts: [...groupless(sheet.id, pieces), ...best.conflicts],
  };
}

interface Judged {
  readonly draft: Draft;
  readonly conflicts: readonly RoughCutConflict[];
}

function draftWith(sheet: Sheet, pieces: readonly Piece[], grow: Grow): Judged {
  const draft: Draft = { sheet, pieces, grow, blocks: baseBlocks(pieces, grow) };
  return { draft, conflicts: findConflicts(draft) };
}

/** What is enclosed stays so, however tight the outline. */
function keysOfClose(conflicts: readonly RoughCutConflict[]): string[] {
  return conflicts
    .filter(({ code }) => code !== 'encloses')
    .flatMap(({ members, others }) => [...members, ...others].map(keyOf));
}

function drawBlocks({ sheet, pieces, blocks: base }: Draft): Unnamed[] {
  const drawing = createDrawing(sheet, pieces);
  const blocks = joinBlocks(base, drawing);
  const largestFirst = [...blocks].sort((a, b) => ringArea(b.core) - ringArea(a.core));
  const done = new Map<Block, Ring>();
  for (const block of largestFirst) {
    // Those that are drawn already count with their outlines, the others with what they must hold.
    const others = largestFirst
      .filter((other) => other !== block)
      .map((other) => ({ ...other, core: done.get(other) ?? other.core }));
    done.set(block, drawing.outline(block, others));
  }
  return [...blocks]
    .sort((a, b) => a.members[0]! - b.members[0]!)
    .map((block) => ({
      sheet: sheet.id,
      group: block.group,
      outline: done.get(block)!,
      marginMm: block.marginMm,
      members: block.members.map((i) => pieces[i]!.copy),
    }));
}

function createDrawing(sheet: Sheet, pieces: readonly Piece[]): Drawing {
  const obstacles = createObstacles([
    { ring: sheet.region.outer, owner: NO_PIECE },
    ...pieces.flatMap(({ region }, owner) =>
      [region.outer, ...region.openings].map((ring) => ({ ring, owner })),
    ),
  ]);
  const clearer = (block: Block, others: readonly Block[]): ((patch: Ring) => boolean) => {
    const own = new Set(block.members);
    const cores = createObstacles(others.map(({ core }) => ({ ring: core, owner: NO_PIECE })));
    return (patch) => obstacles.isClear(patch, own) && cores.isClear(patch, own);
  };
  return {
    isClear: (ring, block, others) => clearer(block, others)(ring),
    outline: (block, others) => straighten(block.core, { isClear: clearer(block, others) }),
  };
}
