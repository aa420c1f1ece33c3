/** An element of the drawing. Names in the SVG namespace are local ("path"); others keep a known or their own prefix. */
export interface XmlElement {
  readonly kind: 'element';
  readonly name: string;
  readonly isSvg: boolean;
  /** By name; known prefixes are spelled the usual way ("xlink:href", "inkscape:label"), whatever the file calls them. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlNode[];
  readonly parent: XmlElement | undefined;
  /** Line of the file in which the tag starts, from 1. */
  readonly line: number;
}

export interface XmlText {
  readonly kind: 'text';
  readonly text: string;
  readonly parent: XmlElement;
}

export type XmlNode = XmlElement | XmlText;

/** What the reader of the file gives back. */
export interface XmlDocument {
  readonly root: XmlElement;
  /** Names of processing instructions other than the XML declaration. */
  readonly instructions: readonly string[];
}

/** Child elements, in order. */
export function childElements(element: XmlElement): XmlElement[] {
  return element.children.filter((child): child is XmlElement => child.kind === 'element');
}

/** All text within, in order. */
export function textContent(node: XmlNode): string {
  if (node.kind === 'text') return node.text;
  return node.children.map(textContent).join('');
}

/** How messages call the element: "#flap" or "<path>". */
export function elementName(element: XmlElement): string {
  const id = element.attributes.get('id');
  return id === undefined || id === '' ? `<${element.name}>` : `#${id}`;
}
