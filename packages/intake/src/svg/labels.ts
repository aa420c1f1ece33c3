import { childElements, textContent } from '../xml/node.js';
import type { XmlElement } from '../xml/node.js';
import type { Labels } from '../drawing/drawn-line.js';

/** Attributes in which drawing programs keep the name that their user typed, best first. */
const NAME_ATTRIBUTES = ['data-name', 'inkscape:label', 'serif:id', 'label'];

/** All that the file says of an element by name. */
export function labelsOf(element: XmlElement): Labels {
  const given: string[] = [];
  const data: Record<string, string> = {};
  for (const name of NAME_ATTRIBUTES) addName(given, element.attributes.get(name));
  const title = childElements(element).find((child) => child.isSvg && child.name === 'title');
  if (title !== undefined) addName(given, textContent(title));
  for (const [name, value] of element.attributes) {
    if (name.startsWith('data-')) data[name.slice('data-'.length)] = value.trim();
  }
  const id = element.attributes.get('id')?.trim();
  const classes = (element.attributes.get('class') ?? '').split(/\s+/).filter((name) => name !== '');
  return { given, classes, data, ...(id === undefined || id === '' ? {} : { id: readableId(id) }) };
}

function addName(names: string[], value: string | undefined): void {
  const name = value?.replace(/\s+/g, ' ').trim() ?? '';
  if (name !== '' && !names.includes(name)) names.push(name);
}

/** Some programs write characters that an id can't hold as `_x20_`, and make ids unique with `_1_` at the end. */
function readableId(id: string): string {
  return id
    .replace(/_x([0-9a-f]{2,4})_/gi, (_, hex: string) => String.fromCharCode(parseInt(hex, 16)))
    .replace(/(.)_\d+_$/, '$1')
    .trim();
}
