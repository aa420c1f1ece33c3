import type { IgnoredReason } from '../findings.js';
import { childElements } from '../xml/node.js';
import type { XmlElement } from '../xml/node.js';

/** Elements that are never drawn where they stand and that nobody expects to see: no word about them. */
const SILENT = new Set([
  'defs',
  'desc',
  'title',
  'metadata',
  'style',
  'symbol',
  'linearGradient',
  'radialGradient',
  'meshgradient',
  'hatch',
  'pattern',
  'marker',
  'clipPath',
  'mask',
  'filter',
  'font',
  'font-face',
  'solidcolor',
  'color-profile',
  'cursor',
  'animate',
  'animateMotion',
  'animateTransform',
  'animateColor',
  'set',
]);

/** Elements that are drawn or acted on by a viewer, but are no line of a pattern. */
const LEFT_OUT: Readonly<Record<string, IgnoredReason>> = {
  image: 'image',
  foreignObject: 'foreign object',
  script: 'script',
  view: 'view',
  audio: 'foreign object',
  video: 'foreign object',
  iframe: 'foreign object',
  canvas: 'foreign object',
  flowRoot: 'text',
};

const CONTAINERS = new Set(['svg', 'g', 'a', 'switch', 'use', 'text', 'glyph']);
const SHAPES = new Set(['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon']);

export function isSilent(element: XmlElement): boolean {
  return SILENT.has(element.name);
}

/** Why an element is not read, or nothing if it is. */
export function ignoredReason(element: XmlElement): IgnoredReason | undefined {
  const known = LEFT_OUT[element.name];
  if (known !== undefined) return known;
  const isKnown = SILENT.has(element.name) || CONTAINERS.has(element.name) || SHAPES.has(element.name);
  return isKnown ? undefined : 'unknown element';
}

/** The first child of a `switch` whose conditions hold (SVG 2, section 5.9), and those passed over. */
export function pickFromSwitch(element: XmlElement): {
  readonly chosen: XmlElement | undefined;
  readonly others: readonly XmlElement[];
} {
  const children = childElements(element).filter((child) => child.isSvg && !isSilent(child));
  const chosen = children.find((child) => conditionsHold(child));
  return { chosen, others: children.filter((child) => child !== chosen) };
}

/** No extension is known here; of languages, English and undeclared ones are taken. */
function conditionsHold({ attributes }: XmlElement): boolean {
  if (attributes.has('requiredExtensions')) return false;
  const language = attributes.get('systemLanguage');
  return language === undefined || /(^|,\s*)en\b/i.test(language);
}
