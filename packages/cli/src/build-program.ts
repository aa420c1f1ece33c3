import { Command as Program, InvalidArgumentError, Option } from 'commander';
import { COMMANDS, COMMON_OPTIONS } from './option-table.js';
import type { CommandName, CommandSpec, OptionSpec, OptionValue } from './option-table.js';
import type { OptionValues } from './command-context.js';

export interface ProgramHooks {
  readonly version: string;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly run: (command: CommandName, files: readonly string[], options: OptionValues) => Promise<void>;
}

/** The command line, made from the table of commands. Never ends the process: it throws commander's own error. */
export function buildProgram(hooks: ProgramHooks): Program {
  const program = new Program('hidebound');
  program
    .description('From pattern files and a hide to a proven layout and a cutting sheet.')
    .version(hooks.version)
    .exitOverride()
    .configureOutput({
      writeOut: hooks.out,
      writeErr: hooks.err,
      outputError: (text, write) => write(usageWords(text)),
    })
    .showSuggestionAfterError()
    .addHelpText('after', `\n${WHOLE_JOB}\n\nExit status: ${STATUS_WORDS}`);
  for (const spec of COMMANDS) addCommand(program, spec, hooks);
  return program;
}

/** The example of the main help: from drawings to the cutting table. */
const WHOLE_JOB = [
  'The whole job:',
  '  $ hidebound pieces bag.svg --picture pieces.svg   # is the pattern read as it is meant?',
  '  $ hidebound hide side.svg --out side.hide.json    # a hide that was traced in a drawing program',
  '  $ hidebound trace side.jpg --up grain --out side.hide.json   # or one that was photographed',
  '  $ hidebound suit bag.order.yaml                   # which hide fits which piece?',
  '  $ hidebound buy bag.order.yaml                    # how much leather to buy, if there is none',
  '  $ hidebound lay bag.order.yaml                    # "hidebound lay --help" shows an order',
  '  $ hidebound check bag.layout.json                 # does it keep every rule?',
  '  $ hidebound prepare bag.layout.json               # what to do to the leather first, and when it is dry',
  '  $ hidebound sheet bag.layout.json --pdf bag.pdf   # to print, and to cut from',
  '  $ hidebound template bag.layout.json --pdf cards.pdf   # the pieces at full scale, to glue on card',
  '  $ hidebound cutfile bag.layout.json --dxf bag.dxf # for a knife, laser or water jet',
  '  $ hidebound setout bag.layout.json --pdf setout.pdf    # to chalk the layout onto the leather',
  '  $ hidebound cost bag.layout.json --pdf cost.pdf   # what it costs, and its price',
  '  $ hidebound offcuts stock --take bag.layout.json  # its hides become offcuts to keep',
].join('\n');

const STATUS_WORDS =
  '0 done, 1 it ran and the answer is no, 2 wrong use, 3 bad input,\n  4 could not write, 130 stopped by hand with the best so far saved.';

function addCommand(program: Program, spec: CommandSpec, hooks: ProgramHooks): void {
  const command = program
    .command(spec.name)
    .summary(spec.summary)
    .description(spec.summary)
    .configureOutput({ outputError: (text, write) => write(usageWords(text, spec)) })
    .addHelpText('after', helpAfter(spec));
  if (spec.argument !== undefined) command.argument(spec.argument, spec.argumentDescription);
  for (const option of [...spec.options, ...COMMON_OPTIONS]) command.addOption(toOption(option));
  command.action(async (...given: (string | string[] | OptionValues)[]) => {
    const files =
      spec.argument === undefined
        ? []
        : [given[0] as string | string[] | undefined].flat().filter((file) => file !== undefined);
    await hooks.run(spec.name, files, command.opts());
  });
}

function helpAfter({ examples, notes = [] }: CommandSpec): string {
  const shown = ['Examples:', ...examples.map((line) => `  $ ${line}`)];
  return `\n${[...shown, ...(notes.length === 0 ? [] : ['', ...notes])].join('\n')}`;
}

function toOption(spec: OptionSpec): Option {
  const option = new Option(spec.flags, spec.description);
  if (spec.fallback !== undefined) option.default(spec.fallback);
  const parse = parserFor(spec.value);
  if (parse !== undefined) option.argParser(parse);
  if (spec.value.kind === 'choice') option.choices([...spec.value.choices]);
  return option;
}

type OptionParser = (text: string, before: unknown) => unknown;

function parserFor(value: OptionValue): OptionParser | undefined {
  switch (value.kind) {
    case 'switch':
    case 'text':
    case 'choice':
      return undefined;
    case 'texts':
      return (text, before) => [...(Array.isArray(before) ? (before as string[]) : []), text];
    case 'number':
    case 'whole number':
      return (text) => parseNumber(text, value);
  }
}

function parseNumber(text: string, value: Extract<OptionValue, { min: number }>): number {
  const number = text.trim() === '' ? NaN : Number(text);
  const fits = Number.isFinite(number) && number >= value.min && number <= value.max;
  if (!fits || (value.kind === 'whole number' && !Number.isInteger(number))) {
    throw new InvalidArgumentError(`It must be a ${value.kind} from ${value.min} to ${value.max}.`);
  }
  return number;
}

/** Commander's "error: …" as this program's one sentence, with what would be right. */
function usageWords(text: string, spec?: CommandSpec): string {
  const [first = '', second = ''] = text
    .replace(/^error: /, '')
    .trim()
    .split('\n')
    .map((line) => line.replace(/\.$/, ''));
  const help = `see hidebound ${spec === undefined ? '' : `${spec.name} `}--help`;
  const value = /^option '(--[\w-]+).*' argument '(.*)' is invalid\. (.*?)\.?$/.exec(first);
  if (value !== null) {
    const right = value[3]!.replace('Allowed choices are', 'it must be one of').replace(/^It/, 'it');
    return `hidebound: ${value[1]!} can't be "${value[2]!}"; ${right}.\n`;
  }
  const isNothingGiven =
    spec?.argumentDescription !== undefined && first.startsWith('missing required argument');
  const words = isNothingGiven ? `Nothing to read; give ${spec.argumentDescription}` : capital(first);
  return `hidebound: ${words}${second === '' ? '' : ` ${second}`}; ${help}.\n`;
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
