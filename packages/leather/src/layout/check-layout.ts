import { checkAnswer } from '@hidebound/geometry/check';
import type { CopyRef, Point, RuleName, Violation } from '@hidebound/geometry';
import { hashHide } from '../hash/index.js';
import type { Diagnostic } from '../model/diagnostic.js';
import type { Hide } from '../model/hide.js';
import type { Layout, PieceCopy } from '../model/layout.js';
import type { HideShelf } from '../model/stock.js';
import { pieceCopyOf } from '../order/item-id.js';
import type { ItemMeaning } from '../order/item-id.js';
import { SPENT_RULES, nestProblemFor } from '../order/problem.js';
import type { NamedHide, SheetOptions } from '../order/sheets.js';
import { answerOfLayout } from './answer-of.js';
import { findMirroredFaults } from './mirrored-faults.js';
import { provePieces } from './prove-pieces.js';
import { proveYield } from './prove-yield.js';
import { leatherErrorAs } from '../words/refuse.js';

/** One broken rule, in the layout's words. */
export interface LayoutViolation {
  readonly rule: RuleName;
  /** The offending copy; absent for a rule about a whole set, lane or rough cut. */
  readonly at?: PieceCopy;
  /** The other party: another copy, or the id of a flaw, zone, lane, rough cut or swatch. */
  readonly other?: PieceCopy | string;
  /** `face` where only the face is at fault. */
  readonly part?: string;
  readonly hide?: string;
  /** On the hide, in mm. */
  readonly place?: Point;
  /** What was measured and what was required, in mm or degrees. */
  readonly measured?: number;
  readonly required?: number;
  readonly accepted: boolean;
}

export interface LayoutCheck {
  readonly violations: readonly LayoutViolation[];
  /** Errors among them mean that nothing is proven: a hide that changed, a piece that is not what its hash says. */
  readonly diagnostics: readonly Diagnostic[];
  /** No error, and no broken rule that was not accepted by hand. */
  readonly proven: boolean;
}

export interface CheckLayoutOptions extends SheetOptions {
  /** The layout that was to be kept: its locked and cut placements must lie where they lay. */
  readonly keep?: Pick<Layout, 'placements'>;
}

/**
 * Proves a layout from its own content and the hides at hand: hides by their hash, pieces by theirs, region, face and
 * arrow anew from the curves, every rule of the order by the exact check (2 µm and 0.002 degrees are forgiven), and
 * the yield figures. Lanes, rough cuts and swatches are checked too.
 */
export function checkLayout(
  layout: Layout,
  hides: HideShelf | readonly NamedHide[],
  given: CheckLayoutOptions = {},
): LayoutCheck {
  const options = { ...given, ...meaningsOf(layout) };
  const shelf = shelfOf(hides);
  const pieceFaults = provePieces(layout);
  const hideFaults = proveHides(layout, shelf);
  const isComplete = ![...pieceFaults, ...hideFaults].some(({ code }) => MISSING.includes(code));
  if (!isComplete) return result([], [...hideFaults, ...pieceFaults]);
  const named = layout.hides.map(({ id, file }): NamedHide => ({ file, hide: shelf.get(id)! }));
  const { violations, diagnostics } = checkRules(layout, named, options);
  const yieldFaults = proveYield(layout, named, options);
  return result(violations, [...hideFaults, ...pieceFaults, ...diagnostics, ...yieldFaults]);
}

/** A layout's own word on what marks mean goes before the caller's. */
function meaningsOf({ marks }: Layout): SheetOptions {
  return marks === undefined ? {} : { workshop: marks, avoidCandidates: marks.avoidCandidates };
}

/** Findings without which no problem can be built. */
const MISSING: readonly string[] = [
  'layout-hide-missing',
  'layout-piece-missing',
  'layout-piece-twice',
  'layout-piece-broken',
];

function checkRules(
  layout: Layout,
  hides: readonly NamedHide[],
  options: CheckLayoutOptions,
): { readonly violations: LayoutViolation[]; readonly diagnostics: readonly Diagnostic[] } {
  const { order, pieces, origin } = layout;
  const input = {
    order,
    pieces,
    hides,
    budget: { seed: origin.seed, streams: origin.streams },
    workshop: options.workshop,
    avoidCandidates: options.avoidCandidates,
  };
  const own = nestProblemFor({ ...input, keep: layout });
  const { problem, items, answer } = answerOfLayout(layout, own);
  const kept = options.keep === undefined ? undefined : nestProblemFor({ ...input, keep: options.keep });
  const keptFixed = (kept?.problem.fixed ?? []).filter(({ item }) => !item.startsWith('spoiled/'));
  const mirrored = findMirroredFaults(layout);
  const found = checkAnswer({ ...problem, fixed: [...keptFixed, ...problem.fixed] }, answer);
  return {
    violations: [
      ...mirrored,
      ...found
        .filter((one) => !isOfSpentLeather(one))
        .map(({ rule, at, other, part, sheet, place, measured, required, accepted }): LayoutViolation => {
          const copy = at === undefined ? undefined : pieceCopyOf(at, items);
          const party = partyOf(other ?? (copy === undefined ? at : undefined), items);
          return {
            rule,
            ...(copy === undefined ? {} : { at: copy }),
            ...(party === undefined ? {} : { other: party }),
            ...(part === undefined ? {} : { part }),
            ...(sheet === undefined ? {} : { hide: sheet }),
            ...(place === undefined ? {} : { place }),
            ...(measured === undefined ? {} : { measured }),
            ...(required === undefined ? {} : { required }),
            accepted,
          };
        }),
    ],
    diagnostics: own.diagnostics,
  };
}

/** What a spoiled copy lies on is no rule of the layout any more. */
function isOfSpentLeather({ rule, at }: Violation): boolean {
  return at !== undefined && at.item.startsWith('spoiled/') && SPENT_RULES.includes(rule);
}

function partyOf(
  other: CopyRef | string | undefined,
  items: ReadonlyMap<string, ItemMeaning>,
): PieceCopy | string | undefined {
  if (other === undefined || typeof other === 'string') return other;
  return pieceCopyOf(other, items) ?? other.item;
}

function proveHides(layout: Layout, shelf: HideShelf): Diagnostic[] {
  return layout.hides.flatMap(({ id, hash, file }) => {
    const hide = shelf.get(id);
    const say = (code: string): Diagnostic[] => [
      { code, severity: 'error', params: { hide: id, file }, place: { file } },
    ];
    if (hide === undefined) return say('layout-hide-missing');
    return hashHide(hide) === hash ? [] : say('layout-hide-changed');
  });
}

function shelfOf(hides: HideShelf | readonly NamedHide[]): HideShelf {
  if (!isList(hides)) return hides;
  const shelf = new Map<string, Hide>();
  for (const { file, hide } of hides) {
    if (shelf.has(hide.id)) {
      throw leatherErrorAs('duplicate', 'hide-given-twice', { hide: hide.id }, { file });
    }
    shelf.set(hide.id, hide);
  }
  return shelf;
}

function isList(hides: HideShelf | readonly NamedHide[]): hides is readonly NamedHide[] {
  return Array.isArray(hides);
}

function result(violations: readonly LayoutViolation[], diagnostics: readonly Diagnostic[]): LayoutCheck {
  const proven =
    violations.every(({ accepted }) => accepted) && diagnostics.every(({ severity }) => severity !== 'error');
  return { violations, diagnostics, proven };
}
