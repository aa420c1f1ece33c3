import { contactShapes } from '../separate/exact-contacts.js';
import type { ContactShapes } from '../separate/exact-contacts.js';
import { buildScene } from '../separate/world-of-layout.js';
import type { Scene } from '../separate/world-of-layout.js';
import type { NestProblem } from '../types/problem.js';
import type { InnerProblem } from './inner-problem.js';
import { innerProblem } from './inner-problem.js';
import type { Layout } from './layout.js';
import { createLayout } from './layout.js';

/**
 * What all streams of a problem work from. Nothing that it holds depends on what a stream does, but for where pieces lie
 * in `layout`, which is for the one stream that lays first.
 */
export interface Groundwork {
  readonly problem: NestProblem;
  readonly inner: InnerProblem;
  readonly layout: Layout;
  /** Made when it is first asked for: the first layout can do without. */
  later: { readonly scene: Scene; readonly contacts: ContactShapes | undefined } | undefined;
}

export function groundworkOf(problem: NestProblem): Groundwork {
  const inner = innerProblem(problem);
  return { problem, inner, layout: createLayout(inner.problem), later: undefined };
}

/** Yields after each sheet and item. */
export function* sceneOf(
  groundwork: Groundwork,
): Generator<undefined, { readonly scene: Scene; readonly contacts: ContactShapes | undefined }> {
  if (groundwork.later !== undefined) return groundwork.later;
  const scene = yield* buildScene(groundwork.layout, groundwork.problem.distances);
  const contacts = scene.eases.length > 1 ? contactShapes(scene) : undefined;
  groundwork.later ??= { scene, contacts };
  return groundwork.later;
}
