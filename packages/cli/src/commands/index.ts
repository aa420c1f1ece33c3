import type { Command } from '../command-context.js';
import type { CommandName } from '../option-table.js';

/** Each command is loaded with what it needs only when it is asked for: drawing takes longest to load, and few draw. */
const LOAD: Readonly<Record<CommandName, () => Promise<Command>>> = {
  pieces: async () => (await import('./pieces.js')).piecesCommand,
  hide: async () => (await import('./hide.js')).hideCommand,
  trace: async () => (await import('./trace.js')).traceCommand,
  lay: async () => (await import('./lay.js')).layCommand,
  check: async () => (await import('./check.js')).checkCommand,
  sheet: async () => (await import('./sheet.js')).sheetCommand,
  cutfile: async () => (await import('./cutfile.js')).cutfileCommand,
  template: async () => (await import('./template.js')).templateCommand,
  setout: async () => (await import('./setout.js')).setoutCommand,
  prepare: async () => (await import('./prepare.js')).prepareCommand,
  list: async () => (await import('./list.js')).listCommand,
  suit: async () => (await import('./suit.js')).suitCommand,
  card: async () => (await import('./card.js')).cardCommand,
  cost: async () => (await import('./cost.js')).costCommand,
  tick: async () => (await import('./tick.js')).tickCommand,
  offcuts: async () => (await import('./offcuts.js')).offcutsCommand,
  workshop: async () => (await import('./workshop.js')).workshopCommand,
  markers: async () => (await import('./markers.js')).markersCommand,
  table: async () => (await import('./table.js')).tableCommand,
  buy: async () => (await import('./buy.js')).buyCommand,
};

export function loadCommand(command: CommandName): Promise<Command> {
  return LOAD[command]();
}
