import { definedOnly } from './defined-only.js';
import { openFile } from './envelope.js';
import type { FileFormat } from './envelope.js';
import { placeOf } from './explain.js';
import { isArticleReference } from './order-in-writing.js';
import type { OrderFile, WrittenCutting } from './order-in-writing.js';
import { refuseRepeatedArticles, validateArticle } from './order-names.js';
import { ORDER_FORMAT, orderFileSchema, readOrderLeathers } from './schema/written-order.js';
import { readPatterns } from './schema/written-pattern.js';
import type { WrittenOrder } from './schema/written-order.js';
import { writeOrderFields, writeYaml } from './write-written.js';
import { YAML_SYNTAX } from './text/yaml-text.js';

const format: FileFormat<typeof orderFileSchema> = {
  kind: 'order',
  syntax: YAML_SYNTAX,
  schema: orderFileSchema,
  upgrades: [],
};

/**
 * Reads an order file (`*.order.yaml`). Articles that it takes from files are references still; see `completeOrder`.
 * @throws LeatherError
 */
export function parseOrder(text: string, options: { readonly file: string }): OrderFile {
  const opened = openFile(text, options.file, format);
  const order = readOrder(opened.value);
  const where = (path: readonly (string | number)[]) => placeOf(opened, path);
  const leathers = new Set(order.leathers.map(({ name }) => name));
  refuseRepeatedArticles(
    order.articles.map((article) => (isArticleReference(article) ? undefined : article)),
    where,
  );
  order.articles.forEach((article, i) => {
    if (!isArticleReference(article)) validateArticle(article, leathers, ['articles', i], where);
  });
  return order;
}

function readOrder(written: WrittenOrder): OrderFile {
  const { table, cutting } = written;
  return definedOnly({
    name: written.name,
    version: written.version,
    date: written.date,
    articles: written.articles,
    leathers: readOrderLeathers(written.leathers),
    patterns: readPatterns(written.patterns),
    table: table && { widthMm: table.width, lengthMm: table.length },
    useFrom: written.useFrom,
    mode: written.mode,
    cutting: readCutting(cutting),
    keepMm: written.keep,
    threads: written.threads,
    hardware: written.hardware,
    hours: written.hours,
    notes: written.notes,
  });
}

function readCutting(written: WrittenOrder['cutting']): WrittenCutting {
  if (typeof written === 'string') return { method: written };
  return definedOnly({
    method: written.method,
    gapMm: written.gap,
    edgeMm: written.edge,
    voidMm: written.void,
    kerfMm: written.kerf,
  });
}

/** The order's file. Quantities are written as bare numbers of mm and degrees; what equals a default is written too. */
export function writeOrder(order: OrderFile): string {
  return writeYaml({ format: ORDER_FORMAT, ...writeOrderFields(order) });
}
