import { compile } from 'css-select';
import generate from 'css-tree/generator';
import parse from 'css-tree/parser';
import type { Atrule, CssNode, Rule, Selector } from 'css-tree';
import { textContent } from '../xml/node.js';
import type { XmlElement } from '../xml/node.js';
import { TREE_ADAPTER } from './adapter.js';
import type { Declaration } from './declarations.js';

/** One selector of a style sheet with its declarations. */
export interface StyleRule {
  readonly matches: (element: XmlElement) => boolean;
  /** Ids, classes and the like, element names: as one number that sorts. */
  readonly specificity: number;
  readonly declarations: ReadonlyMap<string, Declaration>;
}

export interface StyleSheet {
  /** Weakest first. */
  readonly rules: readonly StyleRule[];
  /** What was not understood or not fetched, as written. */
  readonly skipped: readonly string[];
}

/** Specificity as one number (Selectors 4, section 15): no real sheet has a thousand of a kind in one selector. */
const ID_WEIGHT = 1_000_000;
const CLASS_WEIGHT = 1_000;

/** The rules of all `style` elements. `@import` is never fetched. */
export function readStyleSheet(styles: readonly XmlElement[]): StyleSheet {
  const rules: StyleRule[] = [];
  const skipped: string[] = [];
  for (const style of styles) {
    const type = style.attributes.get('type') ?? 'text/css';
    if (type !== '' && type !== 'text/css') {
      skipped.push(`style of type ${type}`);
      continue;
    }
    // Text within <!-- --> was how sheets were hidden from very old readers.
    const text = textContent(style).replace(/<!--|-->/g, ' ');
    const sheet = parse(text, { parseValue: false, parseCustomProperty: false });
    if (sheet.type === 'StyleSheet') readBlock(sheet.children.toArray(), rules, skipped);
  }
  const ordered = rules.map((rule, order) => ({ rule, order }));
  ordered.sort((a, b) => a.rule.specificity - b.rule.specificity || a.order - b.order);
  return { rules: ordered.map(({ rule }) => rule), skipped };
}

function readBlock(nodes: readonly CssNode[], rules: StyleRule[], skipped: string[]): void {
  for (const node of nodes) {
    if (node.type === 'Rule') readRule(node, rules, skipped);
    else if (node.type === 'Atrule') readAtRule(node, rules, skipped);
  }
}

const MEDIA_OF_A_DRAWING = /^(all|screen)?$/;

/** Rules that have no bearing on lines. */
const HARMLESS_AT_RULES = new Set(['font-face', 'charset', 'namespace', 'keyframes', 'page']);

function readAtRule(node: Atrule, rules: StyleRule[], skipped: string[]): void {
  const prelude = node.prelude === null ? '' : generate(node.prelude);
  if (node.name === 'media' && MEDIA_OF_A_DRAWING.test(prelude) && node.block !== null) {
    readBlock(node.block.children.toArray(), rules, skipped);
  } else if (!HARMLESS_AT_RULES.has(node.name)) {
    skipped.push(`@${node.name} ${prelude}`.trim());
  }
}

function readRule(rule: Rule, rules: StyleRule[], skipped: string[]): void {
  if (rule.prelude.type !== 'SelectorList') {
    skipped.push(generate(rule.prelude));
    return;
  }
  const declarations = new Map<string, Declaration>();
  for (const node of rule.block.children.toArray()) {
    if (node.type !== 'Declaration') continue;
    declarations.set(node.property.toLowerCase(), {
      value: generate(node.value).trim(),
      isImportant: node.important !== false,
    });
  }
  for (const selector of rule.prelude.children.toArray()) {
    const text = generate(selector);
    try {
      const matches = compile(text, { adapter: TREE_ADAPTER, xmlMode: true, cacheResults: false });
      rules.push({ matches, specificity: specificityOf(selector as Selector), declarations });
    } catch {
      skipped.push(text);
    }
  }
}

function specificityOf(selector: Selector): number {
  let sum = 0;
  for (const part of selector.children.toArray()) {
    if (part.type === 'IdSelector') sum += ID_WEIGHT;
    else if (part.type === 'ClassSelector' || part.type === 'AttributeSelector') sum += CLASS_WEIGHT;
    else if (part.type === 'PseudoClassSelector')
      sum += pseudoClassWeight(part.name, part.children?.toArray());
    else if (part.type === 'TypeSelector' && part.name !== '*') sum += 1;
    else if (part.type === 'PseudoElementSelector') sum += 1;
  }
  return sum;
}

/** `:not()` and `:is()` weigh as much as their heaviest argument, `:where()` nothing, others as a class. */
function pseudoClassWeight(name: string, children: readonly CssNode[] | undefined): number {
  if (name === 'where') return 0;
  if (name !== 'not' && name !== 'is' && name !== 'matches') return CLASS_WEIGHT;
  let most = 0;
  for (const child of children ?? []) {
    const list = child.type === 'SelectorList' ? child.children.toArray() : [child];
    for (const selector of list) {
      if (selector.type === 'Selector') most = Math.max(most, specificityOf(selector));
    }
  }
  return most;
}
