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

type Placing = 'thin' | 'right' | 'thick' | 'too deep';

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
  const enough = (some: readonly HidePlace[]): boolean => some.length * asked.cellMm2 >= asked.copyMm2;

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
      ...statedRemark(span, wanted, asked, toleranceMm),
    ];
    const skivedFromMm = skivedWhereStated(span, wanted, asked, toleranceMm);
    const kind = skivedFromMm === undefined ? 'fits' : 'skive';
    return {
      ...base,
      kind,
      rightShare: right.length / places.length,
      ...(skivedFromMm === undefined ? {} : { skivedFromMm }),
      remarks,
    };
  }
  return doubled(asked, wanted, toleranceMm) ?? no(asked, wanted, span, placing);
}

/** What is only stated for the whole hide counts by its middle. */
function placingOf(
  { thickness }: HidePlace,
  { minMm, maxMm }: ThicknessRange,
  toleranceMm: number,
  workshop: Pick<Workshop, 'figures'>,
): Placing {
  const [lo, hi] = thickness!;
  const middle = (lo + hi) / 2;
  if (middle < minMm - toleranceMm) return 'thin';
  if (middle <= maxMm + toleranceMm) return 'right';
  return canSkive(hi, maxMm, workshop) ? 'thick' : 'too deep';
}

/** Half the thickness all over and no thinner than leather can be skived, unless the workshop says otherwise. */
function canSkive(fromMm: number, toMm: number, workshop: Pick<Workshop, 'figures'>): boolean {
  const share = 1 - figureOf(workshop, SUIT.thinning).value.max / 100;
  return toMm >= fromMm * share - ROUNDING_MM && toMm >= figureOf(workshop, SUIT.thinnest).value.min;
}

/** A hide without readings, right by its middle: where a piece is skived that is too thick, its thick places are. */
function skivedWhereStated(
  span: ThicknessRange,
  wanted: ThicknessRange,
  { isMeasured, isSkived, workshop }: ThicknessAsked,
  toleranceMm: number,
): number | undefined {
  const isSo = !isMeasured && isSkived && span.maxMm > wanted.maxMm + toleranceMm;
  return isSo && canSkive(span.maxMm, wanted.maxMm, workshop) ? span.maxMm : undefined;
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
      const together = ((lo + hi) / 2) * layers;
      return together >= wanted.minMm - toleranceMm && together <= wanted.maxMm + toleranceMm;
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

/** A layout is stricter than the trade: it forgives nothing of a stated thickness, and wants readings. */
function statedRemark(
  span: ThicknessRange,
  wanted: ThicknessRange,
  { isMeasured, isSkived }: ThicknessAsked,
  toleranceMm: number,
): SuitRemark[] {
  const below = wanted.minMm - span.minMm;
  const above = isSkived ? 0 : span.maxMm - wanted.maxMm;
  const off = Math.max(below, above);
  if (isMeasured || off <= ROUNDING_MM) return [];
  if (off <= toleranceMm + ROUNDING_MM) return [{ code: 'within-tolerance', params: { toleranceMm } }];
  const params = {
    minMm: span.minMm,
    maxMm: span.maxMm,
    wantedMinMm: wanted.minMm,
    wantedMaxMm: wanted.maxMm,
  };
  return [{ code: 'measure-places', params }];
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
