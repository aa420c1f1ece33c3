import { Composer, Lexer, LineCounter, Parser, isAlias, isMap, isPair, isScalar, isSeq, visit } from 'yaml';
import type { Document, ParsedNode, YAMLError } from 'yaml';
import { leatherError } from '../../words/refuse.js';
import { quoteValue } from '../../words/sentence.js';
import type { LeatherError } from '../../leather-error.js';
import { DEEPEST_NESTING, LONGEST_YAML, isReservedKey } from './text-tree.js';
import type { KeyPath, TextSyntax, TextTree } from './text-tree.js';

/** Nodes that aliases may add over all: enough for a handful of repeated groups, far from a bomb. */
const MOST_ALIASES = 100;

/** The parser keeps about two tokens a level on its stack. */
const STACK_PER_LEVEL = 3;

/**
 * One YAML 1.2 document (core schema; JSON is YAML). Refused with the line: broken text, keys that stand twice,
 * several documents, unknown tags, deep nesting, a text that aliases would blow up.
 */
export function parseYamlText(text: string, file: string): TextTree {
  const lines = new LineCounter();
  const document = composeOne(text, lines, file);
  const lineAt = (offset: number) => lines.linePos(offset).line;
  const problem = document.errors[0] ?? document.warnings[0];
  if (problem !== undefined) throw yamlProblem(problem, file, lineAt);
  refuseOddKeysAndBombs(document, file, lineAt);
  return {
    value: document.toJS({ maxAliasCount: MOST_ALIASES }) as unknown,
    lineOf: (path) => lineOf(document, path, lineAt),
  };
}

type ParsedDocument = Document.Parsed<ParsedNode>;

function composeOne(text: string, lines: LineCounter, file: string): ParsedDocument {
  lines.addNewLine(0);
  const parser = new Parser(lines.addNewLine);
  const composer = new Composer({
    version: '1.2',
    schema: 'core',
    merge: false,
    uniqueKeys: true,
    strict: true,
  });
  const documents: ParsedDocument[] = [];
  const take = (batch: Iterable<ParsedDocument>) => {
    for (const document of batch) documents.push(document);
  };
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) take(composer.next(token) as Iterable<ParsedDocument>);
    if (parser.stack.length > DEEPEST_NESTING * STACK_PER_LEVEL) {
      const place = { file, line: lines.lineStarts.length };
      throw leatherError('too-deep', { limit: DEEPEST_NESTING }, place);
    }
  }
  for (const token of parser.end()) take(composer.next(token) as Iterable<ParsedDocument>);
  take(composer.end(true, text.length) as Iterable<ParsedDocument>);
  if (documents.length > 1) throw leatherError('several-documents', {}, { file });
  return documents[0]!;
}

function yamlProblem(problem: YAMLError, file: string, lineAt: (offset: number) => number): LeatherError {
  const place = { file, line: lineAt(problem.pos[0]) };
  const words = problem.message.split('\n')[0]!.replace(/ at line \d+.*$/, '');
  if (problem.code === 'DUPLICATE_KEY') return leatherError('duplicate-key', { key: 'on this line' }, place);
  return leatherError('not-yaml', { problem: lowerFirst(words.replace(/[.:]$/, '')) }, place);
}

function lowerFirst(words: string): string {
  return words.slice(0, 1).toLowerCase() + words.slice(1);
}

/** Walks the document once: reserved and non-text keys, and how much its aliases would add if written out. */
function refuseOddKeysAndBombs(
  document: ParsedDocument,
  file: string,
  lineAt: (offset: number) => number,
): void {
  let aliases = 0;
  visit(document, {
    Alias: (_, alias) => {
      aliases += 1;
      if (aliases > MOST_ALIASES) throw leatherError('too-many-aliases', { limit: MOST_ALIASES }, { file });
      if (alias.resolve(document) !== undefined) return;
      const place = { file, ...(alias.range ? { line: lineAt(alias.range[0]) } : {}) };
      throw leatherError('not-yaml', { problem: `no anchor &${alias.source} stands above its alias` }, place);
    },
    Pair: (_, pair) => {
      const key: unknown = pair.key;
      if (!isScalar(key)) return;
      const line = key.range ? lineAt(key.range[0]) : undefined;
      if (isReservedKey(String(key.value))) {
        const place = { file, ...(line === undefined ? {} : { line }) };
        throw leatherError('reserved-key', { key: quoteValue(String(key.value)) }, place);
      }
    },
  });
  if (aliases > 0) measureExpansion(document, file);
}

/** Nodes of the document with every alias written out, at most. */
const MOST_NODES = 200_000;

function measureExpansion(document: ParsedDocument, file: string): void {
  const sizes = new Map<unknown, number>();
  const size = (node: unknown): number => {
    const known = sizes.get(node);
    if (known !== undefined) return known;
    // An alias to a part that holds the alias itself has no end.
    sizes.set(node, Infinity);
    const sum = 1 + partsOf(node, document).reduce((total: number, part) => total + size(part), 0);
    sizes.set(node, sum);
    return sum;
  };
  if (size(document.contents) > MOST_NODES) {
    throw leatherError('too-many-aliases', { limit: MOST_ALIASES }, { file });
  }
}

function partsOf(node: unknown, document: ParsedDocument): readonly unknown[] {
  if (isAlias(node)) return [node.resolve(document)];
  if (isMap(node) || isSeq(node)) return node.items;
  if (isPair(node)) return [node.key, node.value];
  return [];
}

function lineOf(
  document: ParsedDocument,
  path: KeyPath,
  lineAt: (offset: number) => number,
): number | undefined {
  let node: unknown = document.contents;
  let offset = 0;
  for (const step of path) {
    if (isAlias(node)) node = node.resolve(document);
    if (isMap(node)) {
      const pair = node.items.find((item) => isScalar(item.key) && String(item.key.value) === String(step));
      if (pair === undefined) break;
      if (isScalar(pair.key) && pair.key.range) offset = pair.key.range[0];
      node = pair.value;
    } else if (isSeq(node)) {
      node = node.items[Number(step)];
      const range = (node as ParsedNode | undefined)?.range;
      if (range) offset = range[0];
    } else break;
  }
  return lineAt(offset);
}

export const YAML_SYNTAX: TextSyntax = { longest: LONGEST_YAML, read: parseYamlText };
