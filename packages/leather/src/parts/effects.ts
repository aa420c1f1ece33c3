import { FLAW_KINDS, ZONE_KINDS } from '../model/hide.js';
import type { Flaw, FlawKind, Zone, ZoneKind } from '../model/hide.js';
import type { MarkMeanings } from '../model/layout.js';
import type { Effect, Looks } from '../model/marks.js';
import type { SourceMark } from '../model/workshop.js';

/** A cut that goes this far through, or further, leaves nothing to be used. */
export const DEEP_FROM = 1 / 3;

/** What a kind of mark does to the leather, and where that comes from. */
export interface KindEffect<Kind> {
  readonly kind: Kind;
  readonly effect: Effect;
  readonly source: SourceMark;
}

const PRACTICE = 'common practice, no source';
const VOID: Effect = { looks: 'C', strength: 'weak', isVoid: true };

function marks(looks: Looks, strength: 'sound' | 'weak'): Effect {
  return { looks, strength, isVoid: false };
}

/**
 * The three plain choices are: never here (void), only where hidden (looks C), anywhere (looks A). B stands
 * for what is seen but tolerated on less visible faces.
 */
export const DEFAULT_FLAW_EFFECTS: readonly KindEffect<FlawKind>[] = [
  { kind: 'hole', effect: VOID, source: `${PRACTICE} (through the leather: blocked always)` },
  { kind: 'cut', effect: marks('C', 'weak'), source: `${PRACTICE} (blocked for load and where seen)` },
  { kind: 'brand', effect: marks('C', 'sound'), source: `${PRACTICE} (hidden if sound)` },
  { kind: 'scar', effect: marks('B', 'sound'), source: `${PRACTICE} (healed; takes dye differently)` },
  { kind: 'bite', effect: marks('B', 'sound'), source: `${PRACTICE} (healed: hidden or small)` },
  { kind: 'vein', effect: marks('B', 'sound'), source: `${PRACTICE} (seen on light colours)` },
  { kind: 'wrinkle', effect: marks('B', 'sound'), source: `${PRACTICE} (not for flat smooth faces)` },
  { kind: 'loose grain', effect: marks('C', 'weak'), source: `${PRACTICE} (no folds, no straps; lining)` },
  { kind: 'stain', effect: marks('C', 'sound'), source: `${PRACTICE} (avoided where seen)` },
];

export const DEFAULT_ZONE_EFFECTS: readonly KindEffect<ZoneKind>[] = [
  {
    kind: 'bend',
    effect: marks('A', 'sound'),
    source: `${PRACTICE}; F. Y. Golding 1902 (tightest, firmest)`,
  },
  {
    kind: 'shoulder',
    effect: marks('A', 'sound'),
    source: `${PRACTICE}; US supplier (strength equal to bend)`,
  },
  {
    kind: 'belly',
    effect: marks('A', 'weak'),
    source: `${PRACTICE}; F. Y. Golding 1902 (soft, stretches most)`,
  },
  { kind: 'flank', effect: marks('B', 'weak'), source: `${PRACTICE}; F. Y. Golding 1902 (loosest)` },
  {
    kind: 'neck',
    effect: marks('B', 'sound'),
    source: `${PRACTICE}; F. Y. Golding 1902 (stout, veiny, uneven)`,
  },
  {
    kind: 'shank',
    effect: marks('B', 'sound'),
    source: `${PRACTICE}; W. H. Dooley 1912 (light, fairly firm)`,
  },
];

export type EffectDefaults = Pick<MarkMeanings, 'flawDefaults' | 'zoneDefaults'>;

/**
 * What a flaw or zone does to the places under it: fields given on the mark win, the rest comes from its kind, from
 * the workshop's row if there is one. A cut a third through or deeper is void unless the mark says otherwise. A
 * mark with neither kind nor effect is void: nothing is known of it.
 */
export function effectOf(mark: Flaw | Zone, workshop?: EffectDefaults): Effect {
  const base = 'shape' in mark ? flawKindEffect(mark, workshop) : zoneKindEffect(mark.kind, workshop);
  return { ...base, ...mark.effect };
}

/** What every kind of mark means: the given rows, and the built-in ones where there is none. */
export function markMeanings(defaults: EffectDefaults | undefined, avoidCandidates: boolean): MarkMeanings {
  return {
    flawDefaults: FLAW_KINDS.map((kind) => ({ kind, effect: flawRow(kind, defaults) })),
    zoneDefaults: ZONE_KINDS.map((kind) => ({ kind, effect: zoneKindEffect(kind, defaults) })),
    avoidCandidates,
  };
}

/** What a zone of this kind is worth. */
export function zoneKindEffect(kind: ZoneKind, workshop?: EffectDefaults): Effect {
  const row =
    workshop?.zoneDefaults.find((line) => line.kind === kind) ??
    DEFAULT_ZONE_EFFECTS.find((line) => line.kind === kind);
  return row?.effect ?? VOID;
}

function flawRow(kind: FlawKind, workshop?: EffectDefaults): Effect {
  const row =
    workshop?.flawDefaults.find((line) => line.kind === kind) ??
    DEFAULT_FLAW_EFFECTS.find((line) => line.kind === kind);
  return row?.effect ?? VOID;
}

function flawKindEffect(flaw: Flaw, workshop?: EffectDefaults): Effect {
  const { kind } = flaw;
  if (kind === undefined) return VOID;
  const effect = flawRow(kind, workshop);
  const isDeepCut = kind === 'cut' && flaw.depth !== undefined && flaw.depth >= DEEP_FROM;
  return isDeepCut ? { ...effect, isVoid: true } : effect;
}

const GRADES: Readonly<Record<Looks, number>> = { A: 0, B: 1, C: 2 };

/** Looks as the grade that nesting counts with: A 0, B 1, C 2. */
export function gradeOfLooks(looks: Looks): number {
  return GRADES[looks];
}
