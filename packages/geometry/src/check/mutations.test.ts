import { describe, expect, it } from 'vitest';
import type { Placement } from '../types/problem.js';
import type { Region } from '../types/shape.js';
import { checkAnswer } from './index.js';
import { turnJob } from './test-jobs.js';
import type { Job } from './test-jobs.js';
import { loadJudge } from './test-judge.js';
import type { Shape } from './test-judge.js';
import { SCAR, VOID, ZONES, makeMutation } from './test-mutations.js';
import type { Mutation } from './test-mutations.js';

/** The check forgives 2 µm; the judge, with its own rounding, decides when it is off that by more than 1 µm. */
const SURELY_FORGIVEN_MM = 0.001;
const SURELY_BROKEN_MM = 0.003;
/** Less area than this (mm²) in common is the judge's own rounding: a wedge 1 µm deep may have as little. */
const NO_AREA_MM2 = 1e-12;

const CLOSE_MM = 0.05;

type Verdict = 'kept' | 'broken' | 'undecided';

const judge = await loadJudge();
const allZones = judge.union(judge.shapeOf(ZONES[0]!), judge.shapeOf(ZONES[1]!));

function bothSure(isKept: boolean, isBroken: boolean): Verdict {
  if (isKept === isBroken) return 'undecided';
  return isKept ? 'kept' : 'broken';
}

/** Overlap deeper than `by`: something of the one is left within the other when that is shrunk. */
function isDeeper(one: Shape, other: Shape, by: number): boolean {
  return (
    judge.intersectionArea(judge.grow(one, -by), other) > NO_AREA_MM2 ||
    judge.intersectionArea(judge.grow(other, -by), one) > NO_AREA_MM2
  );
}

function judgeApart(one: Shape, other: Shape, required: number): Verdict {
  const distance = judge.distance(one, other);
  if (required > 0) {
    return bothSure(distance >= required - SURELY_FORGIVEN_MM, distance <= required - SURELY_BROKEN_MM);
  }
  if (distance > 0) return 'kept';
  return bothSure(!isDeeper(one, other, SURELY_FORGIVEN_MM), isDeeper(one, other, SURELY_BROKEN_MM));
}

/** Kept or broken by less than 50 µm. */
function isCloseCall(one: Shape, other: Shape, required: number, verdict: Verdict): boolean {
  const distance = judge.distance(one, other);
  if (verdict === 'kept') return distance < required + CLOSE_MM;
  return required > CLOSE_MM ? distance > required - CLOSE_MM : !isDeeper(one, other, CLOSE_MM);
}

function judgeEdge(one: Shape, sheet: Shape, required: number): Verdict {
  if (required > 0) {
    const outside = judge.differenceArea(one, sheet) > NO_AREA_MM2;
    const distance = judge.distanceToBoundary(one, sheet);
    return bothSure(
      !outside && distance >= required - SURELY_FORGIVEN_MM,
      outside || distance <= required - SURELY_BROKEN_MM,
    );
  }
  const reachesOut = (by: number): boolean =>
    judge.differenceArea(one, judge.grow(sheet, by)) > NO_AREA_MM2 ||
    judge.differenceArea(judge.grow(one, -by), sheet) > NO_AREA_MM2;
  return bothSure(!reachesOut(SURELY_FORGIVEN_MM), reachesOut(SURELY_BROKEN_MM));
}

function judgeZone(one: Shape): Verdict {
  const reachesOut = (by: number): boolean =>
    judge.differenceArea(one, judge.grow(allZones, by)) > NO_AREA_MM2;
  return bothSure(!reachesOut(SURELY_FORGIVEN_MM), reachesOut(SURELY_BROKEN_MM));
}

interface Judgement {
  readonly rule: string;
  readonly key: string;
  readonly verdict: Verdict;
  readonly isClose?: boolean;
}

function judgeAll({ job, gap, edge, voidMm }: Mutation): readonly Judgement[] {
  const { placements } = job.answer;
  const regionOf = (placement: Placement): Region =>
    job.problem.items.find(({ id }) => id === placement.item)!.region;
  const shapes = placements.map((placement) => judge.shapeOf(regionOf(placement), placement));
  const sheet = judge.shapeOf(job.problem.sheets[0]!.region);
  const voidShape = judge.shapeOf(VOID);
  const scar = judge.shapeOf(SCAR);
  const judgements: Judgement[] = [];
  for (const [i, shape] of shapes.entries()) {
    const name = placements[i]!.item;
    judgements.push({ rule: 'edge', key: name, verdict: judgeEdge(shape, sheet, edge) });
    judgements.push({ rule: 'void', key: `${name} void`, verdict: judgeApart(shape, voidShape, voidMm) });
    judgements.push({ rule: 'zone', key: `${name} bend, back`, verdict: judgeZone(shape) });
    const onScar = judgeApart(shape, scar, 0);
    judgements.push({ rule: 'looks', key: `${name} scar`, verdict: onScar });
    judgements.push({ rule: 'strength', key: `${name} scar`, verdict: onScar });
    for (let k = i + 1; k < shapes.length; k++) {
      const verdict = judgeApart(shape, shapes[k]!, gap);
      const isClose = isCloseCall(shape, shapes[k]!, gap, verdict);
      judgements.push({ rule: 'gap', key: `${name} ${placements[k]!.item}`, verdict, isClose });
    }
  }
  return judgements;
}

function toldBy({ problem, answer }: Job): ReadonlySet<string> {
  return new Set(
    checkAnswer(problem, answer).map(({ rule, at, other }) => {
      if (rule === 'edge') return `${rule}: ${at!.item}`;
      return `${rule}: ${at!.item} ${typeof other === 'string' ? other : other!.item}`;
    }),
  );
}

const MUTATIONS = Array.from({ length: 500 }, (_, i) => i + 1);

describe('when 500 small layouts near contact are mutated', () => {
  // Judge: jsts 2.12.1 (distance, overlay and buffer operations of the JTS Topology Suite).
  it(
    'agrees with an outside judge about every pair, edge, void and flaw that the judge can decide',
    { timeout: 120_000 },
    () => {
      const tally = { kept: 0, broken: 0, undecided: 0 };
      const close = { ...tally };
      const perRule = new Map<string, typeof tally>();
      const disagreements: string[] = [];
      for (const seed of MUTATIONS) {
        const mutation = makeMutation(seed);
        const told = toldBy(mutation.job);
        for (const { rule, key, verdict, isClose } of judgeAll(mutation)) {
          const counts = perRule.get(rule) ?? { ...tally };
          counts[verdict] += 1;
          if (isClose === true) close[verdict] += 1;
          perRule.set(rule, counts);
          if (verdict === 'undecided') continue;
          const isTold = told.has(`${rule}: ${key}`);
          if (isTold !== (verdict === 'broken')) disagreements.push(`${seed} ${rule}: ${key} is ${verdict}`);
        }
      }
      expect(disagreements).toEqual([]);
      expect(close.kept).toBeGreaterThan(100);
      expect(close.broken).toBeGreaterThan(30);
      for (const [rule, counts] of perRule) {
        expect(counts.kept, `${rule} kept`).toBeGreaterThan(100);
        expect(counts.broken, `${rule} broken`).toBeGreaterThan(100);
      }
    },
  );

  it('says the same of the whole job turned and moved', { timeout: 60_000 }, () => {
    for (const seed of MUTATIONS) {
      const { job } = makeMutation(seed);
      const turned = turnJob(job, (seed * 137.507764) % 360, 3 * seed, -2 * seed);
      expect(toldBy(turned), `seed ${seed}`).toEqual(toldBy(job));
    }
  });
});
