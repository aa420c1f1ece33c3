import type { TemplateResult } from 'lit-html';
import type { App } from '../app/app.js';
import { readField } from './text-field.js';
import type { FieldLook } from './text-field.js';
import type { Reading } from './typing.js';

/** Where a measure may lie, in what it is kept in. */
export interface Bounds {
  /** It may be this, and not less; without it anything above 0. */
  readonly least?: number;
  readonly most?: number;
}

export interface MeasureField extends Omit<FieldLook, 'unit' | 'keys'>, Bounds {
  readonly value: number | undefined;
  readonly take: (value: number) => void;
}

export interface OptionalMeasureField extends Omit<MeasureField, 'take'> {
  /** Undefined where it was emptied. */
  readonly take: (value: number | undefined) => void;
}

/** What a field of a kind reads and shows. */
interface Kind {
  readonly unit: string;
  readonly show: (value: number) => string;
  readonly read: (text: string) => number | undefined;
  /** With its unit, for sentences. */
  readonly words: (value: number) => string;
  /** What it says where it can't read. */
  readonly slip: (text: string) => string;
}

/** Nothing on a bench is longer; more is a slip of the pen. */
const LONGEST_MM = 50_000;

/** A length in mm, in her unit or one that she writes; rounded to a thousandth of a mm. */
export function lengthField(app: App, field: MeasureField): TemplateResult {
  return measureField(app, { most: LONGEST_MM, ...field }, lengths(app));
}

/** A length that may be left empty. */
export function optionalLengthField(app: App, field: OptionalMeasureField): TemplateResult {
  return optionalField(app, { most: LONGEST_MM, ...field }, lengths(app));
}

/** An area in mm² that may be left empty. */
export function optionalAreaField(app: App, field: OptionalMeasureField): TemplateResult {
  const measures = app.measures();
  return optionalField(app, field, {
    unit: measures.areaUnit,
    show: (mm2) => measures.areaField(mm2),
    read: (text) => measures.readAreaMm2(text),
    words: (mm2) => measures.area(mm2),
    slip: (text) => app.say('field.noArea', { text }),
  });
}

/** A whole number. */
export function wholeField(app: App, field: MeasureField & { readonly unit?: string }): TemplateResult {
  return measureField(app, field, wholes(app, field.unit));
}

export function optionalWholeField(
  app: App,
  field: OptionalMeasureField & { readonly unit?: string },
): TemplateResult {
  return optionalField(app, field, wholes(app, field.unit));
}

function lengths(app: App): Kind {
  const measures = app.measures();
  return {
    unit: measures.lengthUnit,
    show: (mm) => measures.lengthField(mm),
    read: (text) => thousandth(measures.readLengthMm(text)),
    words: (mm) => measures.length(mm),
    slip: (text) => app.say('field.noLength', { text }),
  };
}

function wholes(app: App, unit: string | undefined): Kind {
  const measures = app.measures();
  return {
    unit: unit ?? '',
    show: (value) => measures.number(value, 0),
    read: (text) => {
      const value = measures.readNumber(text);
      return Number.isInteger(value) ? value : undefined;
    },
    words: (value) => measures.number(value, 0),
    slip: (text) => app.say('field.noWhole', { text }),
  };
}

function thousandth(mm: number | undefined): number | undefined {
  return mm === undefined ? undefined : Math.round(mm * 1000) / 1000;
}

function measureField(app: App, field: MeasureField, kind: Kind): TemplateResult {
  const { value, take, ...look } = field;
  return readField<number>(app, {
    ...lookOf(look, kind),
    shown: value === undefined ? '' : kind.show(value),
    read: (text) => (text === '' ? { slip: app.say('field.empty') } : readWithin(app, kind, field, text)),
    take: (read) => read !== value && take(read),
  });
}

function optionalField(app: App, field: OptionalMeasureField, kind: Kind): TemplateResult {
  const { value, take, ...look } = field;
  return readField<number | undefined>(app, {
    ...lookOf(look, kind),
    shown: value === undefined ? '' : kind.show(value),
    read: (text) => (text === '' ? { value: undefined } : readWithin(app, kind, field, text)),
    take: (read) => read !== value && take(read),
  });
}

function lookOf(
  { least: _, most: __, ...look }: Omit<MeasureField, 'value' | 'take'>,
  { unit }: Kind,
): FieldLook {
  return { keys: 'decimal', ...look, ...(unit === '' ? {} : { unit }) };
}

/** The value within its bounds, or what is wrong with the text. */
export function readWithin(
  app: App,
  { read, words, slip }: Pick<Kind, 'read' | 'words' | 'slip'>,
  { least, most = Infinity }: Bounds,
  text: string,
): Reading<number> {
  const value = read(text);
  if (value === undefined) return { slip: slip(text) };
  if (least === undefined && !(value > 0)) return { slip: app.say('field.aboveNothing') };
  if (least !== undefined && value < least)
    return { slip: app.say('field.tooLittle', { least: words(least) }) };
  return value > most ? { slip: app.say('field.tooMuch', { most: words(most) }) } : { value };
}
