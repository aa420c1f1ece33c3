import type { ThicknessRange } from '../model/marks.js';
import type { Workshop } from '../model/workshop.js';
import { figureOf } from '../workshop/figures.js';
import type { HidePlace } from './hide-places.js';
import type { FitKind, SuitRemark } from './suit-model.js';
import { SUIT } from './suit-figures.js';

/** What of a hide counts for a piece, and what the piece asks. */
export interface ThicknessAsked {
  /** Places that the piece may come from. */
  readonly places: readonly HidePlace[];
  readonly cellMm2: number;
  readonly isMeasured: boolean;
  /** Of one layer; absent: any. */
  readonly wanted: ThicknessRange | undefined;
  /** The order or the part's rule lets it be skived where it is too thick. */
  readonly isSkived: boolean;
  /** The order itself says that it must not be skived. */
  readonly refusesSkiving: boolean;
  /** It may be made up of more layers than the order says. */
  readonly mayDouble: boolean;
  readonly copyMm2: number;
  readonly workshop: Pick<Workshop, 'figures'>;
}

export interface ThicknessFit {
  readonly kind: FitKind;
  /** Of the places; absent: not known. */
  readonly span?: ThicknessRange;
  readonly rightShare?: number;
  /** Skived all over: from the thickest that is used. */
  readonly skivedFromMm?: number;
  readonly layers?: number;
  readonly reasons: readonly SuitRemark[];
  readonly remarks: readonly SuitRemark[];
}

type Placing = 'thin' | 'right' | 'thick' | 'too deep' | 'either way';

/** Rounding of a mean of readings is no fault: thousandths of a millimetre. */
const ROUNDING_MM = 0.001;

/** How the thickness of the places goes with what is wanted: right, after skiving, in two layers, or not at all. */
export function thicknessFit(asked: ThicknessAsked): ThicknessFit {
  const span = spanOf(asked.places);
  if (span === undefined) return unknown(asked);
  const { wanted, places, isSkived, refusesSkiving, workshop } = asked;
  const base = { span, reasons: [], remarks: [] };
  if (wanted === undefined) return { ...base, kind: 'fits', rightShare: 1 };
  const toleranceMm = asked.isMeasured ? ROUNDING_MM : figureOf(workshop, SUIT.tolerance).value.max;
  const placing = places.map((place) => placingOf(place, wanted, toleranceMm, workshop));
  const right = places.filter((_, i) => placing[i] === 'right');
  const thick = places.filter((_, i) => placing[i] === 'thick');
  const either = places.filter((_, i) => placing[i] === 'either way');
  const enough = (some: readonly HidePlace[]): boolean => some.length * asked.cellMm2 >= asked.copyMm2;

  if (either.length > 0) return statedOnly(asked, wanted, span);
  const mayLater = !isSkived && !refusesSkiving;
  const skived = [...right, ...thick];
  if (thick.length > 0 && enough(skived) && (isSkived || (mayLater && !enough(right)))) {
    const later: SuitRemark[] = isSkived ? [] : [{ code: 'order-refuses-skiving', params: {} }];
    const used = spanOf(skived)!;
    return {
      ...base,
      kind: 'skive',
      rightShare: skived.length / places.length,
      skivedFromMm: used.maxMm,
      remarks: [...placesRemark(skived, places, used), ...later],
    };
  }
  if (right.length > 0 && enough(right)) {
    const remarks = [
      ...placesRemark(right, places, spanOf(right)!),
      ...toleranceRemark(span, wanted, asked, toleranceMm),
    ];
    return { ...base, kind: 'fits', rightShare: right.length / places.length, remarks };
  }
  return doubled(asked, wanted, toleranceMm) ?? no(asked, wanted, span, placing);
}

function placingOf(
  { thickness }: HidePlace,
  { minMm, maxMm }: ThicknessRange,
  toleranceMm: number,
  workshop: Pick<Workshop, 'figures'>,
): Placing {
  const [lo, hi] = thickness!;
  if (hi < minMm - toleranceMm) return 'thin';
  if (lo > maxMm + toleranceMm) return canSkive(hi, maxMm, workshop) ? 'thick' : 'too deep';
  return lo >= minMm - toleranceMm && hi <= maxMm + toleranceMm ? 'right' : 'either way';
}

/** Half the thickness all over and no thinner than leather can be skived, unless the workshop says otherwise. */
function canSkive(fromMm: number, toMm: number, workshop: Pick<Workshop, 'figures'>): boolean {
  const share = 1 - figureOf(workshop, SUIT.thinning).value.max / 100;
  return toMm >= fromMm * share - ROUNDING_MM && toMm >= figureOf(workshop, SUIT.thinnest).value.min;
}

/** A hide without readings: where it is right, nobody knows. */
function statedOnly(asked: ThicknessAsked, wanted: ThicknessRange, span: ThicknessRange): ThicknessFit {
  const toleranceMm = figureOf(asked.workshop, SUIT.tolerance).value.max;
  const isThickOnly = span.minMm >= wanted.minMm - toleranceMm;
  const remark: SuitRemark = {
    code: 'measure-places',
    params: {
      minMm: span.minMm,
      maxMm: span.maxMm,
      wantedMinMm: wanted.minMm,
      wantedMaxMm: wanted.maxMm,
    },
  };
  const base = { span, reasons: [] };
  if (
    span.maxMm > wanted.maxMm + toleranceMm &&
    asked.isSkived &&
    canSkive(span.maxMm, wanted.maxMm, asked.workshop)
  ) {
    return { ...base, kind: 'skive', skivedFromMm: span.maxMm, remarks: isThickOnly ? [] : [remark] };
  }
  return { ...base, kind: 'fits', remarks: [remark] };
}

function doubled(
  asked: ThicknessAsked,
  wanted: ThicknessRange,
  toleranceMm: number,
): ThicknessFit | undefined {
  if (!asked.mayDouble) return undefined;
  const most = figureOf(asked.workshop, SUIT.layers).value.max;
  for (let layers = 2; layers <= most; layers += 1) {
    const good = asked.places.filter(({ thickness }) => {
      const [lo, hi] = thickness!;
      return lo * layers >= wanted.minMm - toleranceMm && hi * layers <= wanted.maxMm + toleranceMm;
    });
    if (good.length === 0 || good.length * asked.cellMm2 < asked.copyMm2) continue;
    return {
      kind: 'double',
      span: spanOf(asked.places)!,
      rightShare: good.length / asked.places.length,
      layers,
      reasons: [],
      remarks: placesRemark(good, asked.places, spanOf(good)!),
    };
  }
  return undefined;
}

function no(
  asked: ThicknessAsked,
  wanted: ThicknessRange,
  span: ThicknessRange,
  placing: readonly Placing[],
): ThicknessFit {
  const params = {
    minMm: span.minMm,
    maxMm: span.maxMm,
    wantedMinMm: wanted.minMm,
    wantedMaxMm: wanted.maxMm,
  };
  const is = (kind: Placing): boolean => placing.every((each) => each === kind);
  const code = is('thin')
    ? 'too-thin'
    : placing.every((each) => each === 'thick' || each === 'too deep')
      ? asked.refusesSkiving
        ? 'too-thick'
        : 'skive-too-deep'
      : 'too-little-of-it';
  return { kind: 'no', span, reasons: [{ code, params }], remarks: [] };
}

function unknown({ wanted }: ThicknessAsked): ThicknessFit {
  if (wanted === undefined) return { kind: 'fits', reasons: [], remarks: [] };
  const params = { wantedMinMm: wanted.minMm, wantedMaxMm: wanted.maxMm };
  return { kind: 'measure', reasons: [], remarks: [{ code: 'thickness-not-known', params }] };
}

/** Said where some of the places are left out. */
function placesRemark(
  used: readonly HidePlace[],
  all: readonly HidePlace[],
  { minMm, maxMm }: ThicknessRange,
): SuitRemark[] {
  if (used.length === all.length) return [];
  return [{ code: 'only-places', params: { share: used.length / all.length, minMm, maxMm } }];
}

/** A layout is stricter than the trade: it forgives nothing of a stated thickness. */
function toleranceRemark(
  span: ThicknessRange,
  wanted: ThicknessRange,
  { isMeasured }: ThicknessAsked,
  toleranceMm: number,
): SuitRemark[] {
  const isBeyond = span.minMm < wanted.minMm - ROUNDING_MM || span.maxMm > wanted.maxMm + ROUNDING_MM;
  return isMeasured || !isBeyond ? [] : [{ code: 'within-tolerance', params: { toleranceMm } }];
}

/** Thinnest to thickest of these places; absent where nothing is known, or there are none. */
export function spanOf(places: readonly HidePlace[]): ThicknessRange | undefined {
  let minMm = Infinity;
  let maxMm = -Infinity;
  for (const { thickness } of places) {
    if (thickness === undefined) continue;
    minMm = Math.min(minMm, thickness[0]);
    maxMm = Math.max(maxMm, thickness[1]);
  }
  return minMm > maxMm ? undefined : { minMm, maxMm };
}
