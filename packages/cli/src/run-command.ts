import { toJsonText } from './json-result.js';
import type { CommandContext, OptionValues } from './command-context.js';
import { loadCommand } from './commands/index.js';
import { describeFailure, stackWords } from './describe-failure.js';
import type { Failure } from './describe-failure.js';
import type { ExitStatus } from './exit-status.js';
import type { CommandName } from './option-table.js';

/** What is to be run. */
export interface CommandRun {
  readonly command: CommandName;
  readonly files: readonly string[];
  readonly options: OptionValues;
}

/** Runs one command and tells its result or its failure. Never throws. */
export async function runCommand(run: CommandRun, context: CommandContext): Promise<ExitStatus> {
  const { command, files, options } = run;
  try {
    const execute = await loadCommand(command);
    const result = await execute(files, options, context);
    if (result.isTold === true) return result.exitStatus;
    if (options['json'] === true) {
      context.out(toJsonText({ command, version: context.version, ...result }));
    } else if (result.lines.length > 0) {
      context.out(`${result.lines.join('\n')}\n`);
    }
    return result.exitStatus;
  } catch (error) {
    return tellFailure(describeFailure(error, files[0]), error, { command, options, context });
  }
}

interface FailedRun {
  readonly command: CommandName;
  readonly options: OptionValues;
  readonly context: CommandContext;
}

function tellFailure(failure: Failure, error: unknown, run: FailedRun): ExitStatus {
  const { command, options, context } = run;
  context.err(`hidebound: ${failure.sentence}\n`);
  if (options['debug'] === true && error instanceof Error) context.err(stackWords(error));
  if (options['json'] === true) {
    const { exitStatus, code, sentence, place } = failure;
    const told = { code, sentence, ...(place === undefined ? {} : { place }) };
    context.out(
      `${JSON.stringify({ command, version: context.version, ok: false, exitStatus, error: told }, null, 2)}\n`,
    );
  }
  return failure.exitStatus;
}
