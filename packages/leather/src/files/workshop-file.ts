import type { Effect } from '../model/marks.js';
import type { Iron } from '../model/stitch.js';
import type { PartRule, Workshop } from '../model/workshop.js';
import { leatherError } from '../words/refuse.js';
import { formatMoney } from '../units/money.js';
import { DEFAULT_WORKSHOP } from '../workshop/default-workshop.js';
import { readCoverages, writeCoverage } from './coverages.js';
import { definedOnly } from './defined-only.js';
import { openFile } from './envelope.js';
import type { FileFormat } from './envelope.js';
import { placeOf } from './explain.js';
import { writePitch, writeStitch } from './schema/written-stitch.js';
import { ANY, WORKSHOP_FORMAT, workshopFileSchema } from './schema/written-workshop.js';
import type {
  PlainChoice,
  WrittenEffect,
  WrittenMethod,
  WrittenPartRule,
  WrittenWorkshop,
} from './schema/written-workshop.js';
import type { WhereOf } from './validate-hide.js';
import {
  readCuts,
  readFigures,
  readGoods,
  readGrades,
  readOffers,
  readTannages,
  writeCut,
  writeFigure,
  writeGoods,
  writeGrade,
  writeOffer,
  writeTannage,
} from './workshop-rules.js';
import { writeDirection, writeThickness, writeYaml } from './write-written.js';
import { YAML_SYNTAX } from './text/yaml-text.js';

const format: FileFormat<typeof workshopFileSchema> = {
  kind: 'workshop',
  syntax: YAML_SYNTAX,
  schema: workshopFileSchema,
  upgrades: [],
};

const OWN = 'own';

/** The three plain choices for a flaw or zone. */
const PLAIN_EFFECTS: Readonly<Record<PlainChoice, Effect>> = {
  'never here': { looks: 'C', strength: 'weak', isVoid: true },
  'only where hidden': { looks: 'C', strength: 'sound', isVoid: false },
  anywhere: { looks: 'A', strength: 'sound', isVoid: false },
};

/**
 * Reads a workshop file (`workshop.yaml`). The answer is whole: what the file leaves out, down to a single figure of a
 * line, is the built-in value; what it says carries the source "own" unless it names one.
 * @throws LeatherError
 */
export function parseWorkshop(text: string, options: { readonly file: string }): Workshop {
  const opened = openFile(text, options.file, format);
  const written = opened.value;
  const usual = DEFAULT_WORKSHOP;
  const where: WhereOf = (path) => placeOf(opened, path);
  const cuts = readCuts(usual.cuts, written.cuts, where);
  const grades = readGrades(usual.grades, written.grades);
  return definedOnly({
    name: written.name,
    parts: usual.parts.map((rule) => readPart(rule, written.parts[rule.part])),
    flawDefaults: usual.flawDefaults.map((line) => readEffect(line, written.flaws[line.kind])),
    zoneDefaults: usual.zoneDefaults.map((line) => readEffect(line, written.zones[line.kind])),
    cuttingMethods: readMethods(written.cutting, where),
    keepMm: written.keep ?? usual.keepMm,
    irons: readIrons(written.irons),
    stitch: written.stitch,
    goods: readGoods(usual.goods, written.goods),
    tannages: readTannages(usual.tannages, written.tannages),
    cuts,
    grades,
    figures: readFigures(usual.figures, written.figures, where),
    offers: readOffers(written.offers, cuts, grades, where),
    coverages: readCoverages(usual.coverages, written.coverages, where),
    prices: written.prices,
    hourlyRate: written.hourlyRate,
    overheadPercent: written.overhead,
    profitPercent: written.profit,
    taxPercent: written.tax,
    rounding: written.rounding,
  });
}

function readPart(usual: PartRule, written: WrittenPartRule | undefined): PartRule {
  if (written === undefined) return usual;
  const { zones: usualZones, thickness: usualThickness } = usual;
  return definedOnly({
    part: usual.part,
    looks: { ...usual.looks, ...written.looks },
    bearsLoad: written.load ?? usual.bearsLoad,
    zones: written.zones === ANY ? undefined : (written.zones ?? usualZones),
    direction: written.direction ?? usual.direction,
    thickness: written.thickness === ANY ? undefined : (written.thickness ?? usualThickness),
    tooThick: written.tooThick ?? usual.tooThick,
    source: written.source ?? OWN,
  });
}

interface EffectLine<Kind> {
  readonly kind: Kind;
  readonly effect: Effect;
  readonly source: string;
}

function readEffect<Kind>(usual: EffectLine<Kind>, written: WrittenEffect | undefined): EffectLine<Kind> {
  if (written === undefined) return usual;
  if (typeof written === 'string') return { kind: usual.kind, effect: PLAIN_EFFECTS[written], source: OWN };
  const effect = {
    looks: written.looks ?? usual.effect.looks,
    strength: written.strength ?? usual.effect.strength,
    isVoid: written.void ?? usual.effect.isVoid,
  };
  return { kind: usual.kind, effect, source: written.source ?? OWN };
}

function readMethods(written: WrittenWorkshop['cutting'], where: WhereOf): Workshop['cuttingMethods'] {
  const usual = DEFAULT_WORKSHOP.cuttingMethods;
  const known = new Set(usual.map(({ method }) => method));
  const changed = usual.map((line) => readMethod(line.method, written[line.method], line));
  const added = Object.entries(written)
    .filter(([name]) => !known.has(name))
    .map(([name, line]) => readMethod(name, line, undefined, where));
  return [...changed, ...added];
}

type Method = Workshop['cuttingMethods'][number];

function readMethod(
  method: string,
  written: WrittenMethod | undefined,
  usual: Method | undefined,
  where?: WhereOf,
): Method {
  if (written === undefined) return usual!;
  const figure = (key: 'gap' | 'edge' | 'void' | 'kerf', usualMm: number | undefined): number => {
    const mm = written[key] ?? usualMm;
    if (mm !== undefined) return mm;
    const right = 'a length in mm, as this method is your own';
    throw leatherError('missing-key', { key, right }, where?.(['cutting', method]));
  };
  return {
    method,
    gapMm: figure('gap', usual?.gapMm),
    edgeMm: figure('edge', usual?.edgeMm),
    voidMm: figure('void', usual?.voidMm),
    kerfMm: figure('kerf', usual?.kerfMm),
    source: written.source ?? OWN,
  };
}

/** An iron of a name that the table has takes its place; others follow. */
function readIrons(written: WrittenWorkshop['irons']): Workshop['irons'] {
  const own = Object.entries(written).map(([name, iron]): Iron => {
    if (typeof iron === 'number') return { name, pitchMm: iron, source: OWN };
    return { name, pitchMm: iron.pitch, source: iron.source ?? OWN };
  });
  const usual = DEFAULT_WORKSHOP.irons;
  const byName = new Map(own.map((iron) => [iron.name, iron]));
  const added = own.filter(({ name }) => !usual.some((iron) => iron.name === name));
  return [...usual.map((iron) => takePlaceOf(iron, byName.get(iron.name))), ...added];
}

/** Sold as the same, but measured. */
function takePlaceOf(usual: Iron, own: Iron | undefined): Iron {
  if (own === undefined) return usual;
  const { teethPerInch } = usual;
  return teethPerInch === undefined ? own : { ...own, teethPerInch };
}

/** The workshop's file with every value and its source written out, built-in ones too. */
export function writeWorkshop(workshop: Workshop): string {
  return writeYaml(workshopInWriting(workshop));
}

/** The same before it becomes text: each key of the file with what stands there. */
export function workshopInWriting(workshop: Workshop): Readonly<Record<string, unknown>> {
  return definedOnly({
    format: WORKSHOP_FORMAT,
    name: workshop.name,
    parts: Object.fromEntries(workshop.parts.map((rule) => [rule.part, writePart(rule)])),
    flaws: Object.fromEntries(workshop.flawDefaults.map((line) => [line.kind, writeEffect(line)])),
    zones: Object.fromEntries(workshop.zoneDefaults.map((line) => [line.kind, writeEffect(line)])),
    cutting: Object.fromEntries(workshop.cuttingMethods.map((line) => [line.method, writeMethod(line)])),
    keep: workshop.keepMm,
    irons: Object.fromEntries(
      workshop.irons.map(({ name, pitchMm, source }) => [name, { pitch: writePitch(pitchMm), source }]),
    ),
    stitch: workshop.stitch && writeStitch(workshop.stitch),
    goods: rowsOf(workshop.goods, ({ goods }) => goods, writeGoods),
    tannages: rowsOf(workshop.tannages, ({ tannage }) => tannage, writeTannage),
    cuts: rowsOf(workshop.cuts, ({ name }) => name, writeCut),
    grades: rowsOf(workshop.grades, ({ grade }) => grade, writeGrade),
    figures: rowsOf(workshop.figures, ({ name }) => name, writeFigure),
    offers: workshop.offers.length === 0 ? undefined : workshop.offers.map(writeOffer),
    coverages: Object.fromEntries(
      workshop.coverages.map((coverage) => [coverage.product, writeCoverage(coverage)]),
    ),
    prices: workshop.prices.map(({ name, price, per }) => ({ name, price: formatMoney(price), per })),
    hourlyRate: workshop.hourlyRate && formatMoney(workshop.hourlyRate),
    overhead: workshop.overheadPercent,
    profit: workshop.profitPercent,
    tax: workshop.taxPercent,
    rounding: workshop.rounding && { to: formatMoney(workshop.rounding.to), way: workshop.rounding.way },
  });
}

function rowsOf<Rule>(
  rules: readonly Rule[],
  nameOf: (rule: Rule) => string,
  write: (rule: Rule) => unknown,
): Readonly<Record<string, unknown>> {
  return Object.fromEntries(rules.map((rule) => [nameOf(rule), write(rule)]));
}

function writePart(rule: PartRule) {
  return {
    looks: rule.looks,
    load: rule.bearsLoad,
    zones: rule.zones ?? ANY,
    direction: writeDirection(rule.direction),
    thickness: rule.thickness === undefined ? ANY : writeThickness(rule.thickness),
    tooThick: rule.tooThick,
    source: rule.source,
  };
}

function writeEffect({ effect, source }: EffectLine<unknown>) {
  return { looks: effect.looks, strength: effect.strength, void: effect.isVoid, source };
}

function writeMethod({ gapMm, edgeMm, voidMm, kerfMm, source }: Method) {
  return { gap: gapMm, edge: edgeMm, void: voidMm, kerf: kerfMm, source };
}
