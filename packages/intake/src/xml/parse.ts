import { SaxesParser } from 'saxes';
import type { SaxesTagPlain } from 'saxes';
import { IntakeError } from '../error.js';
import { MAX_DEPTH, MAX_ELEMENTS } from '../limits.js';
import { countedEntities, readEntities } from './entities.js';
import type { XmlDocument, XmlElement, XmlNode } from './node.js';

export const SVG_NAMESPACE = 'http://www.w3.org/2000/svg';

/** Namespaces whose attributes the reader looks at, and the prefix by which it calls them. */
const KNOWN_PREFIXES: Readonly<Record<string, string>> = {
  'http://www.w3.org/1999/xlink': 'xlink',
  'http://www.w3.org/XML/1998/namespace': 'xml',
  'http://www.inkscape.org/namespaces/inkscape': 'inkscape',
  'http://sodipodi.sourceforge.net/DTD/sodipodi-0.dtd': 'sodipodi',
  'http://www.serif.com/': 'serif',
};

/** Prefixes that are taken at their usual meaning when the file forgets to declare them. */
const USUAL_PREFIXES: Readonly<Record<string, string>> = {
  svg: SVG_NAMESPACE,
  ...Object.fromEntries(Object.entries(KNOWN_PREFIXES).map(([uri, prefix]) => [prefix, uri])),
};

/** A file that ends with the root's end tag is whole, whatever is wrong within it. */
const ENDS_WITH_ROOT = /<\/(?:\w+:)?svg\s*>\s*$/;

type Scope = ReadonlyMap<string, string>;

interface OpenElement extends XmlElement {
  readonly children: XmlNode[];
}

interface TreeState {
  readonly file: string;
  readonly open: { readonly element: OpenElement; readonly scope: Scope }[];
  readonly instructions: string[];
  root: XmlElement | undefined;
  elements: number;
  tagLine: number;
}

/**
 * A small tree of the XML text. Throws `not-well-formed`, `truncated-file`, `too-deep`, `too-many-elements`,
 * `external-entity` or `entity-bomb`, each with its line.
 */
export function parseXml(text: string, file: string): XmlDocument {
  const state: TreeState = { file, open: [], instructions: [], root: undefined, elements: 0, tagLine: 1 };
  const parser = new SaxesParser({ xmlns: false, position: true });
  let isAtEnd = false;
  parser.on('doctype', (doctype) => {
    countedEntities(readEntities(doctype, file), file, parser.ENTITIES);
  });
  parser.on('processinginstruction', ({ target }) => state.instructions.push(target));
  parser.on('opentagstart', () => {
    state.tagLine = parser.line;
    if (state.open.length >= MAX_DEPTH) {
      throw new IntakeError('too-deep', { limit: MAX_DEPTH }, { file, line: parser.line });
    }
  });
  parser.on('opentag', (tag) => openElement(state, tag));
  parser.on('closetag', () => void state.open.pop());
  parser.on('text', (chunk) => addText(state, chunk));
  parser.on('cdata', (chunk) => addText(state, chunk));
  parser.on('error', (error) => {
    throw xmlError(error.message, isAtEnd && !ENDS_WITH_ROOT.test(text.slice(-100)), state, parser.line);
  });
  parser.write(text);
  isAtEnd = true;
  parser.close();
  if (state.root === undefined) throw new IntakeError('not-svg', {}, { file });
  return { root: state.root, instructions: state.instructions };
}

function openElement(state: TreeState, tag: SaxesTagPlain): void {
  state.elements++;
  if (state.elements > MAX_ELEMENTS) {
    throw new IntakeError(
      'too-many-elements',
      { limit: MAX_ELEMENTS },
      { file: state.file, line: state.tagLine },
    );
  }
  const parent = state.open.at(-1);
  const scope = scopeOf(tag.attributes, parent?.scope);
  const { name, isSvg } = elementNameIn(tag.name, scope);
  const element: OpenElement = {
    kind: 'element',
    name,
    isSvg,
    attributes: attributesIn(tag.attributes, scope),
    children: [],
    parent: parent?.element,
    line: state.tagLine,
  };
  parent?.element.children.push(element);
  state.root ??= element;
  state.open.push({ element, scope });
}

function addText(state: TreeState, text: string): void {
  const parent = state.open.at(-1)?.element;
  if (parent !== undefined && text !== '') parent.children.push({ kind: 'text', text, parent });
}

function scopeOf(attributes: Record<string, string>, outer: Scope | undefined): Scope {
  let scope: Map<string, string> | undefined;
  for (const name in attributes) {
    if (name !== 'xmlns' && !name.startsWith('xmlns:')) continue;
    scope ??= new Map(outer);
    scope.set(name === 'xmlns' ? '' : name.slice('xmlns:'.length), attributes[name]!.trim());
  }
  return scope ?? outer ?? new Map();
}

/** A file without any namespace at all is taken for SVG: hand-written files and snippets often forget it. */
function elementNameIn(raw: string, scope: Scope): { name: string; isSvg: boolean } {
  const colon = raw.indexOf(':');
  const prefix = colon < 0 ? '' : raw.slice(0, colon);
  const uri = scope.get(prefix) ?? USUAL_PREFIXES[prefix] ?? (prefix === '' ? SVG_NAMESPACE : '');
  if (uri === SVG_NAMESPACE) return { name: raw.slice(colon + 1), isSvg: true };
  return { name: raw, isSvg: false };
}

function attributesIn(attributes: Record<string, string>, scope: Scope): Map<string, string> {
  const result = new Map<string, string>();
  for (const raw in attributes) {
    const colon = raw.indexOf(':');
    if (colon < 0) {
      result.set(raw, attributes[raw]!);
      continue;
    }
    const prefix = raw.slice(0, colon);
    const known = KNOWN_PREFIXES[scope.get(prefix) ?? USUAL_PREFIXES[prefix] ?? ''];
    result.set(`${known ?? prefix}${raw.slice(colon)}`, attributes[raw]!);
  }
  return result;
}

function xmlError(message: string, isCutShort: boolean, state: TreeState, line: number): IntakeError {
  const place = { file: state.file, line };
  const what = message.replace(/^(?:[^:]*:)?\d+:\d+: /, '').replace(/\.$/, '');
  if (isCutShort && /unclosed|unexpected end/.test(what)) return new IntakeError('truncated-file', {}, place);
  if (state.root === undefined) return new IntakeError('not-svg', {}, place);
  return new IntakeError('not-well-formed', { what }, place);
}
