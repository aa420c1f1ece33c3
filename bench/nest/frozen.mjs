// The greedy baseline is frozen: what it gave when it was written is kept, and every run is held against it.
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const FILE = join(import.meta.dirname, 'baseline-checksums.json');
const FIGURE_DECIMALS = 6;

/** Kinds whose instances are files, so that they are the same everywhere. */
const FROZEN_KINDS = ['strip', 'real', 'leather'];

function entryOf({ checksum, goodness, pieces, missed, asked }) {
  const figure = goodness.toFixed(FIGURE_DECIMALS);
  return {
    sha256: createHash('sha256').update(`${checksum} ${figure}`).digest('hex'),
    figure: Number(figure),
    laid: pieces,
    missed: missed ?? asked - pieces,
  };
}

const keyOf = ({ kind, name }) => `${kind}/${name}`;

/** Lines that say whether the greedy results of this run are the frozen ones. */
export function compareFrozen(results) {
  const frozen = JSON.parse(readFileSync(FILE, 'utf8'));
  const greedy = results.filter(({ method, kind }) => method === 'greedy' && FROZEN_KINDS.includes(kind));
  const known = greedy.filter((result) => frozen[keyOf(result)] !== undefined);
  const changed = known.filter((result) => entryOf(result).sha256 !== frozen[keyOf(result)].sha256);
  const unknown = greedy.length - known.length;
  if (greedy.length === 0) return ['Frozen baseline: not run.'];
  const others = unknown === 0 ? '' : ` ${unknown} instances are not in its list.`;
  if (changed.length === 0) return [`Frozen baseline: unchanged (${known.length} instances).${others}`];
  const lines = changed.map((result) => {
    const was = frozen[keyOf(result)];
    return `* ${keyOf(result)}: figure ${was.figure}, now ${entryOf(result).figure}; laid ${was.laid}, now ${result.pieces}`;
  });
  return [
    `**Frozen baseline: CHANGED** in ${changed.length} of ${known.length} instances.${others}`,
    ...lines,
  ];
}

/** Adds what is not in the list yet; what is frozen stays as it is. */
export function freeze(results) {
  const frozen = JSON.parse(readFileSync(FILE, 'utf8'));
  for (const result of results) {
    if (result.method !== 'greedy' || !FROZEN_KINDS.includes(result.kind)) continue;
    if (result.fault === undefined && result.failed === undefined) frozen[keyOf(result)] ??= entryOf(result);
  }
  const sorted = Object.fromEntries(Object.entries(frozen).sort(([a], [b]) => (a < b ? -1 : 1)));
  writeFileSync(FILE, `${JSON.stringify(sorted, undefined, 2)}\n`);
}
