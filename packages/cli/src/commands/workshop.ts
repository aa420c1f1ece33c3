import { existsSync } from 'node:fs';
import {
  DEFAULT_WORKSHOP,
  completeWorkshop,
  parseWorkshop,
  staleRows,
  writeWorkshopInFull,
} from '@hidebound/leather';
import type { CompletedWorkshop, Diagnostic, Workshop, WorkshopTopic } from '@hidebound/leather';
import { shownTopics, valuesReport } from '@hidebound/render';
import type { ValuesOptions } from '@hidebound/render';
import { CliError } from '../cli-error.js';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { countWords } from '../count-words.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { readText } from '../io/load-files.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import { reportLines } from '../report-lines.js';
import { refuseReportNames, reportFiles } from '../report-output.js';

/** Shows the values that are reckoned with; writes them out to edit; adds to a file what it lacks. */
export async function workshopCommand(
  [path]: readonly string[],
  options: OptionValues,
): Promise<CommandResult> {
  refuseReportNames(options);
  const outPath = textOption(options, 'write');
  if (outPath !== undefined) return writeResult(outPath, path);
  if (options['add'] === true) return addResult(path);
  const workshop = path === undefined ? DEFAULT_WORKSHOP : readWorkshop(path);
  const topic = textOption(options, 'topic') as WorkshopTopic | undefined;
  const asked: ValuesOptions = {
    workshop,
    onlyOwn: options['own'] === true,
    ...(topic === undefined ? {} : { topic }),
  };
  const report = valuesReport(asked, path);
  const files = await reportFiles(report, options);
  const written = files.map((file) => file.path);
  refuseOverwriting(written, path === undefined ? [] : [path]);
  writeFilesSafely(files);
  const diagnostics = staleFindings(workshop);
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      ...findingLines(diagnostics),
      ...reportLines(report),
      ...written.map((file) => `The values are in ${file}`),
    ],
    data: { file: path, topics: shownTopics(asked), written },
    diagnostics,
  };
}

function readWorkshop(path: string): Workshop {
  return parseWorkshop(readText(path, 'workshop'), { file: path });
}

function staleFindings(workshop: Workshop): Diagnostic[] {
  return staleRows(workshop).map(({ topic, name }) => ({
    code: 'workshop-row-stale',
    severity: 'note',
    params: { topic, name },
  }));
}

/** Never over a file that is there: it may be somebody's work of years. */
function writeResult(outPath: string, path: string | undefined): CommandResult {
  if (existsSync(outPath)) {
    throw new CliError(
      'can-not-write',
      'There is such a file already, and it stays as it is; give another name, or --add to complete that one.',
      { file: outPath },
    );
  }
  const workshop = path === undefined ? DEFAULT_WORKSHOP : readWorkshop(path);
  writeFilesSafely([{ path: outPath, content: writeWorkshopInFull(workshop) }]);
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [`Every value is in ${outPath}, with where it comes from; edit what you know better.`],
    data: { file: path, written: [outPath] },
    diagnostics: [],
  };
}

function addResult(path: string | undefined): CommandResult {
  if (path === undefined) throw new CliError('bad-use', 'Give the workshop file that is to be completed.');
  const text = readText(path, 'workshop');
  const done = completeWorkshop(text, { file: path });
  const before = `${path}.before`;
  // The old one is on the disk before the new one takes its place.
  if (done.added.length > 0) {
    writeFilesSafely([{ path: before, content: text }]);
    writeFilesSafely([{ path, content: done.text }]);
  }
  return {
    exitStatus: EXIT_STATUS.done,
    lines: addedLines(path, before, done),
    data: {
      file: path,
      added: done.added,
      closed: done.closed,
      written: done.added.length > 0 ? [path, before] : [],
    },
    diagnostics: staleFindings(parseWorkshop(done.text, { file: path })),
  };
}

function addedLines(path: string, before: string, { added, closed }: CompletedWorkshop): string[] {
  const lines = added.map(({ key, names }) => `${key}: ${names.join(', ')}`);
  const count = added.reduce((sum, { names }) => sum + names.length, 0);
  return [
    ...(count === 0
      ? [`${path} lacks nothing that could be added.`]
      : [`${countWords(count, 'value')} added to ${path}; as it was before, it is ${before}.`, '', ...lines]),
    ...closed.map(
      ({ key, names }) =>
        `Not added to "${key}", because it is written on one line: ${names.join(', ')}. Write it with one row a line, and add again.`,
    ),
  ];
}
