import { plural } from '../sentence.js';
import type { Sentence } from '../sentence.js';

/** What can make such a file unreadable. */
export const PAGES_REFUSALS = {
  'pages-do-not-fit': ({ pages }) =>
    `The pages ${pages} do not fit together; say how they lie with a grid of columns and overlap, or read them apart.`,
  'pages-on-one-place': ({ pages }) =>
    `The pages ${pages} come to lie on one and the same place; take only one of them, or read them apart.`,
  'grid-does-not-fit': ({ missed, pages }) =>
    `In the grid that was stated, ${plural(missed, 'line ends', 'lines end')} at the edge of a page without going on elsewhere (pages ${pages}); check the columns, the order of pages and the overlap, or leave the grid out.`,
  'grid-without-columns': () =>
    'A grid of pages needs the number of its columns; state how many pages lie side by side.',
  'grid-too-wide': ({ columns, pages }) =>
    `A grid of ${columns} columns is wider than the ${pages} pages; state at most ${pages} columns, or take more pages.`,
  'no-shared-marks': () =>
    'No marks were found that two pages share; put the pages together by their lines or in a grid of columns, or read them apart.',
  'no-lines-over-edges': () =>
    'No lines were found that go on from page to page; put the pages together by marks or in a grid of columns, or read them apart.',
  'too-many-pages-to-search': ({ pages, limit }) =>
    `The ${pages} pages are more than the ${limit} whose places can be found out; state the grid of columns and overlap, or take fewer pages.`,
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const PAGES_FINDINGS = {
  'pages-joined': ({ count, how, pages }) =>
    `${count} pages are put together by ${how} (pages ${pages}); look at them page by page, and state how they lie if that is wrong.`,
  'pages-apart': ({ count }) =>
    `Nothing links the ${count} pages, so each is read as a drawing of its own; state the grid of columns and overlap if they belong together.`,
  'pages-in-groups': ({ groups }) =>
    `The pages make ${groups} wholes that nothing links, so each is read by itself; state the grid of columns and overlap if they belong together.`,
  'pages-left-out': ({ count, pages, reason }) =>
    `${plural(count, 'page is', 'pages are')} left out, ${reason === 'blank' ? 'blank' : `since nothing links ${Number(count) === 1 ? 'it' : 'them'} to the others`} (${pages}).`,
  'pages-by-order': ({ count, pages }) =>
    `${plural(count, 'page lies', 'pages lie')} where the order of pages suggests, since no line or mark links ${Number(count) === 1 ? 'it' : 'them'} to the first ones (${pages}); look whether that is right.`,
  'pages-alike': ({ pages }) =>
    `The pages ${pages} show one and the same drawing; look whether a page is in the file twice, and take only one of them then.`,
  'pages-miss': ({ page, miss }) =>
    `Where page ${page} meets its neighbours, lines or marks miss each other by up to ${miss} mm; look whether the pages lie right.`,
  'page-ends-loose': ({ count, pages }) =>
    `${plural(count, 'line is', 'lines are')} cut off at the edge of a page without going on elsewhere (pages ${pages}); look whether a page is missing.`,
  'overlap-found': ({ across, down }) =>
    `The paper of neighbours is taken to lie ${across} mm over each other across and ${down} mm down, as the lines say.`,
  'overlap-not-found': () =>
    'Nothing says how far pages lie over each other, so their edges are taken to meet; state the overlap if that is wrong.',
  'overlap-not-told': ({ way, taken, from, across, down, columns }) =>
    `Nothing drawn tells how far the pages lie over each other ${way}, so ${from === 'edges' ? `what they show is taken to meet there (${taken} mm of paper)` : `${taken} mm of paper is taken, as ${way === 'down' ? 'across' : 'down'}`}; measure one piece, and state it if that is wrong (--columns ${columns} --overlap "${across} mm x ${down} mm").`,
  'pitch-not-told': ({ way, pitch, taken, other, across, down, columns }) =>
    `Equal pieces stand ${pitch} mm apart, and nothing tells which of them two pages both show: ${way}, pages fit with ${taken} mm of paper lying over each other as well as with ${other} mm. ${taken} mm is taken; count the pieces, and state the overlap if that is wrong (--columns ${columns} --overlap "${across} mm x ${down} mm").`,
  'pages-step-unevenly': ({ pages }) =>
    `The pages ${pages} lie farther over their neighbours, or less far, than the other pages do, and equal pieces that stand at even distances may have misled them; look at them, and state the grid of columns and overlap if they lie wrong.`,
  'page-furniture': ({ frames, marks, texts, signs }) => {
    const parts: readonly (readonly [number | string | undefined, string, string])[] = [
      [frames, 'line of frames', 'lines of frames'],
      [marks, 'line of marks', 'lines of marks'],
      [signs, "line of Hidebound's own signs", "lines of Hidebound's own signs"],
      [texts, 'text', 'texts'],
    ];
    const found = parts.filter(([count]) => Number(count ?? 0) > 0);
    return `Left out as belonging to the paper: ${found.map((part) => plural(...part)).join(', ')}.`;
  },
  'beyond-windows': ({ count }) =>
    `${plural(count, 'line lies', 'lines lie')} in the margins of pages, beyond what shows the pattern, and ${Number(count) === 1 ? 'is' : 'are'} left out.`,
  'lines-over-seams': ({ joints, lines }) =>
    `${plural(joints, 'cut', 'cuts')} at the edges of pages ${Number(joints) === 1 ? 'is' : 'are'} joined; ${plural(lines, 'line goes', 'lines go')} over several pages.`,
} as const satisfies Readonly<Record<string, Sentence>>;
