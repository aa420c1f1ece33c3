import type { CopyState, FoundFlaw, Hide, Layout, NamedHide, SettingOut } from '@hidebound/leather';
import type { JobFile } from '../job/job.js';
import type { OrderCard } from './benching/cards.js';
import type { FitsAsked, StockFit } from './benching/fits.js';
import type { StockSeen } from './benching/stock.js';

export interface LayoutOnHides {
  readonly layout: Layout;
  /** Under the names that the layout gives them. */
  readonly hides: readonly NamedHide[];
}

/** A piece that a flaw that was just found lies under. */
export interface LiftedPiece {
  readonly piece: string;
  readonly number: string;
  /** It was cut already and stays so; else it was taken up. */
  readonly isCut: boolean;
}

/** What the bench has done beside it, so that nobody waits at the table. */
export type BenchTasks = {
  /** One piece becomes cut, spoiled, or is still to be cut after all. */
  tick: {
    input: LayoutOnHides & { readonly number: string; readonly to: CopyState };
    output: { readonly layout: Layout };
  };
  /** A flaw that was found while cutting: pieces that can't be cut there any more are taken up. */
  flaw: {
    input: LayoutOnHides & { readonly hide: string; readonly flaw: FoundFlaw };
    output: { readonly layout: Layout; readonly hide: Hide; readonly lifted: readonly LiftedPiece[] };
  };
  /** Where each piece of one hide goes with a rule and a square, cut ones too. */
  setOut: { input: { readonly layout: Layout; readonly hide: Hide }; output: SettingOut };
  /** Prices, leather and stock for the articles of an order, or for one set of an article file. */
  card: { input: { readonly path: string; readonly files: ReadonlyMap<string, JobFile> }; output: OrderCard };
  /** What a piece of an order or an article can be cut from: each hide of the job that is not cut, tried by itself. */
  fits: { input: FitsAsked; output: readonly StockFit[] };
  stock: { input: { readonly files: ReadonlyMap<string, JobFile> }; output: StockSeen };
  /** What becomes of the job's files; days as ISO 8601. */
  take: {
    input: {
      readonly files: ReadonlyMap<string, JobFile>;
      readonly layoutPath: string;
      readonly date: string;
      /** Where the offcuts are put; absent: where their hide lay. */
      readonly place?: string;
    };
    output: readonly (readonly [string, JobFile | undefined])[];
  };
  putBack: {
    input: { readonly files: ReadonlyMap<string, JobFile>; readonly date: string };
    output: readonly (readonly [string, JobFile | undefined])[];
  };
};
