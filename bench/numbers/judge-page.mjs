// One page of one command against that command's own result.
import { explain } from './explain.mjs';
import { textsOf, valuesOf } from './json-values.mjs';
import { linesOfPdf } from './page-words.mjs';
import { printedNumbers } from './printed-numbers.mjs';

/** Longer texts are sentences and notes, whose numbers are to be explained one by one. */
const LONGEST_NAME = 60;

/**
 * Every number of a command's pages, each with its explanation or without. `page` is one of `pages/`; `answer` what
 * the command gave with --json, `inputs` the data of the files that it names, `figures` values of the workshop's figures.
 */
export function judgePage(page, pdf, answer, inputs, figures) {
  const lines = linesOfPdf(pdf);
  const { result, diagnostics } = answer;
  const told = [result, diagnostics.map(({ params }) => params)];
  const values = [
    ...told
      .flatMap((node) => valuesOf(node, page.identifying))
      .filter(({ path }) => !page.unprinted?.test(path)),
    ...page.derive(result, inputs),
    ...figures,
    ...pageNumbers(lines),
  ];
  const known = [...told, ...inputs].flatMap(textsOf).filter(isName);
  const names = values.flatMap((value) => value.names).filter((name) => /\p{L}/u.test(name));
  const numbers = printedNumbers(lines, known, names).map((printed) => ({
    ...printed,
    explained: explain(printed, values),
  }));
  return { numbers, values, known, lines };
}

function isName(text) {
  return text.length <= LONGEST_NAME && /[^\d.\s-]/.test(text.replace(/^\d{4}-\d{2}-\d{2}$/, 'date'));
}

/** "Sheet 2 of 3". */
function pageNumbers(lines) {
  const pages = lines.at(-1)?.page ?? 0;
  return Array.from({ length: pages }, (_, i) => ({
    kind: 'plain',
    value: i + 1,
    path: 'pages',
    names: ['Sheet'],
    isReckoned: true,
    isOnly: true,
  }));
}

/**
 * How well the judge can tell a wrong number from a right one: each explained number is changed in its last place, up and
 * down, and the share of the changes that is still explained is given.
 */
export function blindness({ numbers, values }) {
  const changed = numbers
    .filter(({ shape, explained }) => shape === 'number' && explained !== undefined)
    .flatMap((printed) => [1, -1].map((step) => alter(printed, step)));
  const unseen = changed.filter((printed) => explain(printed, values) !== undefined);
  return { changed: changed.length, unseen: unseen.length };
}

function alter(printed, step) {
  const text = Math.max(0, Number(printed.text) + step * 10 ** -printed.decimals).toFixed(printed.decimals);
  return { ...printed, text };
}
