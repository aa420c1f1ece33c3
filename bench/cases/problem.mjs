import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { sampleProblem } from '@hidebound/geometry';
import { readPatternSvg } from '@hidebound/intake';
import {
  DEFAULT_WORKSHOP,
  completeOrder,
  layoutFrom,
  nestProblemFor,
  parseArticle,
  parseHide,
  parseOrder,
  resolveOrder,
  resolvePieces,
} from '@hidebound/leather';

const DEMO = join(import.meta.dirname, '../../fixtures/demo');
const ORDER = 'bicycle-goods.order.yaml';

/** The demo's job: all that the order names, and its nesting problem. */
export function demoJob(seed) {
  const textOf = (file) => readFileSync(join(DEMO, file), 'utf8');
  const readArticle = (file) => parseArticle(textOf(file), { file });
  const written = parseOrder(textOf(ORDER), { file: ORDER });
  const order = resolveOrder(completeOrder(written, DEFAULT_WORKSHOP, readArticle, { file: ORDER }));
  const { pieces } = resolvePieces(order, (file) =>
    readPatternSvg(textOf(file), { file, reading: { file, roles: [] } }),
  );
  const files = [...new Set(order.leathers.flatMap(({ hides }) => hides))];
  const hides = files.map((file) => ({ file, hide: parseHide(textOf(file), { file }) }));
  const problem = nestProblemFor({ order, pieces, hides, budget: { seed, streams: 1 } });
  return { order, pieces, hides, problem };
}

export function demoLayout(job, answer) {
  return layoutFrom({ ...job, answer, origin: { version: 'bench', seed: 1, streams: 1 } });
}

/** `demo`, or so many random pieces on a random hide with flaws (invented, seeded). */
export function problemNamed(name, seed) {
  if (name === 'demo') return demoJob(seed).problem.problem;
  const count = Number(name);
  return { ...sampleProblem(seed, { pieces: count, share: 0.55 }), budget: { seed, streams: 1 } };
}
