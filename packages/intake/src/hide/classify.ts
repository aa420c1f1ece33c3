import { allLabels } from '../drawing/drawn-line.js';
import type { DrawnLine, Labels } from '../drawing/drawn-line.js';
import { nameOfData, readMarkName } from './read-name.js';
import type { MarkKind, MarkWords } from './read-name.js';

/** A traced line with all that its own names and those of the groups around it say. */
export interface Mark {
  readonly line: DrawnLine;
  readonly words: MarkWords & { readonly mark?: MarkKind };
  /** `data-*` of the element, then of its groups. */
  readonly data: Readonly<Record<string, string>>;
}

/** Own names first, then the groups' from the innermost outwards; each thing is taken from the first that says it. */
export function classifyMark(line: DrawnLine): Mark {
  const { source } = line;
  const levels = [source.labels, ...source.groups.map(({ labels }) => labels)];
  let words: MarkWords = { effect: {} };
  for (const labels of levels) {
    for (const name of namesOf(labels)) words = completeWith(words, readMarkName(name));
  }
  const data = Object.assign({}, ...[...levels].reverse().map((labels) => labels.data)) as Record<
    string,
    string
  >;
  return { line, words, data };
}

function namesOf(labels: Labels): string[] {
  const fromData = nameOfData(labels);
  return [...(fromData === '' ? [] : [fromData]), ...allLabels(labels)];
}

function completeWith(known: MarkWords, more: MarkWords): MarkWords {
  return { ...more, ...known, effect: { ...more.effect, ...known.effect } };
}
