import { Document, isPair, isScalar, visit } from 'yaml';
import type { ToStringOptions } from 'yaml';
import type { ThicknessRange } from '../model/marks.js';
import type {
  ArticleBody,
  ArticleLeather,
  DirectionWish,
  HardwareLine,
  OrderArticle,
  OrderLeather,
  OrderPiece,
  PieceSource,
  Seam,
  ThreadLine,
} from '../model/order.js';
import type { LineLook, PagesReading, PatternReading } from '../model/pattern-reading.js';
import { formatMoney } from '../units/money.js';
import { writePageNumbers } from '../units/page-numbers.js';
import { definedOnly } from './defined-only.js';
import { isArticleReference } from './order-in-writing.js';
import { writeWants } from './workshop-rules.js';
import { writeStitch } from './schema/written-stitch.js';
import type { ArticleReference, OrderFile } from './order-in-writing.js';

/** The way back from the model to what people write. Every group keeps its keys in the order of its schema. */

const YAML_STYLE: ToStringOptions = { indent: 2, lineWidth: 100, minContentWidth: 40 };

/** Characters that a list or group of plain values may take on one line. */
const SHORT = 80;

/** YAML as a person would write it: short lists and groups of plain values on one line, all else indented. */
export function writeYaml(value: Written): string {
  return toYamlText(yamlDocument(value));
}

/** The same as a document, for whoever has comments to add; `toYamlText` makes it text. */
export function yamlDocument(value: Written): Document {
  // Rows that share a list are written out: a file full of "*" aliases is nothing that a person edits.
  const document = new Document(value, { aliasDuplicateObjects: false });
  visit(document, {
    Collection: (_, node, path) => {
      const isPlain = node.items.every((item) => isScalar(isPair(item) ? item.value : item));
      node.flow = path.length > 1 && isPlain && JSON.stringify(node).length <= SHORT;
    },
  });
  return document;
}

export function toYamlText(document: Document): string {
  return document.toString(YAML_STYLE);
}

type Written = Readonly<Record<string, unknown>>;

export function writeArticleBody(body: ArticleBody): Written {
  return definedOnly({
    name: body.name,
    goods: body.goods,
    wants: body.wants && writeWants(body.wants),
    pieces: body.pieces.map(writePiece),
    beside: orNone(body.beside),
    hardware: orNone(body.hardware.map(writeHardware)),
    threads: orNone(body.threads.map(writeThread)),
    stitch: body.stitch && writeStitch(body.stitch),
    hours: body.hours,
  });
}

function orNone<Entry>(list: readonly Entry[]): readonly Entry[] | undefined {
  return list.length === 0 ? undefined : list;
}

export function writeThickness(range: ThicknessRange): string | number {
  return range.minMm === range.maxMm ? range.minMm : `${range.minMm}-${range.maxMm} mm`;
}

export function writeHardware(line: HardwareLine): Written {
  const price = line.price && formatMoney(line.price);
  return definedOnly({ name: line.name, count: line.count, price });
}

export function writeThread(line: ThreadLine): Written {
  const price = line.price && formatMoney(line.price);
  return definedOnly({ name: line.name, thickness: line.thicknessMm, length: line.lengthMm, price });
}

export function writeDirection(direction: DirectionWish): Written {
  return {
    rule: direction.rule,
    tolerance: direction.toleranceDeg,
    halfTurn: direction.halfTurn,
    angle: direction.angleDeg,
  };
}

function writePiece(piece: OrderPiece): Written {
  const { pair, thickness, direction } = piece;
  return definedOnly({
    name: piece.name,
    leather: piece.leather,
    part: piece.part,
    ...writeSource(piece.from),
    count: piece.count,
    mirrored: piece.mirrored,
    pair: pair && { tolerance: pair.toleranceDeg, distance: pair.distanceMm },
    looks: piece.looks,
    load: piece.bearsLoad,
    zones: piece.zones,
    side: piece.side,
    direction: direction && writeDirection(direction),
    arrow: piece.arrowDeg,
    face: piece.face,
    thickness: thickness && writeThickness(thickness),
    tooThick: piece.tooThick,
    tooled: piece.isTooled,
    layers: piece.layers,
    margin: piece.marginMm,
    allowance: piece.allowanceMm,
    seams: orNone(piece.seams.map(writeSeam)),
    stitch: piece.stitch && writeStitch(piece.stitch),
    priority: piece.priority,
    lane: piece.inLane,
  });
}

function writeSeam({ line, to, covers }: Seam): Written {
  return definedOnly({ line, to: `${to.piece}/${to.line}`, covers });
}

function writeSource(from: PieceSource): Written {
  switch (from.kind) {
    case 'pattern':
      return { pattern: from.file, piece: from.piece };
    case 'strap':
      return { strap: writeStrap(from.strap) };
    case 'rectangle':
      return { rectangle: { width: from.widthMm, length: from.lengthMm, corners: from.cornerRadiusMm } };
    case 'disc':
      return { disc: { diameter: from.diameterMm } };
  }
}

function writeStrap(strap: Extract<PieceSource, { kind: 'strap' }>['strap']): Written {
  const { holes, slot } = strap;
  return definedOnly({
    width: strap.widthMm,
    length: strap.lengthMm,
    holeEnd: strap.holeEnd,
    buckleEnd: strap.buckleEnd,
    holes: holes && {
      count: holes.count,
      spacing: holes.spacingMm,
      diameter: holes.diameterMm,
      fromEnd: holes.fromEndMm,
    },
    slot: slot && { width: slot.widthMm, length: slot.lengthMm, fromEnd: slot.fromEndMm },
  });
}

function writeQualities(leather: ArticleLeather): Written {
  const { tannage, temper, finish, colour, thickness } = leather;
  return definedOnly({ tannage, temper, finish, colour, thickness: thickness && writeThickness(thickness) });
}

export function writeLeathers(leathers: readonly ArticleLeather[]): Written {
  return Object.fromEntries(leathers.map((leather) => [leather.name, writeQualities(leather)]));
}

function writeOrderLeather(leather: OrderLeather): Written {
  return definedOnly({
    ...writeQualities(leather),
    hides: orNone(leather.hides),
    preparation: leather.preparation && writePreparation(leather.preparation),
  });
}

function writePreparation(preparation: NonNullable<OrderLeather['preparation']>): Written {
  const { name, condition, dye, dyeBase, coats, thinnerParts, finish, finishCoats, bothSides } = preparation;
  const { thinner: thinnerName, resist } = preparation;
  return definedOnly({
    name,
    condition,
    dye,
    dyeBase,
    coats,
    thinner: thinnerParts,
    thinnerName,
    resist,
    finish,
    finishCoats,
    bothSides,
  });
}

function writePattern(reading: PatternReading): Written {
  const { dpi, scale, knownLength, units, pages, unfold, sizes, roles } = reading;
  return definedOnly({
    dpi,
    scale,
    knownLength: knownLength && { element: knownLength.element, length: knownLength.mm },
    units,
    pages: pages && writePages(pages),
    unfold,
    sizes: orNone((sizes ?? []).map((rule) => ({ size: rule.size, ...writeLook(rule) }))),
    roles: orNone(roles.map((rule) => ({ role: rule.role, ...writeLook(rule) }))),
  });
}

function writePages({ take, join, columns, order, overlapMm }: PagesReading): Written {
  return definedOnly({ take: take && writePageNumbers(take), join, columns, order, overlap: overlapMm });
}

function writeLook({ layer, label, colour, dashed, filled, widthMm }: LineLook): Written {
  return definedOnly({ layer, label, colour, dashed, filled, width: widthMm });
}

function writeDemand(article: OrderArticle | ArticleReference): Written {
  const { sets, value, priority, keepTogether } = article;
  return definedOnly({ sets, for: article.for, value, priority, keepTogether });
}

function writeOrderArticle(article: OrderArticle | ArticleReference): Written {
  if (isArticleReference(article)) return { file: article.file, ...writeDemand(article) };
  const { name, goods, ...rest } = writeArticleBody(article);
  return { name, goods, ...writeDemand(article), ...rest };
}

export function writeOrderFields(order: OrderFile): Written {
  const { table, cutting } = order;
  const named = (entries: readonly (readonly [string, Written])[]) =>
    entries.length === 0 ? undefined : Object.fromEntries(entries);
  return definedOnly({
    name: order.name,
    version: order.version,
    date: order.date,
    articles: order.articles.map(writeOrderArticle),
    leathers: Object.fromEntries(order.leathers.map((leather) => [leather.name, writeOrderLeather(leather)])),
    patterns: named(order.patterns.map((reading) => [reading.file, writePattern(reading)] as const)),
    table: table && { width: table.widthMm, length: table.lengthMm },
    useFrom: order.useFrom,
    mode: order.mode,
    cutting: definedOnly({
      method: cutting.method,
      gap: cutting.gapMm,
      edge: cutting.edgeMm,
      void: cutting.voidMm,
      kerf: cutting.kerfMm,
    }),
    keep: order.keepMm,
    threads: orNone(order.threads.map(writeThread)),
    hardware: orNone(order.hardware.map(writeHardware)),
    hours: order.hours,
    notes: order.notes,
  });
}
