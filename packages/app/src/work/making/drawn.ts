import { drawReport } from '@hidebound/render';
import type { Drawing, FontBook, PageName, Report } from '@hidebound/render';
import type { TrialInput } from '@hidebound/leather';
import type { LostPhoto, MadeFile } from '../make-tasks.js';
import type { Told } from '../../words/told.js';

/** A sheet as drawings, before it is written in any format. */
export interface Drawn {
  /** Of the PDF file. */
  readonly title: string;
  readonly pages: readonly Drawing[];
  readonly findings: readonly Told[];
  readonly lostPhotos?: readonly LostPhoto[];
  readonly reports?: readonly Report[];
  readonly customers?: readonly string[];
  readonly cutApart?: number;
  readonly trials?: readonly TrialInput[];
  /** Files that are not pages: for a spreadsheet, for machines. */
  readonly files?: () => readonly MadeFile[];
}

/** Pages of reports, one after the other; the file bears the first one's name. */
export function drawnReports(
  reports: readonly Report[],
  findings: readonly Told[],
  { page, fonts }: { readonly page: PageName; readonly fonts: FontBook },
): Drawn {
  return {
    title: reports.map((report) => `${report.title}: ${report.subtitle}`)[0] ?? '',
    pages: reports.flatMap((report) => drawReport(report, { page, fonts })),
    reports,
    findings,
  };
}
