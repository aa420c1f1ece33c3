import type {
  CutChoice,
  CutFileOptions,
  LeadInKind,
  ReferencePaper,
  TrialInput,
  TrialRounds,
} from '@hidebound/leather';
import type { DxfVersion, PageName, Report, SeenFrom } from '@hidebound/render';
import type { JobFile } from '../job/job.js';
import type { Told } from '../words/told.js';

/** What can be made, each a sheet of its own. */
export const SHEET_NAMES = [
  'suit',
  'buying',
  'reference',
  'preparing',
  'templates',
  'list',
  'cutting',
  'settingOut',
  'cutFiles',
  'cost',
  'quote',
] as const;
export type SheetName = (typeof SHEET_NAMES)[number];

/** The files of a job that a sheet is made from, and which order and layout it is about. */
export interface MakeJob {
  readonly files: ReadonlyMap<string, JobFile>;
  readonly order: string | undefined;
  readonly layout: string | undefined;
}

export type TemplateKind = 'pieces' | 'hide' | 'rough cuts';

export interface TemplateChoice {
  readonly kind: TemplateKind;
  /** The id of the hide, where the kind is one; absent: the first. */
  readonly hide?: string;
  /** Keys of `pieceKey`; absent: all of them. */
  readonly pieces?: readonly string[];
  /** A paper's name, or "roll". */
  readonly paper: string;
  readonly rollMm: number;
  readonly overlapMm: number;
  readonly marginMm: number;
}

export interface CutChoices {
  readonly format: 'dxf' | 'svg';
  readonly version: DxfVersion;
  readonly choice: CutChoice;
  /** Absent: as the order's cutting method says. */
  readonly kerfMm?: number;
  readonly leadInMm: number;
  readonly leadInKind: LeadInKind;
  readonly bridges: number;
  readonly bridgeMm: number;
  readonly overcutMm: number;
  readonly marks: boolean;
  readonly frame: boolean;
  readonly labels: boolean;
}

/** All that a person may choose; each sheet heeds what is about it. */
export interface MakeChoices {
  readonly page: PageName;
  readonly side: SeenFrom;
  readonly photo: boolean;
  readonly template: TemplateChoice;
  readonly cut: CutChoices;
  /** When work begins, "2026-03-02 08:00"; empty: hours are only counted. */
  readonly start: string;
  /** When hands work, minutes of the day; absent: day and night. */
  readonly hours?: { readonly fromMin: number; readonly toMin: number };
  /** Whom a quote is for; absent: everybody in the order. */
  readonly customer?: string;
  /** Numbers of reference sheets, "1-4". */
  readonly sheets: string;
  readonly referencePaper: ReferencePaper;
}

export interface MakeWish {
  readonly sheet: SheetName;
  readonly job: MakeJob;
  readonly choices: MakeChoices;
  /** What trial layouts gave so far, for the buying page. */
  readonly rounds?: TrialRounds;
  readonly wasStopped?: boolean;
}

export interface MadePage {
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A file that can be saved. */
export interface MadeFile {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** A hide's photo that is not under its sheet: there is none in the job, or it can't be read as a picture. */
export interface LostPhoto {
  readonly hide: string;
  readonly file: string;
  readonly why: 'missing' | 'unreadable';
}

export interface MadeSheet {
  readonly pages: readonly MadePage[];
  /** The same in words, where the sheet is one of words. */
  readonly reports: readonly Report[];
  /** What a person has to know, gravest first. */
  readonly findings: readonly Told[];
  /** Photos that should lie under the sheet, and don't. */
  readonly lostPhotos: readonly LostPhoto[];
  /** Whose name a quote may bear, hides and pieces to choose among. */
  readonly customers: readonly string[];
  /** Pieces or blocks that lie on no page as a whole. */
  readonly cutApart: number;
  /** How often hides of chance may be tried, for the buying page. */
  readonly trials: readonly TrialInput[];
}

/** What the bench of sheets does. */
export type MakeTasks = {
  /** The pages of a sheet, to be looked at. */
  draw: { input: MakeWish; output: MadeSheet };
  /** The sheet as files: one PDF; for machines a file for each hide. */
  save: { input: MakeWish & { readonly as: 'pdf' | 'csv' | 'cut' }; output: readonly MadeFile[] };
};

/** Names a piece within all articles. */
export function pieceKey({ article, piece }: { readonly article: string; readonly piece: string }): string {
  return `${article}/${piece}`;
}

/** The choices for a cut file as the package takes them. */
export function cutOptionsOf(
  { cut, side }: Pick<MakeChoices, 'cut' | 'side'>,
  orderKerfMm: number,
): CutFileOptions {
  return {
    choice: cut.choice,
    kerfMm: cut.kerfMm ?? orderKerfMm,
    overcutMm: cut.overcutMm,
    marks: cut.marks,
    frame: cut.frame,
    labels: cut.labels,
    side,
    ...(cut.leadInMm > 0 ? { leadIn: { kind: cut.leadInKind, lengthMm: cut.leadInMm } } : {}),
    ...(cut.bridges > 0 ? { bridges: { count: cut.bridges, widthMm: cut.bridgeMm } } : {}),
  };
}
