import type { Command, CommandContext, CommandResult, OptionValues } from '../command-context.js';
import type { CommandName } from '../option-table.js';
import { checkCommand } from './check.js';
import { hideCommand } from './hide.js';
import { layCommand } from './lay.js';
import { piecesCommand } from './pieces.js';
import { sheetCommand } from './sheet.js';

const RUN: Readonly<Record<CommandName, Command>> = {
  pieces: piecesCommand,
  hide: hideCommand,
  lay: layCommand,
  check: checkCommand,
  sheet: sheetCommand,
};

export async function runCommand(
  command: CommandName,
  files: readonly string[],
  options: OptionValues,
  context: CommandContext,
): Promise<CommandResult> {
  return RUN[command](files, options, context);
}
