import { readHideSvg } from '@hidebound/intake';
import { effectOf, formatArea, hideAreas, quarterFootMark, writeHide } from '@hidebound/leather';
import type {
  Diagnostic,
  Effect,
  Flaw,
  Hide,
  HideAreas,
  ThicknessRange,
  Workshop,
  Zone,
} from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { countWords } from '../count-words.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { loadHidePictures, pagePixels } from '../io/hide-pictures.js';
import type { HideInFile, LoadedPictures } from '../io/hide-pictures.js';
import { loadHide } from '../io/load-files.js';
import { loadWorkshop, workshopLines } from '../io/load-workshop.js';
import { SIZE_LIMIT_MB, readFileLimited } from '../io/read-file.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import { pictureFile } from '../picture.js';
import { readingFrom } from '../reading-options.js';
import { textTable } from '../text-table.js';
import { decideWith, decisionsFrom } from '../trace/hide-decisions.js';

interface LoadedHide {
  readonly hide: Hide;
  readonly diagnostics: readonly Diagnostic[];
}

/** Shows a hide, or makes a hide file from a traced drawing. */
export async function hideCommand([path]: readonly string[], options: OptionValues): Promise<CommandResult> {
  const { hide: loaded, diagnostics } = load(path!, options);
  const decisions = decisionsFrom(options);
  const { hide, decided, lines: decidedLines } = decideWith(loaded, decisions);
  const inUse = loadWorkshop(textOption(options, 'workshop'), path!);
  const reading = inUse === undefined ? {} : { workshop: inUse.workshop };
  const out = textOption(options, 'out') ?? (decisions === undefined ? undefined : ownFile(path!));
  const picture = textOption(options, 'picture');
  const isItself = decisions !== undefined && out === path;
  const outputs = [isItself ? undefined : out, picture].filter((name) => name !== undefined);
  refuseOverwriting(outputs, [path!, ...(inUse === undefined ? [] : [inUse.file])]);
  const shown = await shownPhoto({ file: path!, hide }, picture, options);
  writeFilesSafely([
    ...(out === undefined ? [] : [{ path: out, content: writeHide(hide) }]),
    ...(picture === undefined ? [] : [await pictureFile(picture, { hide, ...reading, ...shown })]),
  ]);
  const areas = hideAreas(hide, reading);
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      ...factLines(hide, areas),
      '',
      ...markLines(hide, inUse?.workshop),
      ...possibleLines(hide),
      ...decidedLines,
      ...workshopLines(inUse),
      ...findingLines([...diagnostics, ...shown.diagnostics]),
      ...(out === undefined ? [] : [`The hide file is in ${out}`]),
      ...(picture === undefined ? [] : [`The picture is in ${picture}`]),
    ],
    data: {
      file: path,
      areas,
      hide,
      ...(decided === undefined ? {} : { decided }),
      ...(inUse === undefined ? {} : { workshop: inUse.file }),
      ...(out === undefined ? {} : { out }),
      ...(picture === undefined ? {} : { picture }),
    },
    diagnostics: [...diagnostics, ...shown.diagnostics],
  };
}

/** The photo that lies beside the hide file, where it is to be drawn. */
async function shownPhoto(
  hide: HideInFile,
  picture: string | undefined,
  options: OptionValues,
): Promise<LoadedPictures> {
  if (picture === undefined || options['photo'] === false) return { pictures: new Map(), diagnostics: [] };
  const { PAGE_SIZES } = await import('@hidebound/render');
  return loadHidePictures([hide], pagePixels(PAGE_SIZES.A4));
}

/** What is decided of a hide goes into its own file, as long as no other one is named. */
function ownFile(path: string): string {
  if (!/\.svg$/i.test(path)) return path;
  throw new CliError('bad-use', `${path} is a drawing; name the hide file that is to be written with --out.`);
}

function load(path: string, options: OptionValues): LoadedHide {
  if (/\.svg$/i.test(path)) {
    const bytes = readFileLimited(path, SIZE_LIMIT_MB.pattern);
    return readHideSvg(bytes, { file: path, reading: { ...readingFrom(options), file: path } });
  }
  const given = ['dpi', 'scale', 'knownLength'].find((name) => options[name] !== undefined);
  if (given !== undefined) {
    throw new CliError(
      'bad-use',
      `${path} is a hide file with a scale of its own; --dpi, --scale and --known-length are for drawings.`,
    );
  }
  return { hide: loadHide(path), diagnostics: [] };
}

function factLines(hide: Hide, areas: HideAreas): readonly string[] {
  const { leather, area, price } = hide;
  const facts: (readonly [string, string | undefined])[] = [
    ['hide', hide.id],
    ['cut', hide.cut],
    ['lot', hide.lot],
    ['state', hide.state],
    [
      'leather',
      [leather.tannage, leather.temper, leather.finish, leather.colour]
        .filter((word) => word !== undefined)
        .join(', '),
    ],
    [
      'thickness',
      leather.thickness === undefined
        ? undefined
        : thicknessWords(leather.thickness, leather.readings.length),
    ],
    ['gross area', bothUnits(areas.grossMm2)],
    ['net area', bothUnits(areas.netMm2)],
    ['usable area', bothUnits(areas.usableMm2)],
    [
      'invoiced',
      area.invoicedMm2 === undefined
        ? undefined
        : `${bothUnits(area.invoicedMm2)}, marked ${quarterFootMark(area.invoicedMm2)}`,
    ],
    [
      'price',
      price === undefined
        ? undefined
        : `${price.amount} ${price.currency} per ${price.per === 'hide' ? 'hide' : `${price.per.replace('2', '²')} of the ${price.of} area`}`,
    ],
    ['kept at', hide.storedAt],
    ['notes', hide.notes],
  ];
  const known = facts.filter(
    (fact): fact is readonly [string, string] => fact[1] !== undefined && fact[1] !== '',
  );
  const width = Math.max(...known.map(([name]) => name.length));
  return known.map(([name, words]) => `${name.padEnd(width)}  ${words}`);
}

function thicknessWords({ minMm, maxMm }: ThicknessRange, readings: number): string {
  const span = minMm === maxMm ? `${minMm} mm` : `${minMm} to ${maxMm} mm`;
  return readings === 0 ? span : `${span}, measured at ${countWords(readings, 'place')}`;
}

function bothUnits(mm2: number): string {
  return `${formatArea(mm2, { unit: 'm2' })} (${formatArea(mm2, { unit: 'ft2' })})`;
}

function markLines(hide: Hide, workshop: Workshop | undefined): readonly string[] {
  const row = (mark: Flaw | Zone, what: string): readonly string[] => [
    mark.id,
    what,
    effectWords(effectOf(mark, workshop)),
  ];
  const marks = [
    ...hide.zones.map((zone) => row(zone, `zone: ${zone.kind}`)),
    ...hide.flaws.map((flaw) =>
      row(flaw, `flaw: ${flaw.kind ?? 'of unknown kind'}${flaw.side === 'flesh' ? ', flesh side' : ''}`),
    ),
  ];
  if (marks.length === 0) return ['No zones and no flaws are marked.'];
  return textTable(['mark', 'what', 'effect'], marks);
}

/** What a photo showed and nobody has decided yet. */
function possibleLines({ candidates, guessed = [] }: Hide): readonly string[] {
  const rows = candidates.map(({ id, kind, confidence }) => [
    id,
    kind ?? 'of unknown kind',
    `${Math.round(confidence * 100)} of 100`,
  ]);
  return [
    ...(rows.length === 0 ? [] : ['', ...textTable(['possible flaw', 'what', 'how sure'], rows, [2])]),
    ...(guessed.length === 0 ? [] : [`Guessed and not confirmed: ${guessed.join(' and ')}.`]),
  ];
}

function effectWords(effect: Effect): string {
  return effect.isVoid ? 'never to be used' : `looks ${effect.looks}, ${effect.strength}`;
}
