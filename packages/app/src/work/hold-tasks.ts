import type { Layout, NamedHide, PieceCopy, PiecePlacement } from '@hidebound/leather';
import type { OrderRead } from './desk-tasks.js';
import type { Broken, Verdict } from './laying/found.js';
import type { RuleName } from '@hidebound/geometry';

export interface Inspection {
  readonly verdict: Verdict;
  /** The order says something else now than when this was laid. */
  readonly isOlderOrder: boolean;
  /** Names of hides that have changed since. */
  readonly changedHides: readonly string[];
}

/** Where a copy is held: on a hide, mm and degrees clockwise. */
export type HeldAt = Pick<PiecePlacement, 'hide' | 'x' | 'y' | 'rotationDeg'>;

export interface Settled {
  readonly at: HeldAt;
  /** It came into contact. */
  readonly isSnug: boolean;
  /** Empty: it may lie there. */
  readonly broken: readonly Broken[];
}

/** Moving pieces by hand: all but `inspect` is about the layout that was laid open last. */
export type HoldTasks = {
  /** Judges a layout as a whole. */
  inspect: {
    input: {
      readonly layout: Layout;
      readonly hides: readonly NamedHide[];
      /** Absent where the order can't be read. */
      readonly read: Pick<OrderRead, 'order' | 'pieces'> | undefined;
    };
    output: Inspection;
  };
  open: { input: { readonly layout: Layout; readonly hides: readonly NamedHide[] }; output: undefined };
  /** Takes a copy in hand: one that lies, or one that does not yet. */
  take: { input: { readonly copy: PieceCopy }; output: { readonly isTaken: boolean } };
  judge: { input: { readonly at: HeldAt }; output: { readonly broken: readonly Broken[] } };
  /** Where it comes to lie when it is let go; `snugMm` is how far it may slide into contact, 0 for not at all. */
  settle: { input: { readonly at: HeldAt; readonly snugMm: number }; output: Settled };
  /** The layout with the copy in hand laid there. */
  put: {
    input: { readonly at: HeldAt; readonly accepted: readonly RuleName[] };
    output: { readonly layout: Layout };
  };
  /** The layout without a copy. */
  lift: { input: { readonly copy: PieceCopy }; output: { readonly layout: Layout } };
};
