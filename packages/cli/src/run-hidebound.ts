import { CommanderError } from 'commander';
import { buildProgram } from './build-program.js';
import { toJsonText } from './json-result.js';
import type { CommandContext, OptionValues } from './command-context.js';
import { runCommand } from './commands/index.js';
import { describeFailure } from './describe-failure.js';
import type { Failure } from './describe-failure.js';
import { EXIT_STATUS } from './exit-status.js';
import type { ExitStatus } from './exit-status.js';
import type { CommandName } from './option-table.js';

/** Runs one command line and says with which status to end. Never throws, never ends the process. */
export async function runHidebound(argv: readonly string[], context: CommandContext): Promise<ExitStatus> {
  let exitStatus: ExitStatus = EXIT_STATUS.done;
  const program = buildProgram({
    version: context.version,
    out: context.out,
    err: context.err,
    run: async (command, files, options) => {
      exitStatus = await runOne(command, files, options, context);
    },
  });
  try {
    await program.parseAsync(argv, { from: 'user' });
    return exitStatus;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT_STATUS.done : EXIT_STATUS.usage;
    return tellFailure(describeFailure(error), error, { command: undefined, options: {}, context });
  }
}

async function runOne(
  command: CommandName,
  files: readonly string[],
  options: OptionValues,
  context: CommandContext,
): Promise<ExitStatus> {
  try {
    const result = await runCommand(command, files, options, context);
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
  readonly command: CommandName | undefined;
  readonly options: OptionValues;
  readonly context: CommandContext;
}

function tellFailure(failure: Failure, error: unknown, run: FailedRun): ExitStatus {
  const { command, options, context } = run;
  context.err(`hidebound: ${failure.sentence}\n`);
  if (options['debug'] === true && error instanceof Error) context.err(`${error.stack ?? ''}\n`);
  if (options['json'] === true) {
    const { exitStatus, code, sentence, place } = failure;
    const told = { code, sentence, ...(place === undefined ? {} : { place }) };
    context.out(
      `${JSON.stringify({ command, version: context.version, ok: false, exitStatus, error: told }, null, 2)}\n`,
    );
  }
  return failure.exitStatus;
}
