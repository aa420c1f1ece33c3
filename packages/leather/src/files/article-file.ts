import type { Article } from '../model/order.js';
import { definedOnly } from './defined-only.js';
import { openFile } from './envelope.js';
import type { FileFormat } from './envelope.js';
import { placeOf } from './explain.js';
import { validateArticle } from './order-names.js';
import { ARTICLE_FORMAT, articleFileSchema, readArticleLeathers } from './schema/written-order.js';
import { writeArticleBody, writeLeathers, writeYaml } from './write-written.js';
import { YAML_SYNTAX } from './text/yaml-text.js';

const format: FileFormat<typeof articleFileSchema> = {
  kind: 'article',
  syntax: YAML_SYNTAX,
  schema: articleFileSchema,
  upgrades: [],
};

/**
 * Reads an article file (`*.article.yaml`).
 * @throws LeatherError
 */
export function parseArticle(text: string, options: { readonly file: string }): Article {
  const opened = openFile(text, options.file, format);
  const { format: _, leathers: written, ...rest } = opened.value;
  const leathers = readArticleLeathers(written);
  const names = new Set(leathers.map(({ name }) => name));
  validateArticle(rest, names, [], (path) => placeOf(opened, path));
  return { ...rest, leathers };
}

/** The article's file. Quantities are written as bare numbers of mm and degrees. */
export function writeArticle(article: Article): string {
  const { leathers, lastYield, notes, ...body } = article;
  const written = definedOnly({
    format: ARTICLE_FORMAT,
    ...writeArticleBody(body),
    leathers: writeLeathers(leathers),
    lastYield,
    notes,
  });
  return writeYaml(written);
}
