import type { Drawing } from '../drawing/model.js';

/**
 * What a command tells, in words and figures: the terminal prints it as text, `drawReport` sets it on pages. It holds no
 * figure that is not in the command's data.
 */
export interface Report {
  readonly title: string;
  /** Below the title: "Bicycle goods, week 10, version 3, 2026-03-02". */
  readonly subtitle: string;
  /** A card to hang up: its letters may get smaller so that it fits one page. */
  readonly onOnePage?: boolean;
  readonly blocks: readonly ReportBlock[];
}

export type ReportBlock =
  /** The head of what follows, up to the next one. */
  | { readonly kind: 'section'; readonly title: string }
  | { readonly kind: 'text'; readonly text: string; readonly tone: TextTone }
  /** Names on the left, figures or words on the right. */
  | { readonly kind: 'facts'; readonly rows: readonly ReportFact[] }
  | ReportTable
  | ReportChecklist
  | ReportBars
  /** A chart or a picture, no wider than the page's text. */
  | { readonly kind: 'picture'; readonly drawing: Drawing; readonly caption: string };

/** The one answer, plain words, a remark in small ink, or a caution in a frame. */
export type TextTone = 'answer' | 'plain' | 'soft' | 'caution';

export interface ReportFact {
  readonly name: string;
  readonly value: string;
}

export interface ReportTable {
  readonly kind: 'table';
  readonly columns: readonly ReportColumn[];
  readonly rows: readonly (readonly string[])[];
  /** Set off by a rule: the sum. */
  readonly totals?: readonly string[];
}

export interface ReportColumn {
  readonly head: string;
  /** Figures stand at the right. */
  readonly align: 'left' | 'right';
}

/** Bars that start at one line, so that their lengths can be compared: where money or time goes. */
export interface ReportBars {
  readonly kind: 'bars';
  readonly rows: readonly ReportBar[];
}

export interface ReportBar {
  readonly name: string;
  /** What its length stands for, 0 or more; all rows in one unit. */
  readonly value: number;
  /** The value with its unit, as it is told. */
  readonly text: string;
}

/** Steps with a box to tick. */
export interface ReportChecklist {
  readonly kind: 'checklist';
  readonly items: readonly ReportItem[];
}

export interface ReportItem {
  readonly text: string;
  /** What else to know, in small ink below it. */
  readonly detail?: string;
  /** Set at the right: how long, how much, by when. */
  readonly aside?: string;
}
