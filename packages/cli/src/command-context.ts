import type { Diagnostic } from '@hidebound/leather';
import type { ExitStatus } from './exit-status.js';

/** What a command may touch of the world. */
export interface CommandContext {
  readonly out: (text: string) => void;
  /** Progress and what is for a person only; never mixed with results. */
  readonly err: (text: string) => void;
  readonly errIsTerminal: boolean;
  /** Milliseconds from some fixed moment. */
  readonly now: () => number;
  readonly version: string;
}

/** Options as the table of options reads them. */
export type OptionValues = Readonly<
  Record<string, string | number | boolean | readonly string[] | undefined>
>;

/** What a command comes to: for a person as lines, for a program as data. */
export interface CommandResult {
  readonly exitStatus: ExitStatus;
  readonly lines: readonly string[];
  readonly data: Readonly<Record<string, unknown>>;
  readonly diagnostics: readonly Diagnostic[];
  /** True of a command that told its result itself, while it ran. */
  readonly isTold?: boolean;
}

export type Command = (
  files: readonly string[],
  options: OptionValues,
  context: CommandContext,
) => Promise<CommandResult> | CommandResult;

export function textOption(options: OptionValues, name: string): string | undefined {
  const value = options[name];
  return typeof value === 'string' ? value : undefined;
}

export function numberOption(options: OptionValues, name: string): number | undefined {
  const value = options[name];
  return typeof value === 'number' ? value : undefined;
}

/** What was given of an option that may be given several times. */
export function textsOption(options: OptionValues, name: string): readonly string[] {
  const value = options[name];
  return Array.isArray(value) ? (value as readonly string[]) : [];
}
