import type { XmlElement } from '../xml/node.js';
import { parseDeclarations } from './declarations.js';
import type { Declaration } from './declarations.js';
import type { StyleSheet } from './sheet.js';

/** The computed properties that matter for lines, as text; units are resolved where they are used. */
export type Style = ReadonlyMap<string, string>;

/** Passed on from parent to child when the child says nothing. */
const INHERITED = new Set([
  'stroke',
  'fill',
  'fill-rule',
  'stroke-width',
  'stroke-dasharray',
  'stroke-opacity',
  'fill-opacity',
  'visibility',
  'color',
  'font-size',
]);

/** Not passed on. */
const OWN = new Set([
  'display',
  'opacity',
  'transform',
  'transform-origin',
  'clip-path',
  'mask',
  'filter',
  'x',
  'y',
  'width',
  'height',
  'r',
  'rx',
  'ry',
  'cx',
  'cy',
  'd',
]);

/** Those of `OWN` that mean the same as an attribute of that name and are read from it where no CSS says otherwise. */
const ATTRIBUTE_PROPERTIES = new Set([...INHERITED, 'display', 'opacity', 'clip-path', 'mask', 'filter']);

/** A cache of parsed `style` attributes: drawing programs write the same one thousands of times. */
export type StyleCache = Map<string, ReadonlyMap<string, Declaration>>;

/**
 * The cascade for one element: presentation attributes, then style sheets by specificity and order, then the
 * `style` attribute; `!important` ones above all others (CSS Cascading 4, section 6).
 */
export function computeStyle(
  element: XmlElement,
  parent: Style,
  sheet: StyleSheet,
  cache: StyleCache,
): Style {
  const values = new Map<string, Declaration>();
  for (const [name, value] of element.attributes) {
    if (ATTRIBUTE_PROPERTIES.has(name)) values.set(name, { value, isImportant: false });
  }
  for (const rule of sheet.rules) {
    if (rule.matches(element)) applyDeclarations(values, rule.declarations);
  }
  const inline = element.attributes.get('style');
  if (inline !== undefined) {
    let declarations = cache.get(inline);
    if (declarations === undefined) cache.set(inline, (declarations = parseDeclarations(inline)));
    applyDeclarations(values, declarations);
  }
  return resolveInheritance(values, parent);
}

function applyDeclarations(
  values: Map<string, Declaration>,
  declarations: ReadonlyMap<string, Declaration>,
): void {
  for (const [property, declaration] of declarations) {
    if (!INHERITED.has(property) && !OWN.has(property)) continue;
    if (values.get(property)?.isImportant === true && !declaration.isImportant) continue;
    values.set(property, declaration);
  }
}

function resolveInheritance(values: ReadonlyMap<string, Declaration>, parent: Style): Style {
  if (values.size === 0 && !hasOwn(parent)) return parent;
  const style = new Map<string, string>();
  for (const [property, value] of parent) if (INHERITED.has(property)) style.set(property, value);
  for (const [property, { value }] of values) {
    const word = value.trim();
    if (word === 'inherit') {
      const inherited = parent.get(property);
      if (inherited === undefined) style.delete(property);
      else style.set(property, inherited);
    } else if (word === 'initial' || (word === 'unset' && !INHERITED.has(property))) style.delete(property);
    else if (word !== 'unset') style.set(property, word);
  }
  return style;
}

function hasOwn(style: Style): boolean {
  for (const property of style.keys()) if (OWN.has(property)) return true;
  return false;
}
