import { basename, dirname, join, resolve } from 'node:path';
import { checkLayout, layoutFrom, nestProblemFor, writeLayout } from '@hidebound/leather';
import type { Diagnostic, Layout, LayoutCheck, UnplacedCopy } from '@hidebound/leather';
import type { CommandContext, CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { unplacedFinding, violationFinding } from '../copy-words.js';
import { countWords } from '../count-words.js';
import { stackWords } from '../describe-failure.js';
import { EXIT_STATUS } from '../exit-status.js';
import type { ExitStatus } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { loadLayout } from '../io/load-files.js';
import { loadOrderJob } from '../io/load-order.js';
import type { OrderJob } from '../io/load-order.js';
import { loadWorkshop, workshopLines } from '../io/load-workshop.js';
import type { WorkshopInUse } from '../io/load-workshop.js';
import { pathFrom } from '../io/path-from.js';
import { ensureWritable, writeFilesSafely } from '../io/write-safely.js';
import { endedEarlyFinding, searchLayout } from '../search-layout.js';
import type { SearchOutcome } from '../search-layout.js';
import { coresFrom, originFrom, searchFrom } from '../search-options.js';
import { squareMetres, yieldLines } from '../yield-words.js';

/** Lays an order's pieces on its hides and writes the layout. */
export async function layCommand(
  [orderPath]: readonly string[],
  options: OptionValues,
  context: CommandContext,
): Promise<CommandResult> {
  const outPath = textOption(options, 'out') ?? defaultOutPath(orderPath!);
  ensureWritable(outPath, [orderPath!]);
  const keepPath = textOption(options, 'keep');
  const keep = keepPath === undefined ? {} : { keep: loadLayout(keepPath) };
  const inUse = loadWorkshop(textOption(options, 'workshop'), orderPath!);
  const job = await loadOrderJob(orderPath!, inUse?.workshop);
  const { order, pieces, hides } = job;
  const { budget, goal } = searchFrom(options);
  const reading = { workshop: inUse?.workshop, avoidCandidates: options['avoidUnconfirmedFlaws'] === true };
  const input = { order, pieces, hides, ...reading, ...keep };
  const problem = nestProblemFor({ ...input, budget });
  const search = await searchLayout(problem.problem, { goal, ...coresFrom(options) }, context);
  if (search.failure !== undefined && options['debug'] === true) context.err(stackWords(search.failure));
  const layout = layoutFrom({
    ...input,
    problem,
    answer: search.answer,
    origin: originFrom(budget, context.version),
    fileFor: (file) => pathFrom(dirname(outPath), resolve(dirname(orderPath!), file)),
  });
  const check = checkLayout(layout, hidesAsNamed(job, layout), keep);
  writeFilesSafely([{ path: outPath, content: writeLayout(layout) }]);
  return layResult({
    layout,
    check,
    outPath,
    before: [...job.diagnostics, ...problem.diagnostics],
    orderPath: orderPath!,
    search,
    inUse,
  });
}

function defaultOutPath(orderPath: string): string {
  const stem = basename(orderPath).replace(/(\.order)?\.(ya?ml|json)$/i, '');
  return join(dirname(orderPath), `${stem}.layout.json`);
}

/** The hides under the names that the layout gives them. */
function hidesAsNamed(job: OrderJob, layout: Layout): OrderJob['hides'] {
  return layout.hides.map(({ id, file }) => ({
    file,
    hide: job.hides.find(({ hide }) => hide.id === id)!.hide,
  }));
}

interface LayOutcome {
  readonly layout: Layout;
  readonly check: LayoutCheck;
  readonly outPath: string;
  readonly orderPath: string;
  readonly before: readonly Diagnostic[];
  readonly search: SearchOutcome;
  readonly inUse: WorkshopInUse | undefined;
}

function layResult({ layout, check, outPath, orderPath, before, search, inUse }: LayOutcome): CommandResult {
  const { wasStopped, failure } = search;
  const findings = [
    ...before,
    ...(failure === undefined ? [] : [endedEarlyFinding(failure, search.answer)]),
    ...unplacedFindings(layout),
    ...check.violations.map((violation) => violationFinding(violation, outPath)),
    ...check.diagnostics.filter(({ severity }) => severity === 'error'),
  ];
  const asked = layout.placements.length + layout.unplaced.length;
  return {
    exitStatus: layStatus(layout, check, wasStopped),
    lines: [
      ...findingLines(findings.filter((finding) => !isPatternNote(finding))),
      ...patternNoteLines(findings.filter(isPatternNote), orderPath, layout.order.patterns.length > 0),
      ...workshopLines(inUse),
      '',
      ...(layout.placements.length === 0 ? [] : [...yieldLines(layout), '']),
      laidWords(layout, check),
      ...offcutLines(layout),
      `${endWords(search)} in ${outPath}`,
    ],
    data: {
      file: outPath,
      placed: layout.placements.length,
      asked,
      proven: check.proven,
      stopped: wasStopped,
      yield: layout.yield,
      unplaced: layout.unplaced,
      offcuts: layout.offcuts.map(({ id }) => id),
      origin: layout.origin,
      ...(inUse === undefined ? {} : { workshop: inUse.file }),
    },
    diagnostics: findings,
  };
}

function endWords({ wasStopped, failure }: SearchOutcome): string {
  if (wasStopped) return 'Stopped by hand; the best so far is';
  return failure === undefined ? 'The layout is' : 'The search ended early; the best so far is';
}

function laidWords({ placements, unplaced }: Layout, { proven }: LayoutCheck): string {
  const asked = placements.length + unplaced.length;
  if (placements.length === 0) return `None of ${countWords(asked, 'piece')} could be laid.`;
  return `${placements.length} of ${countWords(asked, 'piece')} ${placements.length === 1 ? 'is' : 'are'} laid, and the layout is ${proven ? 'proven' : 'NOT proven'}.`;
}

/** Remarks on how a pattern file was read: "hidebound pieces" shows them. */
function isPatternNote({ severity, place }: Diagnostic): boolean {
  return severity === 'note' && place?.file !== undefined;
}

function patternNoteLines(notes: readonly Diagnostic[], order: string, saysHow: boolean): readonly string[] {
  if (notes.length === 0) return [];
  const files = [...new Set(notes.map(({ place }) => place!.file!))];
  return [
    `${countWords(notes.length, 'remark')} on how the drawings were read: hidebound pieces ${files.join(' ')}${saysHow ? ` --order ${order}` : ''}`,
  ];
}

function layStatus(layout: Layout, check: LayoutCheck, wasStopped: boolean): ExitStatus {
  if (wasStopped) return EXIT_STATUS.stopped;
  return layout.unplaced.length === 0 && check.proven ? EXIT_STATUS.done : EXIT_STATUS.answerIsNo;
}

/** One finding for each piece and reason, not one for each copy. */
function unplacedFindings({ unplaced, order }: Layout): Diagnostic[] {
  const groups = new Map<string, UnplacedCopy[]>();
  for (const copy of unplaced) {
    const key = JSON.stringify([copy.article, copy.piece, copy.reason]);
    groups.set(key, [...(groups.get(key) ?? []), copy]);
  }
  return [...groups.values()].map((copies) => unplacedFinding(copies[0]!, copies.length, order));
}

function offcutLines(layout: Layout): readonly string[] {
  const total = layout.yield.total.offcutMm2;
  if (layout.offcuts.length === 0) return [];
  const words = layout.offcuts.length === 1 ? '1 offcut is' : `${layout.offcuts.length} offcuts are`;
  return [`${words} worth keeping: ${squareMetres(total)}.`];
}
