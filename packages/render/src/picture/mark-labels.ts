import { regionArea, regionBox, subtractRegions } from '@hidebound/geometry';
import type { Point, Region } from '@hidebound/geometry';
import { group } from '../drawing/build.js';
import type { DrawingElement, GroupElement } from '../drawing/model.js';
import type { LabelBox } from '../label/label-box.js';
import { placeInside, roomiestPoint } from '../label/place-inside.js';
import { isClearOfLeaders, placeOutside } from '../label/place-outside.js';
import type { FreeSpace, OutsidePlace, Shape } from '../label/place-outside.js';
import { measureBlock, setBlock } from '../label/text-block.js';
import type { TextBlock } from '../label/text-block.js';
import { INK, INK_SOFT } from '../sheet/palette.js';
import type { FontFace } from '../drawing/model.js';
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
  const covered = shapes.filter((shape) => shape.edgeOnly !== true).map((shape) => shape.region);
  return zones.flatMap((zone, i) => {
    const bare = largestRegion(subtractRegions(zone.regions, covered));
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
  const { fonts, style, space } = desk;
  const colour = thing.colour ?? INK_SOFT;
  const text = measureBlock(fonts, [
    { text: thing.text, face: thing.face ?? 'narrow', sizeMm: style.smallMm, colour },
  ]);
  const hasSign = thing.sign !== undefined && (thing.sign.never || thing.sign.hidden || thing.sign.weak);
  const signRoom = hasSign ? style.smallMm * (SIGN_SHARE + SIGN_GAP_SHARE) : 0;
  const size = {
    widthMm: text.widthMm + signRoom + 2 * PADDING_MM,
    heightMm: Math.max(text.heightMm, hasSign ? style.smallMm * SIGN_SHARE : 0) + 2 * PADDING_MM,
  };
  const home = atHome(desk, thing, size);
  const found =
    home ??
    bestOutside({ ...space, shapes }, thing, size) ??
    bestOutside({ ...space, shapes: [] }, thing, size);
  if (found === undefined) return [];
  space.taken.push(found.box);
  if (found.leader !== undefined) space.leaders.push(found.leader);
  const elements: DrawingElement[] = [
    ...(found.leader === undefined ? [] : drawLeader(found.leader, style)),
    ...plainGround(desk, found.box),
    ...signAndText(desk, text, found.box, hasSign ? thing.sign : undefined, signRoom),
  ];
  return [group(thing.name, elements)];
}

interface Size {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A place within what is named, where no leader is needed. */
function atHome(
  desk: LabelDesk,
  thing: Named,
  size: Size,
): { readonly box: LabelBox; readonly leader?: undefined } | undefined {
  if (thing.home === undefined) return undefined;
  const { space } = desk;
  const box = placeInside(thing.home, { ...size, angleDeg: 0, near: thing.targets[0]!, avoid: space.taken });
  return box !== undefined && isClearOfLeaders(space, box) ? { box } : undefined;
}

function bestOutside(space: FreeSpace, thing: Named, size: Size): OutsidePlace | undefined {
  let best: OutsidePlace | undefined;
  for (const target of thing.targets) {
    const found = placeOutside(space, size, target);
    if (found !== undefined && (best === undefined || found.cost < best.cost)) best = found;
  }
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
  const left = box.center.x - box.widthMm / 2 + PADDING_MM;
  const signSize = style.smallMm * SIGN_SHARE;
  const textBox = { ...box, center: { x: box.center.x + signRoom / 2, y: box.center.y } };
  return [
    ...(sign === undefined ? [] : markSign(sign, { x: left + signSize / 2, y: box.center.y }, signSize)),
    ...setBlock(fonts, text, textBox),
  ];
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
