import { describe, expect, it } from 'vitest';
import type { Region, Ring } from '@hidebound/geometry';
import { DEFAULT_CUTS } from '../cut-table.js';
import { DEFAULT_WORKSHOP } from '../../workshop/default-workshop.js';
import { areaToBuy } from './area-to-buy.js';
import { lossAtEdge, outlineOfCut } from './loss-at-edge.js';
import { areaInLane, areaInRepeat, lossBetween } from './loss-between.js';
import { lossesOf, usableFor } from './losses-of.js';
import type { LossPiece } from './losses-of.js';

const DM2 = 10_000;

function polygon(...corners: readonly (readonly [number, number])[]): Region {
  return { outer: corners.map(([x, y]) => ({ x, y })), openings: [] };
}

const rectangle = (long: number, wide: number): Region => polygon([0, 0], [long, 0], [long, wide], [0, wide]);

/** Corners of a circle's inscribed polygon. */
function disc(radius: number, corners: number): Region {
  const outer: Ring = Array.from({ length: corners }, (_, i) => ({
    x: radius * Math.cos((2 * Math.PI * i) / corners),
    y: radius * Math.sin((2 * Math.PI * i) / corners),
  }));
  return { outer, openings: [] };
}

const FREE = { gapMm: 0, mayHalfTurn: true } as const;
const ONE_WAY = { gapMm: 0, mayHalfTurn: false } as const;

describe('area to buy', () => {
  // Common practice, no source for the figures; the way is that of the published allowances for footwear (Boston 1922).
  it('when 100 dm² lose 12 % between, 12 % at the edge and are of grade C (88 %), 142.5 dm² are bought', () => {
    const found = areaToBuy(100 * DM2, { between: 0.12, edge: 0.12, usable: 0.88 });
    expect(found.interlockedMm2 / DM2).toBeCloseTo(112, 9);
    expect(found.soundMm2 / DM2).toBeCloseTo(125.44, 9);
    expect(found.buyMm2 / DM2).toBeCloseTo(142.545, 3);
    expect(found.yieldShare).toBeCloseTo(0.702, 3);
  });

  // A craft supplier's costing page: a side of 22 ft² for 280, 15 % waste, costs 14.97 for each usable ft².
  it('when 15 % of a side of 22 ft² for 280 are waste, a usable ft² costs 14.97', () => {
    const { yieldShare } = areaToBuy(1, { between: 0, edge: 0, usable: 0.85 });
    expect(280 / (22 * yieldShare)).toBeCloseTo(14.97, 2);
  });
});

describe('what a piece takes among its like', () => {
  it('when a piece tiles the plane, it takes its own area: rectangle, triangle with its half turn, hexagon', () => {
    expect(areaInRepeat(rectangle(120, 70), FREE)).toBeCloseTo(8400, 6);
    expect(areaInRepeat(rectangle(120, 70), ONE_WAY)).toBeCloseTo(8400, 6);
    expect(areaInRepeat(polygon([0, 0], [90, 10], [20, 60]), FREE)).toBeCloseTo(2600, 6);
    expect(areaInRepeat(disc(50, 6), ONE_WAY)).toBeCloseTo(1.5 * Math.sqrt(3) * 2500, 1);
  });

  // I. Fáry 1950: a triangle that is not turned fills 2/3 of the plane at best, the least of all convex shapes.
  it('when a triangle may not be turned, it takes one and a half times its area', () => {
    expect(areaInRepeat(polygon([0, 0], [90, 10], [20, 60]), ONE_WAY)).toBeCloseTo(3900, 1);
  });

  // J. L. Lagrange 1773, A. Thue 1910: circles fill pi / sqrt(12) = 0.9069 of the plane at best.
  it('when a disc is asked for, it fills 0.9069 of what it takes, turned or not', () => {
    for (const wish of [FREE, ONE_WAY]) {
      const filled = (Math.PI * 40 * 40) / areaInRepeat(disc(40, 240), wish);
      // Corners are drawn 0.05 mm off at most, outwards: 1 part in 400 of the area of a disc of 40 mm.
      expect(filled).toBeLessThanOrEqual(0.907);
      expect(filled).toBeGreaterThan(0.9069 * (1 - 1 / 400));
    }
  });

  it('when pieces keep a gap, a rectangle takes its sides and the gap, but for the corners', () => {
    const taken = areaInRepeat(rectangle(120, 70), { gapMm: 3, mayHalfTurn: true });
    expect(taken).toBeLessThanOrEqual(123 * 73 + 0.01);
    expect(taken).toBeGreaterThan(123 * 73 - 9);
  });

  it('when a hollow piece is fitted into itself, it takes no more than its hull, an L no more than itself', () => {
    const l = polygon([0, 0], [40, 0], [40, 10], [10, 10], [10, 30], [0, 30]);
    const asHull = areaInRepeat(l, FREE);
    expect(asHull).toBeGreaterThan(700);
    expect(areaInRepeat(l, { ...FREE, isThorough: true })).toBeCloseTo(600, 3);
  });

  it('when straps lie in a lane, they take their length times their width and the kerf', () => {
    const strap = polygon([0, 10], [10, 0], [1000, 0], [1010, 10], [1010, 20], [1000, 30], [10, 30], [0, 20]);
    expect(areaInLane(strap, 30, 0)).toBeCloseTo(1010.05 * 30, -1);
    expect(areaInLane(strap, 30, 1) / areaInLane(strap, 30, 0)).toBeCloseTo(31 / 30, 9);
  });

  it('when kinds are mixed, the loss between is weighted by their areas', () => {
    const large = { copies: 2, netMm2: 9000, inRepeatMm2: 10_800 };
    const small = { copies: 20, netMm2: 100, inRepeatMm2: 100 };
    // By hand: (21600 + 2000) / (18000 + 2000) - 1.
    expect(lossBetween([large, small])).toBeCloseTo(0.18, 12);
    expect(lossBetween([])).toBe(0);
  });
});

describe('the loss at the edge', () => {
  it('when a strip of half a piece is lost round a square, what is left is the smaller square', () => {
    // By hand: 1000 mm square, strip 25 mm along 4000 mm = 10 % of it; on top of the rest 1/9.
    const hide = { areaMm2: 1e6, outlineMm: 4000 };
    expect(lossAtEdge(hide, { widthMm: 50, strip: 0.5, edgeMm: 0 })).toBeCloseTo(1 / 9, 12);
    expect(lossAtEdge(hide, { widthMm: 30, strip: 0.5, edgeMm: 10 })).toBeCloseTo(1 / 9, 12);
  });

  // From memory, unverified: a footwear school gives 39 / W^0.25 points, W pieces of mean area to the hide: 21.9 for
  // W = 10, 18.4 for 20, 14.7 for 50, 12.3 for 100. Ours is of single kinds without small ones that fill, so larger.
  it('when more pieces go into a side, the loss falls, and is of the size that footwear allowances give', () => {
    const side = DEFAULT_CUTS.find(({ name }) => name === 'side')!;
    const areaMm2 = (side.areaMm2.min + side.areaMm2.max) / 2;
    const outlineMm = outlineOfCut(side, areaMm2);
    const lostOf = (pieces: number): number => {
      const widthMm = Math.sqrt(areaMm2 / pieces / 2);
      const onTop = lossAtEdge({ areaMm2, outlineMm }, { widthMm, strip: 0.45, edgeMm: 0 });
      return (100 * onTop) / (1 + onTop);
    };
    const published = [20, 50, 100, 200].map((pieces) => ({ pieces, points: 39 / pieces ** 0.25 }));
    expect(published.map(({ points }) => Math.round(10 * points) / 10)).toEqual([18.4, 14.7, 12.3, 10.4]);
    const ours = published.map(({ pieces }) => lostOf(pieces));
    ours.slice(1).forEach((points, i) => expect(points).toBeLessThan(ours[i]!));
    published.forEach(({ points }, i) => expect(Math.abs(ours[i]! / points - 1)).toBeLessThan(1));
  });
});

describe('the three losses of pieces', () => {
  const piece = (widthMm: number): LossPiece => ({
    copies: 40,
    netMm2: widthMm * 2 * widthMm,
    inRepeatMm2: widthMm * 2 * widthMm * 1.1,
    widthMm,
  });
  const of = (widthMm: number, share: number) =>
    lossesOf({
      pieces: [piece(widthMm)],
      hide: { areaMm2: 2e6, outlineMm: 7000 },
      usableShare: { min: share, max: share },
      edgeMm: 10,
      workshop: DEFAULT_WORKSHOP,
    });

  it('when losses are asked for, low, likely and high follow each other and add up step by step', () => {
    const { low, likely, high } = of(80, 0.88);
    expect(low.buyMm2).toBeLessThan(likely.buyMm2);
    expect(likely.buyMm2).toBeLessThan(high.buyMm2);
    for (const each of [low, likely, high]) {
      expect(each.between).toBeCloseTo(0.1, 12);
      expect(each.buyMm2).toBeCloseTo((each.netMm2 * 1.1 * (1 + each.edge)) / each.usable, 3);
      expect(each.yieldShare).toBeCloseTo(each.netMm2 / each.buyMm2, 12);
    }
  });

  it('when a hide has no flaws, flaws cost nothing however wide the piece is', () => {
    expect(of(300, 1).high.usable).toBe(1);
  });

  it('when pieces are small, flaws cost what the grade says; when they are wider, more', () => {
    const rule = { from: 50, double: 100, share: 0.88 };
    expect(usableFor(40, rule)).toBeCloseTo(0.88, 12);
    // By hand: 150 mm is 100 mm wider than 50, so twice 12 % are lost.
    expect(usableFor(150, rule)).toBeCloseTo(0.76, 12);
    expect(usableFor(10_000, rule)).toBe(0.2);
  });

  it('when there is nothing to cut, nothing is to be bought', () => {
    const found = lossesOf({
      pieces: [],
      hide: { areaMm2: 2e6, outlineMm: 7000 },
      usableShare: { min: 0.9, max: 0.9 },
      edgeMm: 10,
      workshop: DEFAULT_WORKSHOP,
    });
    expect(found.likely.buyMm2).toBe(0);
    expect(found.likely.yieldShare).toBe(0);
  });
});
