export { EXIT_STATUS } from './exit-status.js';
export type { ExitStatus } from './exit-status.js';
export { runHidebound } from './run-hidebound.js';
export type { CommandContext } from './command-context.js';
export { COMMANDS, COMMON_OPTIONS } from './option-table.js';
export type { CommandName, CommandSpec, OptionSpec, OptionValue } from './option-table.js';
