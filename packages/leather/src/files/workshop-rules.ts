import type { Money, ThicknessRange } from '../model/marks.js';
import type {
  CutSizeRule,
  Figure,
  GoodsRule,
  GradeRule,
  LeatherWants,
  Offer,
  Span,
  TannageRule,
} from '../model/workshop-rules.js';
import { writeAreaSpan } from '../units/area-span.js';
import { formatMoney } from '../units/money.js';
import { shareOfPercent } from '../units/percent.js';
import { leatherError } from '../words/refuse.js';
import { nearestWord } from '../words/nearest.js';
import { quoteValue } from '../words/sentence.js';
import { definedOnly } from './defined-only.js';
import { ANY_WORD, readWants } from './schema/written-rules.js';
import type {
  WrittenCutSize,
  WrittenFigure,
  WrittenGoods,
  WrittenGrade,
  WrittenOffer,
  WrittenTannage,
} from './schema/written-rules.js';
import type { WhereOf } from './validate-hide.js';
import { writeThickness } from './write-written.js';

/**
 * The workshop file's rules on goods, leather and money. A row of a name that the built-in table has takes its place,
 * figure by figure; others are added. What the file says carries the source "own" unless it names one.
 */

const OWN = 'own';

type Rows<Written> = Readonly<Record<string, Written>>;

/** The built-in rows, each changed by what is written under its name, then the written rows that are new. */
function merge<Rule, Written>(
  usual: readonly Rule[],
  written: Rows<Written>,
  nameOf: (rule: Rule) => string,
  read: (name: string, written: Written, usual: Rule | undefined) => Rule,
): Rule[] {
  const known = new Set(usual.map(nameOf));
  const changed = usual.map((rule) => {
    const own = Object.hasOwn(written, nameOf(rule)) ? written[nameOf(rule)] : undefined;
    return own === undefined ? rule : read(nameOf(rule), own, rule);
  });
  const added = Object.entries(written).filter(([name]) => !known.has(name));
  return [...changed, ...added.map(([name, own]) => read(name, own, undefined))];
}

export function readGoods(usual: readonly GoodsRule[], written: Rows<WrittenGoods>): GoodsRule[] {
  return merge(usual, written, ({ goods }) => goods, readGoodsRule);
}

function readGoodsRule(goods: string, written: WrittenGoods, usual: GoodsRule | undefined): GoodsRule {
  const { alsoCalled, source, ...rest } = written;
  const start = usual ?? { tannages: [], tempers: [], needs: [] };
  return definedOnly({
    ...start,
    ...readWants(rest),
    ...(rest.thickness === ANY_WORD ? { thickness: undefined } : {}),
    ...(rest.zones === ANY_WORD ? { zones: undefined } : {}),
    goods,
    alsoCalled: alsoCalled ?? usual?.alsoCalled ?? [],
    source: source ?? OWN,
  });
}

export function readTannages(usual: readonly TannageRule[], written: Rows<WrittenTannage>): TannageRule[] {
  return merge(
    usual,
    written,
    ({ tannage }) => tannage,
    (tannage, own, row): TannageRule => ({
      tannage,
      alsoCalled: own.alsoCalled ?? row?.alsoCalled ?? [],
      meets: { ...row?.meets, ...own.meets },
      source: own.source ?? OWN,
    }),
  );
}

export function readCuts(
  usual: readonly CutSizeRule[],
  written: Rows<WrittenCutSize>,
  where: WhereOf,
): CutSizeRule[] {
  return merge(
    usual,
    written,
    ({ name }) => name,
    (name, own, row) => {
      const missing = (key: string, right: string) =>
        leatherError('missing-key', { key, right }, where(['cuts', name]));
      const area = own.area ?? row?.areaMm2;
      const length = own.length === undefined ? row?.lengthMm : spanOf(own.length);
      const width = own.width === undefined ? row?.widthMm : spanOf(own.width);
      const cut = own.cut ?? row?.cut;
      if (cut === undefined) throw missing('cut', 'a cut such as side, as this row is your own');
      if (area === undefined) throw missing('area', 'an area such as "20-22 ft2", as this row is your own');
      if (length === undefined) throw missing('length', 'least and most in mm, as this row is your own');
      if (width === undefined) throw missing('width', 'least and most in mm, as this row is your own');
      return { name, cut, areaMm2: area, lengthMm: length, widthMm: width, source: own.source ?? OWN };
    },
  );
}

function spanOf([min, max]: readonly [number, number]): Span {
  return { min, max };
}

export function readGrades(usual: readonly GradeRule[], written: Rows<WrittenGrade>): GradeRule[] {
  return merge(
    usual,
    written,
    ({ grade }) => grade,
    (grade, { usable, source }): GradeRule => ({
      grade,
      usableShare: { min: shareOfPercent(usable[0]), max: shareOfPercent(usable[1]) },
      source: source ?? OWN,
    }),
  );
}

export function readFigures(
  usual: readonly Figure[],
  written: Rows<WrittenFigure>,
  where: WhereOf,
): Figure[] {
  const names = usual.map(({ name }) => name);
  const strange = Object.keys(written).find((name) => !names.includes(name));
  if (strange !== undefined) {
    const near = nearestWord(strange, names);
    const params = { found: quoteValue(strange), ...(near === undefined ? {} : { near }) };
    throw leatherError('no-such-figure', params, where(['figures', strange]));
  }
  return usual.map((figure) => {
    const own = written[figure.name];
    if (own === undefined) return figure;
    if (typeof own === 'number') return { ...figure, value: { min: own, max: own }, source: OWN };
    if (own.unit !== undefined && own.unit !== figure.unit) {
      const params = { figure: quoteValue(figure.name), found: own.unit, unit: figure.unit };
      throw leatherError('figure-unit', params, where(['figures', figure.name, 'unit']));
    }
    if (own.from > own.to) {
      const params = { figure: quoteValue(figure.name), from: own.from, to: own.to };
      throw leatherError('figure-reversed', params, where(['figures', figure.name]));
    }
    return { ...figure, value: { min: own.from, max: own.to }, source: own.source ?? OWN };
  });
}

export function readOffers(
  written: readonly WrittenOffer[],
  cuts: readonly CutSizeRule[],
  grades: readonly GradeRule[],
  where: WhereOf,
): Offer[] {
  return written.map(({ area, source, ...offer }, i) => {
    refuseUnknown(
      'cut',
      offer.cut,
      cuts.map(({ name }) => name),
      () => where(['offers', i, 'cut']),
    );
    if (offer.grade !== undefined) {
      refuseUnknown(
        'grade',
        offer.grade,
        grades.map(({ grade }) => grade),
        () => where(['offers', i, 'grade']),
      );
    }
    return definedOnly({ ...offer, areaMm2: area, source: source ?? OWN });
  });
}

function refuseUnknown(
  what: 'cut' | 'grade',
  found: string,
  names: readonly string[],
  place: () => ReturnType<WhereOf>,
): void {
  if (names.includes(found)) return;
  throw leatherError('offer-unknown', { what, found: quoteValue(found), known: names.join(', ') }, place());
}

/** The way back. */
export function writeGoods(rule: GoodsRule) {
  return definedOnly({
    ...writeWants(rule),
    ...(rule.thickness === undefined ? { thickness: ANY_WORD } : {}),
    ...(rule.zones === undefined ? { zones: ANY_WORD } : {}),
    alsoCalled: rule.alsoCalled.length === 0 ? undefined : rule.alsoCalled,
    source: rule.source,
  });
}

export function writeWants({ thickness, tannages, tempers, finish, zones, needs }: LeatherWants) {
  return definedOnly({
    thickness: thickness && writeThickness(thickness),
    tannage: tannages,
    temper: tempers,
    finish,
    zones,
    needs,
  });
}

export function writeTannage({ alsoCalled, meets, source }: TannageRule) {
  return definedOnly({ alsoCalled: alsoCalled.length === 0 ? undefined : alsoCalled, meets, source });
}

export function writeCut({ cut, areaMm2, lengthMm, widthMm, source }: CutSizeRule) {
  return {
    cut,
    area: writeAreaSpan(areaMm2),
    length: [lengthMm.min, lengthMm.max],
    width: [widthMm.min, widthMm.max],
    source,
  };
}

export function writeGrade({ usableShare, source }: GradeRule) {
  const percent = (share: number): number => Math.round(share * 1e6) / 1e4;
  return { usable: [percent(usableShare.min), percent(usableShare.max)], source };
}

export function writeFigure({ value, unit, source }: Figure) {
  return { from: value.min, to: value.max, unit, source };
}

export function writeOffer(offer: Offer) {
  const { areaMm2, price, thickness, ...rest } = offer;
  const written: Record<string, unknown> = definedOnly({
    name: rest.name,
    cut: rest.cut,
    tannage: rest.tannage,
    temper: rest.temper,
    finish: rest.finish,
    colour: rest.colour,
    thickness: writeRange(thickness),
    grade: rest.grade,
    area: areaMm2 && writeAreaSpan(areaMm2),
    price: writePrice(price),
    per: rest.per,
    source: rest.source,
  });
  return written;
}

function writeRange(thickness: ThicknessRange | undefined): string | number | undefined {
  return thickness && writeThickness(thickness);
}

function writePrice(price: Money): string {
  return formatMoney(price);
}
