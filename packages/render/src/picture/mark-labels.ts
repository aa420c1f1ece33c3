import { regionArea, regionBox, subtractRegions } from '@hidebound/geometry';
import type { Point, Region } from '@hidebound/geometry';
import { group } from '../drawing/build.js';
import type { DrawingElement, GroupElement } from '../drawing/model.js';
import type { LabelBox } from '../label/label-box.js';
import { placeInside, roomiestPoint } from '../label/place-inside.js';
import { isClearOfLeaders, placeOutside } from '../label/place-outside.js';
import type { FreeSpace, Leader, Shape } from '../label/place-outside.js';
import { measureBlock, setBlock } from '../label/text-block.js';
import type { TextBlock } from '../label/text-block.js';
import { INK, INK_SOFT } from '../sheet/palette.js';
import type { FontFace } from '../drawing/model.js';
import { measureText } from '../text/measure-text.js';
import { meaningWords } from './hide-marks.js';
import type { DrawnMark } from './hide-layers.js';
import { markSign } from './mark-pattern.js';
import { drawLeader, plainGround } from './piece-labels.js';
import type { LabelDesk } from './piece-labels.js';

const PADDING_MM = 0.3;
const SIGN_SHARE = 0.62;
const SIGN_GAP_SHARE = 0.25;

interface Named {
  readonly name: string;
  readonly text: string;
  /** Points that it may lead to; the one with the best place is taken. */
  readonly targets: readonly Point[];
  readonly face?: FontFace;
  readonly colour?: string;
  readonly sign?: DrawnMark['meaning'];
  /** No leader where the label lies wholly in this. */
  readonly home?: Region;
}

/** Kind of each flaw, with the sign of its meaning, next to it. Labels may lie on a piece, not across a line. */
export function labelFlaws(
  desk: LabelDesk,
  flaws: readonly DrawnMark[],
  shapes: readonly Shape[],
): GroupElement[] {
  return flaws.flatMap((flaw, i) => {
    const largest = largestRegion(flaw.regions);
    if (largest === undefined) return [];
    return placeNamed(desk, shapes, {
      name: `label flaw ${i + 1}`,
      text: flaw.label,
      targets: [roomiestPoint(largest)],
      colour: INK,
      sign: flaw.meaning,
    });
  });
}

/** Name and meaning of each zone, on bare leather within it where there is some, otherwise at a leader. */
export function labelZones(
  desk: LabelDesk,
  zones: readonly DrawnMark[],
  shapes: readonly Shape[],
): GroupElement[] {
  const covered = shapes
    .filter((shape) => shape.edgeOnly !== true)
    .map((shape) => ({ outer: shape.region.outer, openings: [] }));
  // Holes of the hide are no place for words either.
  const holes = desk.leather.openings.map((ring) => ({ outer: [...ring].reverse(), openings: [] }));
  return zones.flatMap((zone, i) => {
    const bare = largestRegion(subtractRegions(zone.regions, [...covered, ...holes]));
    const home = bare ?? largestRegion(zone.regions);
    if (home === undefined) return [];
    const words = meaningWords(zone.meaning);
    return placeNamed(desk, shapes, {
      name: `label zone ${i + 1}`,
      text: words === 'anywhere' ? zone.label : `${zone.label}: ${words}`,
      targets: [roomiestPoint(home)],
      home,
    });
  });
}

/** A label for anything else on the picture: an offcut, a lane, an end of the backbone. */
export function labelThing(desk: LabelDesk, shapes: readonly Shape[], thing: Named): GroupElement[] {
  return placeNamed(desk, shapes, thing);
}

function placeNamed(desk: LabelDesk, shapes: readonly Shape[], thing: Named): GroupElement[] {
  const { style, space } = desk;
  const hasSign = thing.sign !== undefined && (thing.sign.never || thing.sign.hidden || thing.sign.weak);
  const signRoom = hasSign ? style.smallMm * (SIGN_SHARE + SIGN_GAP_SHARE) : 0;
  const settings = settingsOf(desk, thing, signRoom);
  const found =
    atHome(desk, thing, settings) ??
    bestOutside({ ...space, shapes }, thing, settings) ??
    bestOutside({ ...space, shapes: [] }, thing, settings);
  if (found === undefined) return [];
  space.taken.push(found.box);
  if (found.leader !== undefined) space.leaders.push(found.leader);
  const elements: DrawingElement[] = [
    ...(found.leader === undefined ? [] : drawLeader(found.leader, style)),
    ...plainGround(desk, found.box),
    ...signAndText(desk, found.text, found.box, hasSign ? thing.sign : undefined, signRoom),
  ];
  return [group(thing.name, elements)];
}

/** The words on one line, or broken into two. */
interface Setting {
  readonly text: TextBlock;
  readonly size: { readonly widthMm: number; readonly heightMm: number };
}

interface Place {
  readonly text: TextBlock;
  readonly box: LabelBox;
  readonly leader?: Leader;
}

function settingsOf(desk: LabelDesk, thing: Named, signRoom: number): Setting[] {
  const { fonts, style } = desk;
  return [[thing.text], breakInTwo(thing.text)]
    .filter((lines) => lines.length > 0)
    .map((lines) => {
      const text = measureBlock(
        fonts,
        lines.map((line) => ({
          text: line,
          face: thing.face ?? 'narrow',
          sizeMm: style.smallMm,
          colour: thing.colour ?? INK_SOFT,
        })),
      );
      const signMm = signRoom > 0 ? style.smallMm * SIGN_SHARE : 0;
      return {
        text,
        size: {
          widthMm: text.widthMm + signRoom + 2 * PADDING_MM,
          heightMm: Math.max(text.heightMm, signMm) + 2 * PADDING_MM,
        },
      };
    });
}

/** Words of fewer letters stay on one line. */
const LEAST_LETTERS_TO_BREAK = 10;

/** Broken after a comma or colon where there is one, otherwise at a space; whichever makes the lines most alike. */
function breakInTwo(text: string): string[] {
  if (text.length < LEAST_LETTERS_TO_BREAK) return [];
  const breaks = [/[,:] /g, / /g]
    .map((pattern) => [...text.matchAll(pattern)].map((match) => match.index + match[0].length))
    .find((places) => places.length > 0);
  if (breaks === undefined) return [];
  const middle = text.length / 2;
  const at = breaks.reduce((best, each) => (Math.abs(each - middle) < Math.abs(best - middle) ? each : best));
  return [text.slice(0, at).trimEnd(), text.slice(at)];
}

/** A place within what is named, where no leader is needed: on one line, on two, or turned to read from below. */
function atHome(desk: LabelDesk, thing: Named, settings: readonly Setting[]): Place | undefined {
  if (thing.home === undefined) return undefined;
  const { space } = desk;
  for (const angleDeg of [0, -90]) {
    for (const { text, size } of settings) {
      const avoid = [...space.taken, ...desk.workLines];
      const wanted = { ...size, angleDeg, near: thing.targets[0]!, avoid };
      const box = placeInside(thing.home, wanted);
      if (box !== undefined && isClearOfLeaders(space, box)) return { text, box };
    }
  }
  return undefined;
}

/** Two lines are taken only where they shorten the leader by more than this, mm. */
const BREAK_COST_MM = 2;

function bestOutside(space: FreeSpace, thing: Named, settings: readonly Setting[]): Place | undefined {
  let best: Place | undefined;
  let bestCost = Infinity;
  settings.forEach(({ text, size }, i) => {
    for (const target of thing.targets) {
      const found = placeOutside(space, size, target, bestCost - i * BREAK_COST_MM);
      if (found !== undefined) {
        bestCost = found.cost + i * BREAK_COST_MM;
        best = { text, box: found.box, leader: found.leader };
      }
    }
  });
  return best;
}

function signAndText(
  desk: LabelDesk,
  text: TextBlock,
  box: LabelBox,
  sign: DrawnMark['meaning'] | undefined,
  signRoom: number,
): DrawingElement[] {
  const { fonts, style } = desk;
  const textBox = { ...box, center: { x: box.center.x + signRoom / 2, y: box.center.y } };
  const set = setBlock(fonts, text, textBox);
  if (sign === undefined) return set;
  const [first] = text.lines;
  const { aboveMm, belowMm, widthMm } = measureText(fonts, first!.face, first!.sizeMm, first!.text);
  const signSize = style.smallMm * SIGN_SHARE;
  // Before the first line, at the middle of its ink.
  const at = {
    x: textBox.center.x - widthMm / 2 - style.smallMm * SIGN_GAP_SHARE - signSize / 2,
    y: textBox.center.y - text.heightMm / 2 + (aboveMm + belowMm) / 2,
  };
  return [...markSign(sign, at, signSize), ...set];
}

/** The region of the largest area; undefined of none. */
export function largestRegion(regions: readonly Region[]): Region | undefined {
  let best: Region | undefined;
  for (const region of regions) {
    if (best === undefined || regionArea(region) > regionArea(best)) best = region;
  }
  return best;
}

/** Length and breadth of a region's box. */
export function boxSides(region: Region): readonly [number, number] {
  const box = regionBox(region);
  return [box.maxX - box.minX, box.maxY - box.minY];
}
