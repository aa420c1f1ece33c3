import { createRandom } from '@hidebound/geometry';
import type { Polyline, Random } from '@hidebound/geometry';
import type { Hide, LeatherQualities } from '../../model/hide.js';
import type { ThicknessRange } from '../../model/marks.js';
import type { CutSizeRule, Span } from '../../model/workshop-rules.js';
import { HIDES_FIGURES } from './hides-figures.js';
import { chanceMarks } from './chance-marks.js';
import { chanceZones } from './chance-zones.js';
import { frameOfCut } from './cut-frame.js';
import type { CutFrame } from './cut-frame.js';
import { planOfCut } from './cut-plans.js';
import type { HidePlan } from './hide-plan.js';

/** What a hide of chance is to be like. */
export interface MadeUpHideOptions {
  /** The same seed and number give the same hide. */
  readonly seed: number;
  readonly number: number;
  /** Absent: as the row of the table of cuts says. */
  readonly areaMm2?: Span;
  /** Share of its area less openings that is neither never to be used nor ugly (looks C), 0 to 1. */
  readonly usableShare?: Span;
  readonly thickness?: ThicknessRange;
  readonly tannage?: string;
  readonly temper?: string;
  readonly finish?: string;
  readonly colour?: string;
  /** Hides of one lot match in shade; absent: each hide is its own. */
  readonly lot?: string;
}

/**
 * A hide of chance: a cut or skin as the table of cuts describes it, with an irregular outline, zones and flaws, made
 * up so that trial layouts have something to lie on before there is a hide. Area and usable share are drawn evenly
 * from their spans. Deterministic in every engine: it uses the project's own numbers and trigonometry only. It is a
 * whole hide that passes every check of a hide file. Sizes are those of the table; shapes, and where which flaws lie,
 * are our own, drawn by eye: no hides were measured for them.
 */
export function madeUpHide(rule: CutSizeRule, options: MadeUpHideOptions): Hide {
  const random = createRandom(options.seed).fork(options.number);
  const areaMm2 = drawn(random, options.areaMm2 ?? rule.areaMm2);
  const usableShare = drawn(random, inner(options.usableShare ?? usualShare()));
  const plan = planOfCut(random.fork(1), rule);
  const isRight = !plan.isWhole && random.next() < 0.5;
  const frame = frameOfCut(random.fork(2), plan, rule, areaMm2, isRight);
  const { openings, flaws } = chanceMarks(random.fork(3), plan, frame, usableShare);
  return {
    id: `${rule.name.replace(/[^\p{L}\p{N}]+/gu, '-')}-of-chance-${options.number}`,
    cut: rule.cut,
    outline: frame.outline,
    openings,
    ...(plan.hasBackbone ? { backbone: backboneOf(plan, frame) } : {}),
    tightness: strokesOf(plan, frame),
    zones: chanceZones(plan, frame),
    flaws,
    candidates: [],
    unsureEdges: [],
    leather: leatherOf(options),
    area: { measuredMm2: Math.round(frame.areaMm2 * 100) / 100 },
    ...(options.lot === undefined ? {} : { lot: options.lot }),
    state: 'on hand',
    notes: 'Made up by chance for a trial; there is no such hide.',
  };
}

function drawn(random: Random, { min, max }: Span): number {
  return random.between(min, max);
}

/** The least and greatest hundredth of a span are left out, so that what is measured falls within it. */
function inner({ min, max }: Span): Span {
  const margin = (max - min) / 100;
  return { min: min + margin, max: max - margin };
}

/** Where nothing is said of the hide's grade. */
function usualShare(): Span {
  const { value } = HIDES_FIGURES[0]!;
  return { min: value.min / 100, max: value.max / 100 };
}

/** How far within the ends of the base line the backbone ends, as a share of it; and its points. */
const WITHIN = 0.05;
const BACKBONE_POINTS = 3;

function backboneOf({ half }: HidePlan, frame: CutFrame): Polyline {
  const [head] = half[0]!.points[0]!;
  const { points } = half[half.length - 1]!;
  const [tail] = points[points.length - 1]!;
  return Array.from({ length: BACKBONE_POINTS }, (_, i) => {
    const share = WITHIN + (1 - 2 * WITHIN) * (i / (BACKBONE_POINTS - 1));
    return frame.at([head + share * (tail - head), 0]);
  });
}

function strokesOf({ strokes, isWhole }: HidePlan, frame: CutFrame): Polyline[] {
  const near = strokes.map((stroke) => stroke.map(frame.at));
  if (!isWhole) return near;
  const far = strokes.map((stroke) => stroke.map(([along, out]) => frame.at([along, -out])));
  return [...near, ...far];
}

function leatherOf(options: MadeUpHideOptions): LeatherQualities {
  const { tannage, temper, finish, colour, thickness } = options;
  return {
    ...(tannage === undefined ? {} : { tannage }),
    ...(temper === undefined ? {} : { temper }),
    ...(finish === undefined ? {} : { finish }),
    ...(colour === undefined ? {} : { colour }),
    ...(thickness === undefined ? {} : { thickness }),
    readings: [],
  };
}
