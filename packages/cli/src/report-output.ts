import { drawReport, writePdf, writeSvg } from '@hidebound/render';
import type { Drawing, FontBook, PageName, Report } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import type { OptionValues } from './command-context.js';
import { textOption } from './command-context.js';
import { nameOneOf, refuseExtension } from './io/output-names.js';
import type { FileToWrite } from './io/write-safely.js';

/** Refuses names that belong to the other format, before any long work. Fails with a CliError `bad-use`. */
export function refuseReportNames(options: OptionValues): void {
  refuseExtension('--pdf', textOption(options, 'pdf'), '.svg', '.pdf');
  refuseExtension('--page-svg', textOption(options, 'pageSvg'), '.pdf', '.svg');
}

/**
 * The pages of a report, or of several one after the other, as the files that were asked for by `--pdf` and
 * `--page-svg`; none where none was.
 */
export async function reportFiles(
  asked: Report | readonly Report[],
  options: OptionValues,
  more: { readonly onOnePage?: boolean } = {},
): Promise<FileToWrite[]> {
  const pdf = textOption(options, 'pdf');
  const pageSvg = textOption(options, 'pageSvg');
  if (pdf === undefined && pageSvg === undefined) return [];
  const fonts = loadFontBook();
  const page = (textOption(options, 'page') ?? 'A4') as PageName;
  const reports = [asked].flat();
  const pages = reports.flatMap((report) => drawReport(report, { page, fonts, ...more }));
  const title = reports.map((report) => `${report.title}: ${report.subtitle}`)[0] ?? '';
  return pageFiles(pages, title, fonts, options);
}

/** Pages as the files that were asked for by `--pdf` and `--page-svg`. */
export async function pageFiles(
  pages: readonly Drawing[],
  title: string,
  fonts: FontBook,
  options: OptionValues,
): Promise<FileToWrite[]> {
  const pdf = textOption(options, 'pdf');
  const pageSvg = textOption(options, 'pageSvg');
  const names = pages.map((_, index) => String(index + 1));
  return [
    ...(pdf === undefined ? [] : [{ path: pdf, content: await writePdf(pages, { fonts, title }) }]),
    ...(pageSvg === undefined
      ? []
      : pages.map((drawing, index) => ({
          path: nameOneOf(pageSvg, names, index),
          content: writeSvg(drawing),
        }))),
  ];
}
