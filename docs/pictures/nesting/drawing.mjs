/** A small SVG writer for the pictures of docs/nesting.md: panels in mm, set side by side on a page in px. */

/** One look for all pictures. */
export const LOOK = {
  paper: '#fbf9f5',
  ink: '#3b3128',
  faint: '#8d8173',
  leather: '#efe3d0',
  piece: '#d9b98c',
  pieceLine: '#6d4c2c',
  half: '#a9bfa6',
  circle: '#2f6f8f',
  bad: '#c4302b',
  good: '#2f7d4f',
};

export const MARGIN = 14;
const TEXT_PX = 13;
const LINE_PX = 18;

/** A tenth of a px is as much as a screen shows. */
const short = (value) => String(Math.round(value * 10) / 10);

const attribute = (value) => (typeof value === 'number' ? String(Math.round(value * 100) / 100) : value);

const attributes = (values) =>
  Object.entries(values)
    .map(([name, value]) => ` ${name}="${attribute(value)}"`)
    .join('');

export const element = (name, values, inside = '') =>
  inside === '' ? `<${name}${attributes(values)}/>` : `<${name}${attributes(values)}>${inside}</${name}>`;

const escape = (text) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

export function text(x, y, words, more = {}) {
  return element('text', { x, y, ...more }, escape(words));
}

/** A view from mm to px: `box` is drawn `width` px wide, its upper left corner at (left, top). */
export function viewOf(box, width, left = 0, top = 0) {
  const scale = width / (box.maxX - box.minX);
  return {
    scale,
    width,
    height: (box.maxY - box.minY) * scale,
    left,
    top,
    x: (mm) => left + (mm - box.minX) * scale,
    y: (mm) => top + (mm - box.minY) * scale,
  };
}

export function ringPath(view, rings) {
  return rings
    .map((ring) => `M${ring.map(({ x, y }) => `${short(view.x(x))} ${short(view.y(y))}`).join('L')}Z`)
    .join('');
}

export function region(view, { outer, openings }, style) {
  return element('path', { d: ringPath(view, [outer, ...openings]), ...style });
}

export function line(view, from, to, style) {
  return element('path', {
    d: `M${short(view.x(from.x))} ${short(view.y(from.y))}L${short(view.x(to.x))} ${short(view.y(to.y))}`,
    fill: 'none',
    ...style,
  });
}

/** Words under a panel, a line each; the first one is the title. */
export function caption(x, top, lines) {
  return lines
    .map((words, i) =>
      text(x, top + LINE_PX * (i + 1), words, i === 0 ? { 'font-weight': 'bold' } : { fill: LOOK.faint }),
    )
    .join('');
}

export const captionHeight = (lines) => LINE_PX * lines.length + 8;

/** The page: its title is what is read to those who don't see it. */
export function page(width, height, title, parts) {
  return `${element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${Math.ceil(width)} ${Math.ceil(height)}`,
      width: Math.ceil(width),
      height: Math.ceil(height),
      role: 'img',
      'font-family': 'DejaVu Sans, Verdana, sans-serif',
      'font-size': TEXT_PX,
      fill: LOOK.ink,
      'stroke-linejoin': 'round',
    },
    [
      element('title', {}, escape(title)),
      element('rect', { width: Math.ceil(width), height: Math.ceil(height), rx: 6, fill: LOOK.paper }),
      ...parts,
      '',
    ].join('\n'),
  )}\n`;
}

/** Panels side by side, each { height, draw(left, top), lines }. */
export function pageOfPanels(title, panels, width) {
  const tallest = Math.max(...panels.map(({ height }) => height));
  const most = Math.max(...panels.map(({ lines }) => lines.length));
  const parts = panels.map(({ draw, lines }, i) => {
    const left = MARGIN + i * (width + 2 * MARGIN);
    return draw(left, MARGIN) + caption(left, MARGIN + tallest, lines);
  });
  const height = 2 * MARGIN + tallest + captionHeight(Array.from({ length: most }));
  return page(panels.length * (width + 2 * MARGIN), height, title, parts);
}
