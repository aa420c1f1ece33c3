import { curveArea, curveBox } from '@hidebound/geometry';
import type { PatternReading } from '@hidebound/leather';
import { allLabels } from '../drawing/drawn-line.js';
import type { DrawnGroup, DrawnLine } from '../drawing/drawn-line.js';
import { BARE_SIZES_FACTOR } from '../limits.js';
import { isFinished } from '../lines/finished.js';
import { ruleFits } from './decide.js';
import { bareSize, compareSizes, speltOutSize } from './read-size.js';

/** What sizes were told by. */
export type SizeSign = 'rules' | 'blocks' | 'names' | 'layers';

export interface SizedLines {
  /** Size of each line; nothing for a line of all sizes. */
  readonly sizes: readonly (string | undefined)[];
  /** All sizes, the smallest first; at least two, or none. */
  readonly found: readonly string[];
  readonly by: SizeSign;
}

/**
 * The size of each line: by the order's rules for sizes, else by the size that its group bears, else by names that
 * spell it out ("size 38"), else by sibling layers that are called by nothing but sizes and hold alike outlines.
 */
export function decideSizes(lines: readonly DrawnLine[], reading: PatternReading | undefined): SizedLines {
  const rules = reading?.sizes ?? [];
  const ways: readonly (readonly [SizeSign, (line: DrawnLine) => string | undefined])[] =
    rules.length > 0
      ? [['rules', (line) => rules.find((rule) => ruleFits(rule, line.source, line))?.size]]
      : [
          ['blocks', sizeOfData],
          ['names', sizeOfNames],
        ];
  for (const [by, sizeOf] of ways) {
    const sized = sizedBy(lines, by, sizeOf);
    if (sized.found.length > 1) return sized;
  }
  const layers = rules.length > 0 ? new Map<number, string>() : sizeLayers(lines, reading);
  const ofLayer = ({ source }: DrawnLine) =>
    source.groups.map(({ key }) => layers.get(key)).find((size) => size !== undefined);
  const sized = sizedBy(lines, 'layers', ofLayer);
  return sized.found.length > 1 ? sized : { ...sized, found: [] };
}

function sizedBy(
  lines: readonly DrawnLine[],
  by: SizeSign,
  sizeOf: (line: DrawnLine) => string | undefined,
): SizedLines {
  const sizes = lines.map(sizeOf);
  const found = [...new Set(sizes.filter((size) => size !== undefined))].sort(compareSizes);
  return { sizes, found, by };
}

/** The pieces of a saved pattern are set apart, and each says its own size. */
function sizeOfData(line: DrawnLine): string | undefined {
  const { source } = line;
  if (isFinished(line)) return undefined;
  return [source.labels, ...source.groups.map(({ labels }) => labels)]
    .map(({ data }) => data['size'])
    .find((size) => size !== undefined && size !== '');
}

/** Names of patterns that this program saved are whole: they hold the size already. */
function sizeOfNames(line: DrawnLine): string | undefined {
  const { source } = line;
  if (isFinished(line)) return undefined;
  return [source.labels, ...source.groups.map(({ labels }) => labels)]
    .flatMap(allLabels)
    .map(speltOutSize)
    .find((size) => size !== undefined);
}

interface Layer {
  readonly key: number;
  readonly size: string;
  readonly outlines: { readonly area: number; readonly width: number; readonly height: number }[];
}

/** Layers called by sizes alone, by their keys: siblings that hold as many outlines each, growing with the size. */
function sizeLayers(lines: readonly DrawnLine[], reading: PatternReading | undefined): Map<number, string> {
  const byParent = new Map<number, Map<number, Layer>>();
  for (const line of lines) {
    if (isFinished(line)) continue;
    line.source.groups.forEach((group, depth) => {
      const size = sizeOfGroup(group, line, reading);
      if (size === undefined) return;
      const parent = line.source.groups[depth + 1]?.key ?? -1;
      const siblings = byParent.get(parent) ?? new Map<number, Layer>();
      byParent.set(parent, siblings);
      const layer = siblings.get(group.key) ?? { key: group.key, size, outlines: [] };
      siblings.set(group.key, layer);
      if (line.curve.closed) layer.outlines.push(extentOf(line));
    });
  }
  const found = new Map<number, string>();
  for (const siblings of byParent.values()) {
    const layers = [...siblings.values()].sort((a, b) => compareSizes(a.size, b.size));
    if (areGraded(layers)) for (const { key, size } of layers) found.set(key, size);
  }
  return found;
}

/** Nothing if a rule or a role says what the layer is. */
function sizeOfGroup(
  { labels }: DrawnGroup,
  line: DrawnLine,
  reading: PatternReading | undefined,
): string | undefined {
  if (labels.data['role'] !== undefined) return undefined;
  if ((reading?.roles ?? []).some((rule) => rule.layer !== undefined && ruleFits(rule, line.source, line))) {
    return undefined;
  }
  return [...labels.given, ...(labels.id === undefined ? [] : [labels.id])]
    .map(bareSize)
    .find((size) => size !== undefined);
}

function extentOf({ curve }: DrawnLine): Layer['outlines'][number] {
  const box = curveBox(curve);
  return { area: Math.abs(curveArea(curve)), width: box.maxX - box.minX, height: box.maxY - box.minY };
}

function areGraded(layers: readonly Layer[]): boolean {
  if (layers.length < 2 || new Set(layers.map(({ size }) => size)).size < layers.length) return false;
  const largest = layers.map(({ outlines }) =>
    outlines.reduce<Layer['outlines'][number] | undefined>(
      (best, next) => (best === undefined || next.area > best.area ? next : best),
      undefined,
    ),
  );
  return layers.every(({ outlines }, i) => {
    if (outlines.length === 0 || outlines.length !== layers[0]!.outlines.length) return false;
    if (i === 0) return true;
    const [a, b] = [largest[i - 1]!, largest[i]!];
    const factors = [b.width / a.width, b.height / a.height];
    const isAlike = factors.every((factor) => factor < BARE_SIZES_FACTOR && factor > 1 / BARE_SIZES_FACTOR);
    return isAlike && b.area > a.area;
  });
}
