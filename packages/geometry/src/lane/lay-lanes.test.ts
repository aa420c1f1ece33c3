import { describe, expect, it } from 'vitest';
import { checkAnswer, isProven } from '../check/index.js';
import { sampleHide } from '../sample/sample-hide.js';
import type { FixedPlacement, NestProblem, QualityRegion, Sheet } from '../types/problem.js';
import type { LaneLayout, LaneOptions } from './lay-lanes.js';
import { layLanes } from './lay-lanes.js';
import { answerWith, makeStrap, panelSheet, rectangle, strapProblem } from './test-straps.js';

/** Lays and proves. */
function lay(problem: NestProblem, options: LaneOptions = {}): LaneLayout {
  const laid = layLanes(problem, options);
  const answer = answerWith(laid, options.lying ?? problem.fixed);
  expect(checkAnswer(problem, answer).filter(({ accepted }) => !accepted)).toEqual([]);
  return laid;
}

function widths({ lanes }: LaneLayout): number[][] {
  return lanes.map(({ rows }) => rows.map(({ widthMm }) => widthMm));
}

function flaw(
  id: string,
  box: readonly [number, number, number, number],
  change: Partial<QualityRegion> = {},
) {
  return {
    id,
    areas: [{ outer: rectangle(...box), openings: [] }],
    grade: 2,
    weak: false,
    isVoid: false,
    uncertaintyMm: 0,
    ...change,
  };
}

const NO_DISTANCES = { gap: 2, edge: 0, void: 0 };

describe('when straps are laid on a clean panel', () => {
  it('fills it side by side to its very edges', () => {
    const straps = [{ item: makeStrap('belt', 900, 25), count: 5 }];
    const laid = lay(strapProblem([panelSheet(900, 100)], straps, { distances: NO_DISTANCES }));
    expect(widths(laid)).toEqual([[25, 25, 25, 25]]);
    expect(laid.left).toHaveLength(1);
  });

  it('takes rows of several widths from one straight first cut', () => {
    const straps = [
      { item: makeStrap('belt', 900, 38), count: 2 },
      { item: makeStrap('strap', 850, 25), count: 1 },
    ];
    const laid = lay(strapProblem([panelSheet(1000, 500)], straps));
    expect(laid.lanes).toHaveLength(1);
    expect(widths(laid)).toEqual([[38, 38, 25]]);
  });

  it('lays short straps end to end in one row', () => {
    const straps = [{ item: makeStrap('loop', 200, 20), count: 4 }];
    const laid = lay(
      strapProblem([panelSheet(820, 26)], straps, { distances: { ...NO_DISTANCES, edge: 3 } }),
    );
    expect(laid.lanes.map(({ rows }) => rows.map((row) => row.straps.length))).toEqual([[4]]);
  });

  it('shares no line where the cut takes leather away', () => {
    const straps = [{ item: makeStrap('belt', 900, 25), count: 4 }];
    const problem = strapProblem([panelSheet(900, 100)], straps, { distances: NO_DISTANCES });
    const laid = lay(problem, { kerfMm: 0.2 });
    expect(laid.lanes[0]!.kerfMm).toBe(0.2);
    expect(laid.placements).toHaveLength(3);
  });

  it('parts rows that share no line by the gap, where straps are narrower than that', () => {
    const straps = [{ item: makeStrap('lace', 700, 4), count: 6 }];
    const problem = strapProblem([panelSheet(800, 200)], straps, { distances: { gap: 6, edge: 2, void: 0 } });
    const laid = lay(problem);
    expect(widths(laid)).toEqual([
      [4, 4],
      [4, 4],
      [4, 4],
    ]);
  });
});

describe('when leather has flaws', () => {
  it('cuts straps to length before and after one', () => {
    const sheet = panelSheet(1000, 60, { qualities: [flaw('brand', [430, 0, 500, 60])] });
    const laid = lay(strapProblem([sheet], [{ item: makeStrap('half', 420, 25), count: 4 }]));
    expect(laid.left).toEqual([]);
    expect(laid.lanes).toHaveLength(1);
    expect(laid.lanes[0]!.rows.map((row) => row.straps.length)).toEqual([2, 2]);
  });

  it('keeps a void and an opening at their distances, uncertainty included', () => {
    const opening = rectangle(480, 20, 520, 40).reverse();
    const hole = flaw('hole', [200, 10, 205, 15], { isVoid: true, uncertaintyMm: 4 });
    const sheet = panelSheet(1000, 60, { qualities: [hole] });
    const region = { ...sheet.region, openings: [opening] };
    const laid = lay(
      strapProblem([{ ...sheet, region }], [{ item: makeStrap('short', 150, 25), count: 12 }]),
    );
    expect(laid.placements.length).toBeGreaterThan(6);
  });

  it('lets a flaw lie under a part that is not seen', () => {
    const need = { maxGrade: 3, strong: false };
    const face = { outer: rectangle(-450, -12.5, 300, 12.5), openings: [] };
    const parts = [{ name: 'face', areas: [face], need: { maxGrade: 0, strong: false } }];
    const item = makeStrap('folded', 900, 25, { need, parts, lane: { widthMm: 25, firmEnd: 0 } });
    // The strap fits in one way only: what is unseen lies at the far end.
    const sheet = panelSheet(905, 30, { qualities: [flaw('scar', [800, 0, 905, 30])] });
    const problem = strapProblem([sheet], [{ item, count: 1 }], { distances: NO_DISTANCES });
    expect(lay(problem).placements).toHaveLength(1);
    const seen = { ...item, parts: [{ ...parts[0]!, areas: [item.region] }] };
    expect(
      lay(strapProblem([sheet], [{ item: seen, count: 1 }], { distances: NO_DISTANCES })).left,
    ).toHaveLength(1);
  });

  it('lays straps that bear load on sound leather of their zones alone', () => {
    const zones = [
      flaw('bend', [400, 0, 1600, 300], { grade: 0, zone: 'bend' }),
      flaw('belly', [0, 300, 2000, 600], { grade: 1, weak: true, zone: 'belly' }),
    ];
    const item = makeStrap('rein', 1100, 30, {
      need: { maxGrade: 1, strong: true, zones: ['bend', 'belly'] },
    });
    const laid = lay(strapProblem([panelSheet(2000, 600, { qualities: zones })], [{ item, count: 12 }]));
    expect(laid.placements.length).toBeGreaterThanOrEqual(8);
    for (const { y } of laid.placements) expect(y).toBeLessThan(300);
  });
});

describe('when direction matters', () => {
  it('puts the hole end towards the tail', () => {
    const straps = (firmEnd: -1 | 1) => [
      { item: makeStrap('belt', 900, 25, { lane: { widthMm: 25, firmEnd } }), count: 2 },
    ];
    const turns = (firmEnd: -1 | 1): number[] =>
      lay(strapProblem([panelSheet(1000, 300)], straps(firmEnd))).placements.map(
        ({ rotationDeg }) => rotationDeg,
      );
    expect(turns(1)).toEqual([0, 0]);
    expect(turns(-1)).toEqual([180, 180]);
  });

  it('runs across the hide where the rule says so, and open at that edge', () => {
    const angleRule = {
      frame: 'local',
      arrowDeg: 0,
      targetsDeg: [90],
      toleranceDeg: 5,
      modulo: 180,
    } as const;
    const item = makeStrap('across', 280, 25, { angleRule, lane: { widthMm: 25, firmEnd: 0 } });
    const laid = lay(strapProblem([panelSheet(1000, 300)], [{ item, count: 3 }]));
    expect(laid.left).toEqual([]);
    expect(laid.placements.every(({ rotationDeg }) => rotationDeg % 180 === 90)).toBe(true);
  });

  it('follows strokes that run askew', () => {
    const stroke = [
      { x: 0, y: 100 },
      { x: 1000, y: 270 },
    ];
    const sheet = panelSheet(1000, 500, { direction: { strokes: [stroke] } });
    const angleRule = { frame: 'local', arrowDeg: 0, targetsDeg: [0], toleranceDeg: 1, modulo: 180 } as const;
    const laid = lay(
      strapProblem([sheet], [{ item: makeStrap('belt', 600, 38.1, { angleRule }), count: 5 }]),
    );
    expect(laid.left).toEqual([]);
    expect(laid.lanes).toHaveLength(1);
  });

  it('lays nothing where the direction is unknown', () => {
    const sheet: Sheet = { ...panelSheet(1000, 300), direction: { strokes: [] } };
    expect(lay(strapProblem([sheet], [{ item: makeStrap('belt', 500, 25), count: 2 }])).left).toHaveLength(2);
  });

  it('lays nothing where the leather is too thin, and past it where readings tell', () => {
    const thickness = { minMm: 3, maxMm: 4, tooThick: 'refuse' } as const;
    const item = makeStrap('belt', 400, 25, { thickness });
    const thin = panelSheet(1000, 100, { thickness: { rangeMm: [2, 4], readings: [] } });
    expect(lay(strapProblem([thin], [{ item, count: 2 }])).left).toHaveLength(2);
    const readings = [
      { at: { x: 100, y: 50 }, mm: 2.2 },
      { at: { x: 500, y: 50 }, mm: 3.4 },
      { at: { x: 900, y: 50 }, mm: 3.5 },
    ];
    const mixed = panelSheet(1000, 100, { thickness: { rangeMm: [2, 4], readings } });
    expect(lay(strapProblem([mixed], [{ item, count: 2 }])).left).toEqual([]);
  });
});

describe('when other things lie there, or bind', () => {
  const belts = [{ item: makeStrap('belt', 900, 30), count: 4 }];
  const fixed = (change: Partial<FixedPlacement>): FixedPlacement => ({
    item: 'belt',
    set: 1,
    copy: 1,
    sheet: 'hide',
    x: 500,
    y: 150,
    rotationDeg: 0,
    accepted: [],
    ...change,
  });

  it('keeps off what is fixed, and gives a fixed strap a lane of its own', () => {
    const patch = { ...makeStrap('patch', 80, 80, { need: { maxGrade: 9, strong: false } }) };
    const { lane: _, ...plain } = patch;
    const straps = [
      ...belts,
      { item: { ...plain, angleRule: { ...plain.angleRule, frame: 'free' as const } }, count: 1 },
    ];
    const problem = strapProblem([panelSheet(1000, 400)], straps, {
      fixed: [fixed({ copy: 3 }), fixed({ item: 'patch', x: 500, y: 250 })],
    });
    const laid = lay(problem);
    expect(laid.left).toEqual([]);
    expect(laid.placements.map(({ copy }) => copy)).toEqual([1, 2, 4]);
    expect(laid.lanes[0]!.rows).toEqual([{ widthMm: 30, straps: [{ item: 'belt', set: 1, copy: 3 }] }]);
  });

  it('rebuilds a lane whose straps were all kept', () => {
    const problem = strapProblem([panelSheet(1000, 400)], belts);
    for (const kerfMm of [0, 0.3]) {
      const before = lay(problem, { kerfMm });
      const kept = { ...problem, fixed: before.placements.map((one) => ({ ...one, accepted: [] })) };
      const after = lay(kept, { kerfMm });
      expect(after.placements).toEqual([]);
      expect(widths(after)).toEqual(widths(before));
    }
  });

  it('tells a kept strap that cannot be reached, for the check to find fault', () => {
    const { lane: _, ...block } = makeStrap('block', 60, 60, { need: { maxGrade: 9, strong: false } });
    const problem = strapProblem([panelSheet(1000, 400)], [...belts, { item: block, count: 2 }], {
      fixed: [
        fixed({}),
        fixed({ item: 'block', x: 20, y: 150 }),
        fixed({ item: 'block', copy: 2, x: 980, y: 150 }),
      ],
    });
    const answer = answerWith(layLanes(problem), problem.fixed);
    expect(isProven(checkAnswer(problem, answer))).toBe(false);
  });

  it('uses sheets in their order, as far as a copy allows them', () => {
    const sheets = [panelSheet(1000, 80), { ...panelSheet(1000, 400), id: 'second' }];
    const item = { ...belts[0]!.item, sheets: ['hide', 'second'] };
    const problem = strapProblem(sheets, [{ item, count: 4 }]);
    const on = ({ placements }: LaneLayout): string[] => placements.map(({ sheet }) => sheet);
    expect(on(lay(problem))).toEqual(['hide', 'hide', 'second', 'second']);
    const copies = [1, 2].map((copy) => ({ item: 'belt', set: 1, copy, sheets: ['second'] }));
    expect(on(layLanes(problem, { copies }))).toEqual(['second', 'second']);
  });

  it('lays urgent straps first', () => {
    const straps = [
      { item: makeStrap('long', 900, 40), count: 3 },
      { item: makeStrap('urgent', 500, 30, { priority: 1 }), count: 1 },
    ];
    const laid = lay(strapProblem([panelSheet(1000, 50)], straps));
    expect(laid.placements.map(({ item }) => item)).toEqual(['urgent']);
  });

  it('keeps groups apart in lanes of their own', () => {
    const straps = [
      { item: makeStrap('black', 900, 30, { group: 'black' }), count: 2 },
      { item: makeStrap('brown', 900, 30, { group: 'brown' }), count: 2 },
    ];
    const distances = { gap: 3, edge: 5, void: 3, betweenGroups: 20 };
    const laid = lay(strapProblem([panelSheet(1000, 300)], straps, { distances }));
    expect(laid.left).toEqual([]);
    expect(laid.lanes).toHaveLength(2);
  });

  it('lays pairs alike far from the backbone, or not at all', () => {
    const plain = makeStrap('left', 900, 30);
    const right = { ...makeStrap('right', 900, 30), mirrorOf: 'left' };
    const mirrored = (distanceMm: number) => ({
      ...right,
      region: { outer: plain.region.outer.map(({ x, y }) => ({ x: -x, y })).reverse(), openings: [] },
      angleRule: { ...right.angleRule, arrowDeg: 180 },
      lane: { widthMm: 30, firmEnd: -1 as const },
      pair: { toleranceDeg: 5, distanceMm },
    });
    const job = (distanceMm: number): NestProblem => ({
      ...strapProblem(
        [panelSheet(1000, 400)],
        [
          { item: plain, count: 3 },
          { item: mirrored(distanceMm), count: 3 },
        ],
      ),
      setKinds: [
        {
          id: 'harness',
          sets: 1,
          members: [
            { item: 'left', count: 3 },
            { item: 'right', count: 3 },
          ],
          value: 0,
          priority: 0,
          keep: 'nothing',
          beside: [],
        },
      ],
    });
    expect(lay(job(100)).left).toEqual([]);
    const narrow = lay(job(10));
    expect(narrow.placements.length % 2).toBe(0);
  });

  it('leaves what is no strap between straight lines', () => {
    const item = makeStrap('wide', 900, 30, { lane: { widthMm: 25, firmEnd: 0 } });
    expect(lay(strapProblem([panelSheet(1000, 400)], [{ item, count: 1 }])).left).toHaveLength(1);
  });

  it('keeps room for a rough cut around the lane', () => {
    const item = makeStrap('dyed', 900, 30, { roughMargin: 12 });
    const laid = layLanes(strapProblem([panelSheet(1000, 400)], [{ item, count: 3 }]));
    expect(laid.left).toEqual([]);
    for (const { y } of laid.placements) {
      expect(y).toBeGreaterThanOrEqual(27 - 0.002);
      expect(y).toBeLessThanOrEqual(373.002);
    }
  });
});

describe('when a clean side is cut into straps', () => {
  it('lays most of what its back has room for', () => {
    const side = sampleHide(5, { id: 'hide', cut: 'side', flaws: 0 });
    const straps = [
      { item: makeStrap('belt', 1150, 38), count: 10 },
      { item: makeStrap('strap', 900, 25), count: 5 },
      { item: makeStrap('loop', 120, 25), count: 10 },
    ];
    const laid = lay(strapProblem([side], straps));
    expect(laid.left).toEqual([]);
    expect(laid.lanes).toHaveLength(1);
  });
});
