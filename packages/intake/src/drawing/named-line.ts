import { curveBox, curveLength } from '@hidebound/geometry';
import { allLabels } from './drawn-line.js';
import type { DrawnLine } from './drawn-line.js';

/** The first line of that label, id or class; else in a group of that name; else as messages call it. */
export function findByName(lines: readonly DrawnLine[], name: string): DrawnLine | undefined {
  const wanted = name.replace(/^#/, '').toLowerCase();
  const isNamed = (labels: readonly string[]) => labels.some((label) => label.toLowerCase() === wanted);
  return (
    lines.find(({ source }) => isNamed(allLabels(source.labels))) ??
    lines.find(({ source }) => isNamed(source.groups.flatMap(({ labels }) => allLabels(labels)))) ??
    lines.find(({ source }) => source.name.toLowerCase() === wanted)
  );
}

/** An open line its length along the line, a closed one the longer side of its upright box; mm. */
export function extentOf({ curve }: DrawnLine): number {
  if (!curve.closed) return curveLength(curve);
  const box = curveBox(curve);
  return Math.max(box.maxX - box.minX, box.maxY - box.minY);
}
