import { existsSync, realpathSync, statSync } from 'node:fs';
import { CliError } from '../cli-error.js';
import type { CommandContext, CommandResult, OptionValues } from '../command-context.js';
import { numberOption } from '../command-context.js';
import { stackWords } from '../describe-failure.js';
import { EXIT_STATUS } from '../exit-status.js';
import { watchForStop } from '../stop-by-hand.js';
import { readBuiltApp } from '../table/built-app.js';
import { settleFolder } from '../table/save-files.js';
import { keyOfFolder, newKey } from '../table/table-key.js';
import { portsOfFolder } from '../table/table-port.js';
import { openTable } from '../table/table-server.js';

/** The cutting table: serves the browser app with the files of a folder, until it is stopped by hand. */
export async function tableCommand(
  [given = '.']: readonly string[],
  options: OptionValues,
  context: CommandContext,
): Promise<CommandResult> {
  refuseNoFolder(given);
  const folder = realpathSync(given);
  const app = readBuiltApp();
  const key = await readyFolder(folder, context);
  const asked = numberOption(options, 'port');
  const ports = asked === undefined ? portsOfFolder(folder) : [asked];
  const isDebug = options['debug'] === true;
  const table = await openTable({
    folder,
    key,
    app,
    ports,
    tell: (error) => context.err(`hidebound: ${failureWords(error, isDebug)}\n`),
  });
  if (asked === undefined && table.port !== ports[0]) {
    context.err(
      `hidebound: the port of this folder, ${ports[0]}, is in use, perhaps by a table that is open on it already; this one answers at ${table.port}.\n`,
    );
  }
  const { address } = table;
  // Before the address is told: whoever has it may stop the table at once.
  const stopped = stoppedByHand(context);
  if (options['json'] === true)
    context.out(`${JSON.stringify({ command: 'table', address, folder: given })}\n`);
  else
    context.out(
      `The cutting table of ${given} is open. In a browser on this computer go to\n  ${address}\nCtrl-C ends it.\n`,
    );
  await stopped;
  await table.close();
  return { exitStatus: EXIT_STATUS.done, lines: [], data: {}, diagnostics: [], isTold: true };
}

function refuseNoFolder(folder: string): void {
  if (!existsSync(folder)) {
    throw new CliError('no-such-file', 'There is no such folder; correct the name.', { file: folder });
  }
  if (statSync(folder).isDirectory()) return;
  throw new CliError('bad-use', `${folder} is a file; give the folder that it lies in.`);
}

/** Settles what a killed table left, and gives the key. A folder in which nothing can be kept is shown all the same. */
async function readyFolder(folder: string, context: CommandContext): Promise<string> {
  try {
    const isSettled = await settleFolder(folder);
    if (isSettled) context.err('hidebound: a save that was interrupted is settled now.\n');
    return keyOfFolder(folder);
  } catch (error) {
    if (!(error instanceof Error)) throw error;
    context.err(
      `hidebound: nothing can be saved in this folder (${error.message.replace(/\.$/, '')}); it is shown, and what you change stays in the browser.\n`,
    );
    return newKey();
  }
}

function failureWords(error: unknown, isDebug: boolean): string {
  if (!(error instanceof Error)) return String(error);
  return isDebug ? stackWords(error).trimEnd() : `this should not have happened: ${error.message}`;
}

function stoppedByHand(context: CommandContext): Promise<void> {
  return new Promise((resolve) => {
    watchForStop(() => {
      context.err('hidebound: what is being saved is finished, then the table is closed.\n');
      resolve();
    });
  });
}
