import {
  checkLayout,
  cuttingNumbers,
  layoutAgain,
  liftFlawed,
  movedCopies,
  pieceCopyKey,
  problemAgain,
  stageOf,
  tickLayout,
  withFigures,
  workshopOfLayout,
} from '@hidebound/leather';
import type {
  CuttingStage,
  Diagnostic,
  FlawedCopy,
  Layout,
  NamedHide,
  TickWish,
  TickedCopy,
} from '@hidebound/leather';
import { stagePicture, stageReport } from '@hidebound/render';
import type { Drawing } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import type { CommandContext, CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { countWords } from '../count-words.js';
import { stackWords } from '../describe-failure.js';
import { EXIT_STATUS } from '../exit-status.js';
import type { ExitStatus } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { besideFile, loadLayout, loadLayoutHides } from '../io/load-files.js';
import { ensureWritable, refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import { reportLines } from '../report-lines.js';
import { refuseReportNames, reportFiles } from '../report-output.js';
import { endedEarlyFinding, searchLayout } from '../search-layout.js';
import type { SearchOutcome } from '../search-layout.js';
import { coresFrom, originFrom, searchFrom } from '../search-options.js';
import { foundFlaws } from '../stages/found-flaws.js';
import type { HidesWithFlaws } from '../stages/found-flaws.js';
import { ensureFolder, hideFiles, layoutFiles, restFiles } from '../stages/tick-files.js';
import {
  checkFindings,
  flawedFindings,
  refuseOtherLeather,
  unlaidFindings,
} from '../stages/tick-findings.js';

/** Ticks pieces of a layout, tells of flaws that were found, lays the rest again, and tells what is left to cut. */
export async function tickCommand(
  [path]: readonly string[],
  options: OptionValues,
  context: CommandContext,
): Promise<CommandResult> {
  refuseReportNames(options);
  const given = loadLayout(path!);
  const named = loadLayoutHides(given, path!);
  refuseOtherLeather(given, named, path!);
  const { layout: ticked, ticked: ticks } = tickLayout(given, wishOf(options));
  const found = foundFlaws(given, named, options);
  const outPath = textOption(options, 'out') ?? path!;
  if (outPath !== path) ensureWritable(outPath, [path!, ...hidePaths(given, path!)]);
  const now = onTheseHides(ticked, named, found, ticks.length > 0);
  const again = await layAgain(now.layout, found.hides, options, context);
  const layout = again?.layout ?? now.layout;
  const stage = stageOf(
    layout,
    found.hides.map(({ hide }) => hide),
  );
  const outcome = { given, layout, stage, ticks, found, flawed: now.flawed, again, outPath, path: path! };
  const written = await writeAll(outcome, options);
  return tickResult(outcome, written);
}

function wishOf(options: OptionValues): TickWish {
  const list = (name: 'cut' | 'spoiled' | 'planned'): TickWish => {
    const text = textOption(options, name);
    return text === undefined ? {} : { [name]: text };
  };
  return {
    ...list('cut'),
    ...list('spoiled'),
    ...list('planned'),
    ...(options['all'] === true ? { allCut: true } : {}),
  };
}

function hidePaths(layout: Layout, path: string): string[] {
  return layout.hides.map(({ file }) => besideFile(path, file));
}

interface NowLayout {
  readonly layout: Layout;
  readonly flawed: readonly FlawedCopy[];
}

function onTheseHides(
  ticked: Layout,
  named: readonly NamedHide[],
  found: HidesWithFlaws,
  isTicked: boolean,
): NowLayout {
  if (found.changed.length > 0) return liftFlawed(ticked, named, found.hides);
  if (!isTicked) return { layout: ticked, flawed: [] };
  const hides = named.map(({ hide }) => hide);
  return { layout: withFigures(ticked, hides), flawed: [] };
}

interface LaidAgain {
  readonly layout: Layout;
  readonly search: SearchOutcome;
  /** Pieces that lie elsewhere than before, and pieces that bear another number. */
  readonly moved: number;
  readonly renumbered: number;
  readonly keep: Pick<Layout, 'placements'>;
}

async function layAgain(
  layout: Layout,
  hides: readonly NamedHide[],
  options: OptionValues,
  context: CommandContext,
): Promise<LaidAgain | undefined> {
  const anew = options['anew'] === true;
  if (!anew && (options['lay'] !== true || layout.unplaced.length === 0)) return undefined;
  const { budget, goal } = searchFrom(options);
  const input = { layout, hides, anew, budget };
  const problem = problemAgain(input);
  const search = await searchLayout(problem.problem, { goal, ...coresFrom(options) }, context);
  if (search.failure !== undefined && options['debug'] === true) context.err(stackWords(search.failure));
  const laid = layoutAgain(input, problem, search.answer, originFrom(budget, context.version));
  return {
    layout: laid,
    search,
    moved: movedCopies(layout, laid).length,
    renumbered: renumberedCount(layout, laid),
    keep: problem.keep,
  };
}

function renumberedCount(before: Layout, after: Layout): number {
  const was = cuttingNumbers(before);
  const is = cuttingNumbers(after);
  return after.placements.filter(
    (placement) =>
      placement.state === 'planned' && was.get(pieceCopyKey(placement)) !== is.get(pieceCopyKey(placement)),
  ).length;
}

interface TickOutcome {
  readonly given: Layout;
  readonly layout: Layout;
  readonly stage: CuttingStage;
  readonly ticks: readonly TickedCopy[];
  readonly found: HidesWithFlaws;
  readonly flawed: readonly FlawedCopy[];
  readonly again: LaidAgain | undefined;
  readonly path: string;
  readonly outPath: string;
}

interface Written {
  /** The layout was written. */
  readonly isChanged: boolean;
  readonly pages: readonly string[];
  readonly rest: readonly string[];
  readonly stale: readonly string[];
}

/** All files in one go: on a full disk every one stays as it was. */
async function writeAll(outcome: TickOutcome, options: OptionValues): Promise<Written> {
  const { given, layout, stage, found, path, outPath } = outcome;
  const isChanged =
    layout !== given && (outcome.ticks.length > 0 || found.flaws.length > 0 || outcome.again !== undefined);
  const folder = textOption(options, 'rest');
  const rest = folder === undefined ? { files: [], stale: [] } : restFiles(stage, folder);
  const wantsPages = ['pdf', 'pageSvg'].some((name) => textOption(options, name) !== undefined);
  const pages = wantsPages
    ? await reportFiles(stageReport({ layout, stage, pictures: picturesOf(outcome) }), options)
    : [];
  const read = [path, ...hidePaths(given, path)];
  refuseOverwriting(
    [...pages, ...rest.files].map((file) => file.path),
    read,
  );
  if (folder !== undefined && rest.files.length > 0) ensureFolder(folder);
  const isWritten = isChanged || outPath !== path;
  writeFilesSafely([
    ...(isWritten ? [...hideFiles(found.changed, path), ...layoutFiles(layout, path, outPath)] : []),
    ...rest.files,
    ...pages,
  ]);
  return {
    isChanged: isWritten,
    pages: pages.map((file) => file.path),
    rest: rest.files.map((file) => file.path),
    stale: rest.stale,
  };
}

function picturesOf({ layout, stage, found }: TickOutcome): ReadonlyMap<string, Drawing> {
  const fonts = loadFontBook();
  const workshop = workshopOfLayout(layout);
  const shown = stage.hides.filter(({ cut, spoiled, left }) => cut + spoiled + left.length > 0);
  return new Map(
    shown.map(({ hide: id }) => {
      const { hide } = found.hides.find((named) => named.hide.id === id)!;
      return [id, stagePicture({ layout, hide, fonts, ...(workshop === undefined ? {} : { workshop }) })];
    }),
  );
}

function tickResult(outcome: TickOutcome, written: Written): CommandResult {
  const { layout, stage, ticks, found, flawed, again, outPath } = outcome;
  const check = checkLayout(layout, found.hides, again === undefined ? {} : { keep: again.keep });
  const findings: Diagnostic[] = [
    ...flawedFindings(flawed),
    ...(again?.search.failure === undefined
      ? []
      : [endedEarlyFinding(again.search.failure, again.search.answer)]),
    ...unlaidFindings(stage, again !== undefined),
    ...checkFindings(check, outPath),
    ...(again === undefined || again.renumbered === 0
      ? []
      : [{ code: 'laid-again-numbers', severity: 'note' as const, params: { count: again.renumbered } }]),
    ...written.stale.map((file) => ({
      code: 'rest-left-over-file',
      severity: 'warning' as const,
      params: { file },
    })),
  ];
  return {
    exitStatus: tickStatus(outcome, check.proven),
    lines: [
      ...findingLines(findings),
      ...tickedLines(ticks),
      ...found.flaws.map(({ hide, flaw }) => `The flaw ${flaw.id} is on hide ${hide} now.`),
      ...reportLines(stageReport({ layout, stage })),
      '',
      ...provenLines(outcome, check.proven),
      ...writtenLines(outcome, written),
    ],
    data: {
      file: outPath,
      written: written.isChanged,
      ticked: ticks,
      flaws: found.flaws,
      flawed,
      laidAgain: again !== undefined,
      moved: again?.moved ?? 0,
      stopped: again?.search.wasStopped ?? false,
      proven: check.proven,
      stage: stageData(stage),
      rest: written.rest,
      pages: written.pages,
    },
    diagnostics: findings,
  };
}

/** Hide files are long; what is left is told by its parts' ids and areas. */
function stageData(stage: CuttingStage) {
  return {
    ...stage,
    hides: stage.hides.map(({ parts, ...hide }) => ({
      ...hide,
      parts: parts.map(({ id, area }) => ({ id, areaMm2: area.measuredMm2 })),
    })),
  };
}

function tickStatus({ stage, again }: TickOutcome, proven: boolean): ExitStatus {
  if (again?.search.wasStopped === true) return EXIT_STATUS.stopped;
  const isShort = again !== undefined && stage.unlaid.length > 0;
  return proven && !isShort ? EXIT_STATUS.done : EXIT_STATUS.answerIsNo;
}

function tickedLines(ticks: readonly TickedCopy[]): string[] {
  const words = (['cut', 'spoiled', 'planned'] as const).flatMap((to) => {
    const count = ticks.filter((tick) => tick.to === to).length;
    if (count === 0) return [];
    return [
      to === 'planned'
        ? `The tick of ${countWords(count, 'piece')} is taken back.`
        : `${countWords(count, 'piece')} ${count === 1 ? 'is' : 'are'} ticked as ${to}.`,
    ];
  });
  return words.length === 0 ? [] : [words.join(' ')];
}

function provenLines({ again, layout }: TickOutcome, proven: boolean): string[] {
  if (again === undefined) return proven ? [] : ['The layout is NOT proven.'];
  const { moved, search } = again;
  return [
    `${search.wasStopped ? 'Stopped by hand. ' : ''}${countWords(moved, 'piece')} ${moved === 1 ? 'is' : 'are'} laid again, and the layout is ${proven ? 'proven' : 'NOT proven'}.`,
    ...(layout.unplaced.length === 0 ? [] : ['With --anew the pieces that are not cut yet may move, too.']),
  ];
}

function writtenLines({ outPath, path, found }: TickOutcome, written: Written): string[] {
  return [
    ...(written.isChanged
      ? [
          `The layout is in ${outPath}${outPath === path ? `; as it was before, in ${outPath}.before` : ''}`,
          ...found.changed.map(({ file }) => {
            const hide = besideFile(path, file);
            return `The hide with the flaw is in ${hide}; as it was before, in ${hide}.before`;
          }),
        ]
      : []),
    ...written.rest.map((file) => `What is left is in ${file}`),
    ...written.pages.map((file) => `What is left to cut is in ${file}`),
  ];
}
