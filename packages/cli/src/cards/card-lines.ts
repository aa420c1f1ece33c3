import { dirname, isAbsolute, join, resolve } from 'node:path';
import { ALL_LEATHERS, parseArticle, quoteValue } from '@hidebound/leather';
import type { Article, CardLine } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import type { OptionValues } from '../command-context.js';
import { numberOption, textOption, textsOption } from '../command-context.js';
import { readText } from '../io/load-files.js';
import { pathFrom } from '../io/path-from.js';

/** A line of a card with the article's own path. */
export interface LoadedLine extends CardLine {
  readonly path: string;
}

/** The articles that are ordered together: the one that was named, then those that join it. */
export function cardLines(path: string, options: OptionValues, orderFolder: string): LoadedLine[] {
  const first = { path, sets: numberOption(options, 'sets') ?? 1, for: textOption(options, 'for') };
  return [first, ...textsOption(options, 'join').map(readJoin)].map(({ path: file, sets, for: who }) => {
    const article = parseArticle(readText(file, 'article'), { file });
    const isBeside = resolve(dirname(file)) === resolve(orderFolder);
    return {
      path: file,
      article: isBeside ? article : movedTo(orderFolder, article, file),
      sets,
      ...(who === undefined ? {} : { for: who }),
      ...(isBeside ? { file: pathFrom(orderFolder, file) } : {}),
    };
  });
}

interface AskedLine {
  readonly path: string;
  readonly sets: number;
  readonly for: string | undefined;
}

/** A name may hold a colon, and a path too: the file ends with its usual ending. */
const JOIN = /^(.+?\.(?:ya?ml|json))(?::(\d+))?(?::(.+))?$/i;
const MOST_SETS = 10_000;

function readJoin(text: string): AskedLine {
  const match = JOIN.exec(text);
  const sets = Number(match?.[2] ?? 1);
  if (match === null || sets < 1 || sets > MOST_SETS) {
    throw new CliError(
      'bad-use',
      `--join can't be ${quoteValue(text)}; write an article file, how many sets, and for whom, such as pump-strap.article.yaml:6:"a club".`,
    );
  }
  return { path: match[1]!, sets, for: match[3] };
}

/** Patterns are found from where the order is. */
function movedTo(folder: string, article: Article, articlePath: string): Article {
  const pieces = article.pieces.map((piece) => {
    if (piece.from.kind !== 'pattern' || isAbsolute(piece.from.file)) return piece;
    const file = pathFrom(folder, join(dirname(articlePath), piece.from.file));
    return { ...piece, from: { ...piece.from, file } };
  });
  return { ...article, pieces };
}

/** Colours by leather, from "brown" and "body=brown". */
export function cardColours(
  texts: readonly string[],
  lines: readonly CardLine[],
): ReadonlyMap<string, string> {
  const known = new Set(lines.flatMap(({ article }) => article.leathers.map(({ name }) => name)));
  return new Map(
    texts.map((text): [string, string] => {
      const at = text.indexOf('=');
      if (at < 0) return [ALL_LEATHERS, text.trim()];
      const leather = text.slice(0, at).trim();
      if (known.has(leather)) return [leather, text.slice(at + 1).trim()];
      throw new CliError(
        'bad-use',
        `There is no leather ${quoteValue(leather)} to give a colour; the articles have ${[...known].map(quoteValue).join(', ')}.`,
      );
    }),
  );
}
