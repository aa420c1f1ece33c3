import { DEFAULT_WORKSHOP, planFindings, preparePlan, refuseSpentHides } from '@hidebound/leather';
import type { Diagnostic, Layout, NamedHide, PreparePlan } from '@hidebound/leather';
import { hasNothingToPrepare, prepareReport, workshopCard } from '@hidebound/render';
import type { PrepareReportInput, Report } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { CliError } from '../cli-error.js';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines, sentenceOf } from '../finding-words.js';
import { besideFile, loadLayout, loadLayoutHides } from '../io/load-files.js';
import { loadWorkshop } from '../io/load-workshop.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import type { FileToWrite } from '../io/write-safely.js';
import { planData } from '../prepare/plan-data.js';
import { layoutWithSwatches, preparedFiles } from '../prepare/prepare-files.js';
import { askedTimes } from '../prepare/time-options.js';
import type { AskedTimes } from '../prepare/time-options.js';
import { reportLines } from '../report-lines.js';
import { refuseReportNames, reportFiles } from '../report-output.js';

/** Plans what is done to a layout’s leather before its pieces are cut. */
export async function prepareCommand(
  [path]: readonly string[],
  options: OptionValues,
): Promise<CommandResult> {
  refuseReportNames(options);
  const times = askedTimes(options);
  const layout = loadLayout(path!);
  const named = loadLayoutHides(layout, path!);
  const inUse = loadWorkshop(textOption(options, 'workshop'), path!);
  const workshop = inUse?.workshop ?? DEFAULT_WORKSHOP;
  refuseSpentHides(layout, named, path!);
  const plan = planWithin(times, () => preparePlan(layout, named, workshop, times));
  const findings = planFindings(plan, path!);
  const input: PrepareReportInput = {
    plan,
    layout,
    workshop,
    ...times,
    hasSwatches: textOption(options, 'out') !== undefined,
    warnings: findings
      .filter(({ severity }) => severity !== 'note')
      .map((each) => sentenceOf(withoutFile(each))),
  };
  const reports = [prepareReport(input), ...plan.jobs.map((job) => workshopCard(job, input))];
  const files = await filesFor(layout, named, path!, input, options);
  const written = files.map((file) => file.path);
  refuseOverwriting(written, [path!, ...layout.hides.map(({ file }) => besideFile(path!, file))]);
  writeFilesSafely(files);
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      ...findingLines(findings),
      ...(findings.length === 0 ? [] : ['']),
      ...screenLines(reports),
      ...writtenLines(files, options),
    ],
    data: {
      file: path,
      ...(inUse === undefined ? {} : { workshop: inUse.file }),
      nothingToDo: hasNothingToPrepare(plan),
      ...planData(plan, times),
      written,
    },
    diagnostics: findings,
  };
}

function screenLines(reports: readonly Report[]): string[] {
  return reports.flatMap((report, i) => [...(i === 0 ? [] : ['', '']), ...reportLines(report)]);
}

/** Fails with a CliError `bad-use` where a step does not fit between morning and evening. */
function planWithin({ hours }: AskedTimes, plan: () => PreparePlan): PreparePlan {
  try {
    return plan();
  } catch (error) {
    if (!(error instanceof RangeError) || hours === undefined) throw error;
    throw new CliError(
      'bad-use',
      'A step of this work takes longer than the working hours of a day; give longer --hours.',
    );
  }
}

/** The page names its layout at its top. */
function withoutFile({ place, ...finding }: Diagnostic): Diagnostic {
  return place?.at === undefined ? finding : { ...finding, place: { at: place.at } };
}

async function filesFor(
  layout: Layout,
  named: readonly NamedHide[],
  path: string,
  input: PrepareReportInput,
  options: OptionValues,
): Promise<FileToWrite[]> {
  const out = textOption(options, 'out');
  const folder = textOption(options, 'hides');
  const isPaged = textOption(options, 'pdf') !== undefined || textOption(options, 'pageSvg') !== undefined;
  const drawn = isPaged ? { ...input, fonts: loadFontBook() } : input;
  const { jobs } = input.plan;
  return [
    ...(await reportFiles([prepareReport(drawn), ...jobs.map((job) => workshopCard(job, drawn))], options)),
    ...(out === undefined ? [] : [layoutWithSwatches(layout, named, input.plan, path, out)]),
    ...(folder === undefined ? [] : preparedFiles(layout, named, folder)),
  ];
}

function writtenLines(files: readonly FileToWrite[], options: OptionValues): string[] {
  const folder = textOption(options, 'hides');
  const out = textOption(options, 'out');
  const pages = files.filter(
    ({ path }) =>
      path === textOption(options, 'pdf') || (options['pageSvg'] !== undefined && isPage(path, folder)),
  );
  const hides = files.filter(({ path }) => path.endsWith('.hide.json'));
  const lines = [
    ...pages.map(({ path }) => `The plan and its cards are in ${path}`),
    ...(out === undefined ? [] : [`The layout with its test pieces is in ${out}`]),
    ...(folder === undefined
      ? []
      : [
          hides.length === 0
            ? 'There is no rough cut to write as a hide of its own.'
            : `${hides.length} prepared ${hides.length === 1 ? 'block is' : 'blocks are'} in ${folder}, each with its order`,
        ]),
  ];
  return lines.length === 0 ? [] : ['', ...lines];
}

function isPage(path: string, folder: string | undefined): boolean {
  return path.endsWith('.svg') && (folder === undefined || !path.startsWith(folder));
}
