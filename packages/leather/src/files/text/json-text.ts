import { quoteValue } from '../../words/sentence.js';
import { leatherError } from '../../words/refuse.js';
import { DEEPEST_NESTING, LONGEST_JSON, isReservedKey } from './text-tree.js';
import type { KeyPath, TextSyntax, TextTree } from './text-tree.js';

/**
 * Strict JSON (RFC 8259) that refuses what JSON.parse lets through or says badly: a key that stands twice, deep
 * nesting, reserved keys; each with the line. Positions are not kept while reading: a line is found by reading anew.
 */
export function parseJsonText(text: string, file: string): TextTree {
  const value = new JsonReader(text, file).readAll();
  return { value, lineOf: (path) => new JsonReader(text, file, path).findLine() };
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;

/** A string that the end of the text breaks off. */
const REST_OF_STRING = /"(?:[^"\\\u0000-\u001f]|\\.)*\\?[\r\n]*$/y;
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const SPACE = /[ \t\n\r]*/y;

/** Reads one text once. Its position is its only state. */
class JsonReader {
  private at = 0;
  private depth = 0;
  /** Offset of the deepest step of the wanted path that was met. */
  private found = 0;

  constructor(
    private readonly text: string,
    private readonly file: string,
    private readonly wanted: KeyPath | undefined = undefined,
  ) {}

  readAll(): unknown {
    this.skipSpace();
    const value = this.readValue(this.wanted === undefined ? -1 : 0);
    this.skipSpace();
    if (this.at < this.text.length) throw this.unexpected('the end of the file');
    return value;
  }

  findLine(): number {
    this.readAll();
    return this.lineAt(this.found);
  }

  /** `matched`: how many steps of the wanted path lead here; -1 off the path. */
  private readValue(matched: number): unknown {
    const first = this.text[this.at];
    if (first === '{') return this.readGroup(matched);
    if (first === '[') return this.readList(matched);
    if (first === '"') return this.readString('a value');
    if (first === '-' || (first !== undefined && first >= '0' && first <= '9')) return this.readNumber();
    for (const [word, value] of WORDS) {
      if (this.text.startsWith(word, this.at)) {
        this.at += word.length;
        return value;
      }
    }
    throw this.unexpected('a value');
  }

  private readGroup(matched: number): Record<string, unknown> {
    this.enter();
    const group = Object.create(null) as Record<string, unknown>;
    if (this.closes('}')) return group;
    for (;;) {
      this.skipSpace();
      const start = this.at;
      const key = this.readString('a key in double quotes');
      this.admitKey(group, key, start);
      const next = this.step(matched, key, start);
      this.skipSpace();
      this.expect(':');
      this.skipSpace();
      group[key] = this.readValue(next);
      if (this.closes('}')) return group;
      this.expect(',');
    }
  }

  private readList(matched: number): unknown[] {
    this.enter();
    const list: unknown[] = [];
    if (this.closes(']')) return list;
    for (;;) {
      this.skipSpace();
      list.push(this.readValue(this.step(matched, list.length, this.at)));
      if (this.closes(']')) return list;
      this.expect(',');
    }
  }

  private step(matched: number, key: string | number, offset: number): number {
    if (matched < 0 || this.wanted?.[matched] !== key) return -1;
    this.found = offset;
    return matched + 1;
  }

  private admitKey(group: object, key: string, start: number): void {
    const code = isReservedKey(key)
      ? 'reserved-key'
      : Object.hasOwn(group, key)
        ? 'duplicate-key'
        : undefined;
    if (code === undefined) return;
    throw leatherError(code, { key: quoteValue(key) }, { file: this.file, line: this.lineAt(start) });
  }

  private readString(wanted: string): string {
    STRING.lastIndex = this.at;
    const match = STRING.exec(this.text)?.[0];
    if (match === undefined) throw this.unexpected(this.text[this.at] === '"' ? 'a finished string' : wanted);
    this.at += match.length;
    return match.includes('\\') ? (JSON.parse(match) as string) : match.slice(1, -1);
  }

  private readNumber(): number {
    NUMBER.lastIndex = this.at;
    const match = NUMBER.exec(this.text)?.[0];
    if (match === undefined) throw this.unexpected('a number');
    this.at += match.length;
    return Number(match);
  }

  private enter(): void {
    this.at += 1;
    this.depth += 1;
    if (this.depth > DEEPEST_NESTING) {
      throw leatherError(
        'too-deep',
        { limit: DEEPEST_NESTING },
        { file: this.file, line: this.lineAt(this.at) },
      );
    }
  }

  private closes(bracket: string): boolean {
    this.skipSpace();
    if (this.text[this.at] !== bracket) return false;
    this.at += 1;
    this.depth -= 1;
    return true;
  }

  private expect(mark: string): void {
    if (this.text[this.at] !== mark) throw this.unexpected(`"${mark}"`);
    this.at += 1;
  }

  private skipSpace(): void {
    SPACE.lastIndex = this.at;
    this.at += SPACE.exec(this.text)![0].length;
  }

  private lineAt(offset: number): number {
    let line = 1;
    for (let i = this.text.indexOf('\n'); i >= 0 && i < offset; i = this.text.indexOf('\n', i + 1)) line += 1;
    return line;
  }

  private unexpected(wanted: string) {
    REST_OF_STRING.lastIndex = this.at;
    if (this.at > 0 && (this.at >= this.text.length || REST_OF_STRING.test(this.text)))
      return leatherError('cut-off', {}, { file: this.file, line: this.lineAt(this.at) });
    const rest = this.text
      .slice(this.at, this.at + 12)
      .split('\n')[0]!
      .replaceAll('"', "'");
    const found =
      this.at >= this.text.length ? 'the end of the file' : quoteValue(rest === '' ? 'a new line' : rest);
    return leatherError('not-json', { found, wanted }, { file: this.file, line: this.lineAt(this.at) });
  }
}

const WORDS = [
  ['true', true],
  ['false', false],
  ['null', null],
] as const;

export const JSON_SYNTAX: TextSyntax = { longest: LONGEST_JSON, read: parseJsonText };
