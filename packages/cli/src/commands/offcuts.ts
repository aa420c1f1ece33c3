import {
  DEFAULT_WORKSHOP,
  listStock,
  parseThickness,
  stockRemarkText,
  stripWorthKeeping,
  tryPiece,
} from '@hidebound/leather';
import type { Diagnostic, PieceTrial, StockFilter, StockOrder, StockRow, Workshop } from '@hidebound/leather';
import { drawStockLabels, pieceTrialReport, stockHistoryReport, stockReport } from '@hidebound/render';
import type { PageName, Report } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { join } from 'node:path';
import { CliError } from '../cli-error.js';
import type { CommandContext, CommandResult, OptionValues } from '../command-context.js';
import { numberOption, textOption } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import type { ExitStatus } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { loadWorkshop } from '../io/load-workshop.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import type { FileToWrite } from '../io/write-safely.js';
import { lengthOrNothing } from '../length-option.js';
import { reportLines } from '../report-lines.js';
import { pageFiles, refuseReportNames, reportFiles } from '../report-output.js';
import { completeStock } from '../stock/change-stock.js';
import { loadStock } from '../stock/load-stock.js';
import type { LoadedStock } from '../stock/load-stock.js';
import { offcutsTask } from '../stock/offcuts-task.js';
import { refuseNoFolder } from '../stock/stock-files.js';
import { filedWords, takeLayout, undoStep } from '../stock/take-layout.js';
import { loadWanted } from '../stock/wanted-piece.js';

/** A stock of hides and offcuts: listed, searched, and taken from. */
export async function offcutsCommand(
  [folder]: readonly string[],
  options: OptionValues,
  context: CommandContext,
): Promise<CommandResult> {
  const task = offcutsTask(options);
  refuseReportNames(options);
  refuseNoFolder(folder!);
  const inUse = loadWorkshop(textOption(options, 'workshop'), join(folder!, 'x'));
  const job: Job = { folder: folder!, options, context, workshop: inUse?.workshop ?? DEFAULT_WORKSHOP };
  switch (task) {
    case 'take':
      return take(job);
    case 'undo':
      return undo(job);
    case 'history':
      return history(job);
    case 'for':
      return search(job);
    case 'list':
      return list(job);
  }
}

interface Job {
  readonly folder: string;
  readonly options: OptionValues;
  readonly context: CommandContext;
  readonly workshop: Workshop;
}

/** The day by the clock of the place. */
function today(): string {
  const now = new Date();
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function lockTold({ context }: Job) {
  return { tell: (sentence: string) => context.err(`hidebound: ${sentence}\n`) };
}

async function take(job: Job): Promise<CommandResult> {
  const { folder, options, workshop } = job;
  const { plan, diagnostics } = await takeLayout(folder, textOption(options, 'take')!, {
    workshop,
    date: today(),
    place: textOption(options, 'place'),
    ...lockTold(job),
  });
  const { cut, offcuts, entry } = plan;
  const cutWords = cut.map(({ id }) => id).join(', ');
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      ...findingLines(diagnostics),
      `Step ${entry.number}: ${cutWords} ${cut.length === 1 ? 'is' : 'are'} cut.`,
      ...(offcuts.length === 0 ? ['Nothing worth keeping is left.'] : ['Left and put into the stock:']),
      ...filedWords(
        folder,
        offcuts.map(({ file, hide }) => ({ file, id: hide.id })),
      ),
      `To undo it: hidebound offcuts ${folder} --undo ${entry.number}`,
    ],
    data: {
      folder,
      step: entry.number,
      cut: cut.map(({ id }) => id),
      offcuts: offcuts.map(({ file, hide }) => ({ id: hide.id, file: join(folder, file) })),
    },
    diagnostics,
  };
}

async function undo(job: Job): Promise<CommandResult> {
  const { folder, options } = job;
  const { plan, diagnostics } = await undoStep(folder, {
    date: today(),
    step: stepFrom(textOption(options, 'undo')!),
    ...lockTold(job),
  });
  const back = plan.back.map(({ id }) => id);
  const { undone, entry } = plan;
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      ...findingLines(diagnostics),
      `Step ${undone.number} of ${undone.date} is undone: ${back.join(', ')} ${back.length === 1 ? 'is' : 'are'} whole again${undone.offcuts.length === 0 ? '' : `, and ${undone.offcuts.join(', ')} ${undone.offcuts.length === 1 ? 'is' : 'are'} gone`}.`,
    ],
    data: { folder, step: entry.number, undone: undone.number, back, removed: undone.offcuts },
    diagnostics,
  };
}

/** "last", or the number of a step. */
function stepFrom(text: string): number | undefined {
  if (text === 'last') return undefined;
  if (/^[1-9]\d{0,8}$/.test(text)) return Number(text);
  throw new CliError('bad-use', `--undo can't be "${text}"; it must be the number of a step, or "last".`);
}

interface ReadyStock {
  readonly stock: LoadedStock;
  readonly diagnostics: readonly Diagnostic[];
}

/** What was interrupted is completed before anything is read. */
async function readyStock(job: Job): Promise<ReadyStock> {
  const completed = await completeStock(job.folder, lockTold(job));
  const stock = loadStock(job.folder);
  return { stock, diagnostics: [...completed, ...stock.diagnostics] };
}

async function history(job: Job): Promise<CommandResult> {
  const { stock, diagnostics } = await readyStock(job);
  const report = stockHistoryReport(stock.journal, job.folder);
  return told(job, { report, diagnostics, data: { entries: stock.journal.entries } });
}

async function search(job: Job): Promise<CommandResult> {
  const { folder, options, workshop } = job;
  const { stock, diagnostics } = await readyStock(job);
  const path = textOption(options, 'for')!;
  const wanted = await loadWanted(path, workshop);
  const piece = textOption(options, 'piece')!;
  const count = numberOption(options, 'count')!;
  const filter = filterFrom(options);
  const rows = listStock({ hides: stock.hides, workshop, filter });
  const trials = tryPiece({
    ...wanted,
    piece,
    article: textOption(options, 'article'),
    count,
    hides: rows.map(({ file, hide }) => ({ file, hide })),
    workshop,
  });
  const report = pieceTrialReport(trials, { piece, count, subtitle: `${wanted.order.name}, from ${folder}` });
  return told(job, {
    report,
    diagnostics: [...diagnostics, ...wanted.diagnostics.filter(({ severity }) => severity !== 'note')],
    data: { piece, count, hides: trials.map(trialData) },
    exitStatus: trials.some(({ isEnough }) => isEnough) ? EXIT_STATUS.done : EXIT_STATUS.answerIsNo,
    read: [path],
  });
}

function trialData({ file, hide, fits, isFull, isEnough, usableMm2, remarks }: PieceTrial) {
  return {
    hide: hide.id,
    file,
    fits,
    orMore: isFull,
    enough: isEnough,
    usableMm2,
    remarks: remarks.map(stockRemarkText),
  };
}

async function list(job: Job): Promise<CommandResult> {
  const { folder, options, workshop } = job;
  const { stock, diagnostics } = await readyStock(job);
  const strip = stripWorthKeeping(workshop);
  const stripWidthMm = stripFrom(textOption(options, 'strip')) ?? strip.widthMm;
  const rows = listStock({
    hides: stock.hides,
    workshop,
    stripWidthMm,
    filter: filterFrom(options),
    order: textOption(options, 'sort') as StockOrder | undefined,
  });
  const common = {
    subtitle: [folder, ...filterWords(options)].join(', '),
    stripWidthMm,
    keepMm: workshop.keepMm,
    keepStripMm: [strip.widthMm, strip.lengthMm] as const,
  };
  const isPaged = textOption(options, 'pdf') !== undefined || textOption(options, 'pageSvg') !== undefined;
  const fonts = isPaged ? loadFontBook() : undefined;
  const labels =
    fonts !== undefined && options['labels'] === true
      ? await pageFiles(
          drawStockLabels(rows, { page: (textOption(options, 'page') ?? 'A4') as PageName, fonts }),
          `Labels of the stock ${folder}`,
          fonts,
          options,
        )
      : undefined;
  return told(job, {
    report: stockReport(rows, common),
    paged: stockReport(rows, { ...common, ...(fonts === undefined ? {} : { fonts }) }),
    ...(labels === undefined ? {} : { files: labels }),
    diagnostics,
    data: { hides: rows.map(rowData) },
    read: rows.map(({ file }) => file),
  });
}

function rowData({ file, hide, sizes, thickness, isWorthKeeping }: StockRow) {
  const { id, parent, cut, leather, lot, storedAt, state, price } = hide;
  const { tannage, temper, finish, colour } = leather;
  return {
    ...{
      hide: id,
      parent,
      file,
      cut,
      thickness,
      tannage,
      temper,
      finish,
      colour,
      lot,
      storedAt,
      state,
      price,
    },
    sizes,
    worthKeeping: isWorthKeeping,
  };
}

interface Told {
  readonly report: Report;
  /** What stands on pages, where it is more. */
  readonly paged?: Report;
  readonly files?: readonly FileToWrite[];
  readonly diagnostics: readonly Diagnostic[];
  readonly data: Readonly<Record<string, unknown>>;
  readonly exitStatus?: ExitStatus;
  readonly read?: readonly string[];
}

async function told(
  { folder, options }: Job,
  { report, paged = report, files, diagnostics, data, exitStatus = EXIT_STATUS.done, read = [] }: Told,
): Promise<CommandResult> {
  const pages = files ?? (await reportFiles(paged, options));
  const names = pages.map(({ path }) => path);
  refuseOverwriting(names, read);
  writeFilesSafely(pages);
  return {
    exitStatus,
    lines: [
      ...findingLines(diagnostics),
      ...(diagnostics.length === 0 ? [] : ['']),
      ...reportLines(report),
      ...(names.length === 0 ? [] : ['']),
      ...names.map((name) => `The page is in ${name}`),
    ],
    data: { folder, ...data, written: names },
    diagnostics,
  };
}

function filterFrom(options: OptionValues): StockFilter {
  const thickness = textOption(options, 'thickness');
  return {
    colour: textOption(options, 'colour'),
    tannage: textOption(options, 'tannage'),
    lot: textOption(options, 'lot'),
    thickness: thickness === undefined ? undefined : parseThickness(thickness),
    leastMm: sidesFrom(textOption(options, 'least')),
    only: textOption(options, 'only') as StockFilter['only'],
    withCut: options['withCut'] === true,
  };
}

function filterWords(options: OptionValues): string[] {
  const words = ['colour', 'tannage', 'lot', 'thickness'].flatMap((name) => {
    const value = textOption(options, name);
    return value === undefined ? [] : [`${name} ${value}`];
  });
  const [least, only] = [textOption(options, 'least'), textOption(options, 'only')];
  return [
    ...(only === undefined ? [] : [`${only} only`]),
    ...words,
    ...(least === undefined ? [] : [`at least ${least}`]),
  ];
}

/** "80 x 200 mm", "80 mm x 20 cm". */
function sidesFrom(text: string | undefined): readonly [number, number] | undefined {
  if (text === undefined) return undefined;
  const sides = text.split(/\s*[x×*]\s*/);
  const unit = /[a-z"]+$/i.exec(sides[1]?.trim() ?? '')?.[0] ?? '';
  const [a, b] = sides.map((side, i) =>
    lengthOrNothing(i === 0 && /^[\d.]+$/.test(side.trim()) ? `${side.trim()} ${unit}`.trim() : side.trim()),
  );
  if (sides.length === 2 && a !== undefined && b !== undefined && a > 0 && b > 0) return [a, b];
  throw new CliError('bad-use', `--least can't be "${text}"; write two sides, such as "80 x 200 mm".`);
}

function stripFrom(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const mm = lengthOrNothing(text.trim());
  if (mm !== undefined && mm > 0) return mm;
  throw new CliError('bad-use', `--strip can't be "${text}"; write a width, such as "25 mm".`);
}
