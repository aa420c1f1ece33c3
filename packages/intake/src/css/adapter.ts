import type { Options } from 'css-select';
import { childElements, textContent } from '../xml/node.js';
import type { XmlElement, XmlNode } from '../xml/node.js';

type Adapter = NonNullable<Options<XmlNode, XmlElement>['adapter']>;

/** Lets the selector engine walk our tree. */
export const TREE_ADAPTER: Adapter = {
  isTag: (node): node is XmlElement => node.kind === 'element',
  getAttributeValue: (element, name) => element.attributes.get(name),
  getChildren: (node) => (node.kind === 'element' ? [...node.children] : []),
  getName: (element) => element.name,
  getParent: (element) => element.parent ?? null,
  getSiblings: (node) => (node.parent === undefined ? [node] : [...node.parent.children]),
  prevElementSibling(element) {
    if (element.parent === undefined) return null;
    const siblings = childElements(element.parent);
    return siblings[siblings.findIndex((sibling) => sibling === element) - 1] ?? null;
  },
  getText: (node) => textContent(node),
  hasAttrib: (element, name) => element.attributes.has(name),
  removeSubsets(nodes) {
    const all = new Set(nodes);
    return nodes.filter((node) => {
      for (let up = node.parent; up !== undefined; up = up.parent) if (all.has(up)) return false;
      return true;
    });
  },
};
