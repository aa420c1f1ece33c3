import type { Point } from '@hidebound/geometry';
import type { ZoneKind } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { cell } from '../../../app/cell.js';
import type { Cell } from '../../../app/cell.js';
import type { PlainEffect } from '../../../drawing/hide-layer.js';
import type { EdgeName } from './logic/edges.js';

export const TOOLS = ['flaws', 'edge', 'back', 'zones', 'thickness'] as const;
export type Tool = (typeof TOOLS)[number];

export const FLAW_WAYS = ['spot', 'stroke', 'around'] as const;
export const EDGE_WAYS = ['corners', 'push', 'redraw', 'opening'] as const;
export const BACK_WAYS = ['backbone', 'tightness'] as const;
export const ZONE_WAYS = ['around', 'brush', 'erase'] as const;

/** The mark in hand. */
export type Chosen =
  /** One that was just drawn is told about on the card, but the next stroke may start on it. */
  | { readonly kind: 'flaw'; readonly id: string; readonly isFresh: boolean }
  | { readonly kind: 'zone'; readonly id: string }
  | { readonly kind: 'tightness'; readonly index: number }
  | { readonly kind: 'reading'; readonly index: number }
  | { readonly kind: 'corner'; readonly edge: EdgeName; readonly corner: number }
  | { readonly kind: 'opening'; readonly edge: number }
  /** A place that waits for its thickness. */
  | { readonly kind: 'place'; readonly at: Point };

/** The tools of this bench as they lie: what is in hand, and how each was last set. */
export interface MarksTable {
  readonly tool: Tool | undefined;
  readonly chosen: Chosen | undefined;
  readonly flaw: {
    readonly way: (typeof FLAW_WAYS)[number];
    readonly effect: PlainEffect;
    readonly radiusMm: number;
    readonly widthMm: number;
  };
  readonly edge: { readonly way: (typeof EDGE_WAYS)[number]; readonly roundMm: number };
  readonly back: { readonly way: (typeof BACK_WAYS)[number] };
  readonly zone: {
    readonly kind: ZoneKind;
    readonly way: (typeof ZONE_WAYS)[number];
    readonly brushMm: number;
  };
  /** While what the photo seems to show is looked through: the one in view, and those that wait. */
  readonly looking:
    { readonly id: string; readonly later: readonly string[]; readonly effect: PlainEffect } | undefined;
  /** Ids of hides whose doubts were looked at in this visit, if not all of them answered. */
  readonly lookedAt: readonly string[];
}

/** Sizes at first: a healed bite, a barbed-wire scratch, a fist, a broad brush. */
const FIRST_TABLE: MarksTable = {
  tool: undefined,
  chosen: undefined,
  flaw: { way: 'spot', effect: 'never', radiusMm: 8, widthMm: 6 },
  edge: { way: 'corners', roundMm: 60 },
  back: { way: 'backbone' },
  zone: { kind: 'belly', way: 'around', brushMm: 120 },
  looking: undefined,
  lookedAt: [],
};

const tables = new WeakMap<App, Cell<MarksTable>>();

/** The table of an app; the panels are drawn anew with each change. */
export function marksTable(app: App): Cell<MarksTable> {
  const known = tables.get(app);
  if (known !== undefined) return known;
  const made = cell(FIRST_TABLE);
  made.watch(() => app.redraw());
  tables.set(app, made);
  return made;
}

export function choose(app: App, chosen: Chosen | undefined): void {
  marksTable(app).update((table) => ({ ...table, chosen }));
}

/** Takes a tool in hand, or puts it away. */
export function takeTool(app: App, tool: Tool | undefined): void {
  marksTable(app).update((table) => ({ ...table, tool, chosen: undefined, looking: undefined }));
}

/** Sets one of the tools: its way, its size. */
export function setTool<K extends 'flaw' | 'edge' | 'back' | 'zone'>(
  app: App,
  name: K,
  setting: Partial<MarksTable[K]>,
): void {
  marksTable(app).update((table) => ({ ...table, [name]: { ...table[name], ...setting } }));
}
