import { DRAWING_UNITS, PAGE_JOINTS, PAGE_ORDERS, readPageNumbers } from '@hidebound/leather';
import type { PagesReading, PatternReading } from '@hidebound/leather';
import { CliError } from './cli-error.js';
import { numberOption, textOption, textsOption } from './command-context.js';
import type { OptionValues } from './command-context.js';
import { lengthOrNothing } from './length-option.js';
import { parseRoleRule, parseSizeRule } from './look-options.js';

/** How a drawing is to be read, from the command line. */
export function readingFrom(options: OptionValues): Omit<PatternReading, 'file'> {
  const dpi = numberOption(options, 'dpi');
  const scale = numberOption(options, 'scale');
  const known = textOption(options, 'knownLength');
  const units = oneOf(DRAWING_UNITS, textOption(options, 'units'));
  const pages = pagesFrom(options);
  const sizes = textsOption(options, 'size').map(parseSizeRule);
  return {
    roles: textsOption(options, 'role').map(parseRoleRule),
    ...(dpi === undefined ? {} : { dpi }),
    ...(scale === undefined ? {} : { scale }),
    ...(known === undefined ? {} : { knownLength: parseKnownLength(known) }),
    ...(units === undefined ? {} : { units }),
    ...(pages === undefined ? {} : { pages }),
    ...(sizes.length === 0 ? {} : { sizes }),
    ...(options['asDrawn'] === true ? { unfold: false } : {}),
  };
}

/** Columns, their order and an overlap are those of a grid, so whoever names one of them means a grid. */
function pagesFrom(options: OptionValues): PagesReading | undefined {
  const take = textOption(options, 'pages');
  const columns = numberOption(options, 'columns');
  const order = oneOf(PAGE_ORDERS, textOption(options, 'pageOrder'));
  const overlap = textOption(options, 'overlap');
  const isGrid = columns !== undefined || order !== undefined || overlap !== undefined;
  const join = oneOf(PAGE_JOINTS, textOption(options, 'join')) ?? (isGrid ? 'grid' : undefined);
  if (take === undefined && join === undefined) return undefined;
  return {
    ...(take === undefined ? {} : { take: parsePages(take) }),
    ...(join === undefined ? {} : { join }),
    ...(columns === undefined ? {} : { columns }),
    ...(order === undefined ? {} : { order }),
    ...(overlap === undefined ? {} : { overlapMm: parseOverlap(overlap) }),
  };
}

function oneOf<Name extends string>(names: readonly Name[], text: string | undefined): Name | undefined {
  return names.find((name) => name === text);
}

function parsePages(text: string): number[] {
  try {
    return readPageNumbers(text);
  } catch {
    throw new CliError(
      'bad-use',
      `--pages ${JSON.stringify(text)} are no page numbers; write them as "2-7, 9".`,
    );
  }
}

/** "10", "1/2 in", or across and down as "10 mm x 12 mm". */
function parseOverlap(text: string): [number, number] {
  const [across, down = across, ...more] = text.split(/\s*[x×]\s*/).map(lengthOrNothing);
  if (across === undefined || down === undefined || more.length > 0) {
    throw new CliError(
      'bad-use',
      `--overlap ${JSON.stringify(text)} is no length; write it as "10 mm", or across and down as "10 mm x 12 mm".`,
    );
  }
  return [across, down];
}

function parseKnownLength(text: string): { readonly element: string; readonly mm: number } {
  const equals = text.lastIndexOf('=');
  const mm = equals < 1 ? undefined : lengthOrNothing(text.slice(equals + 1));
  if (mm === undefined || !(mm > 0)) {
    throw new CliError(
      'bad-use',
      `--known-length ${JSON.stringify(text)} is not an id and its length; write it as ruler=100mm.`,
    );
  }
  return { element: text.slice(0, equals), mm };
}
