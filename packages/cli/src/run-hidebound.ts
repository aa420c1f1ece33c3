import { CommanderError } from 'commander';
import { buildProgram } from './build-program.js';
import type { CommandContext } from './command-context.js';
import { EXIT_STATUS } from './exit-status.js';
import type { ExitStatus } from './exit-status.js';

/**
 * Runs one command line and says with which status to end. Never ends the process. The commands are loaded only when
 * one is run, so that help comes at once.
 */
export async function runHidebound(argv: readonly string[], context: CommandContext): Promise<ExitStatus> {
  let exitStatus: ExitStatus = EXIT_STATUS.done;
  const program = buildProgram({
    version: context.version,
    out: context.out,
    err: context.err,
    run: async (command, files, options) => {
      const { runCommand } = await import('./run-command.js');
      exitStatus = await runCommand({ command, files, options }, context);
    },
  });
  try {
    await program.parseAsync(argv, { from: 'user' });
    return exitStatus;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT_STATUS.done : EXIT_STATUS.usage;
    throw error;
  }
}
