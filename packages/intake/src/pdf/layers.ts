import type { DrawnGroup } from '../drawing/drawn-line.js';
import { ignore } from '../findings.js';
import type { Mark, PageWalk } from './page-walk.js';

/** Optional content as pdf.js hands it on: one group, or a rule about several (ISO 32000-1, section 8.11). */
interface OptionalContent {
  readonly type: string;
  readonly id?: string;
  readonly ids?: readonly string[];
}

/** Marked content opens: of a layer it says whether it is seen and how it is called; of all else nothing. */
export function openMark(walk: PageWalk, operands: readonly unknown[]): void {
  const content = operands[0] === 'OC' ? (operands[1] as OptionalContent | null | undefined) : undefined;
  walk.marks.push(content === null || content === undefined ? { isHidden: false } : layerMark(walk, content));
}

function layerMark(walk: PageWalk, content: OptionalContent): Mark {
  const id = content.id ?? content.ids?.[0];
  const name = layerName(walk, content);
  const isHidden = !walk.layers.isVisible(content);
  if (isHidden) noteHidden(walk, name ?? 'without a name');
  if (name === undefined || id === undefined) return { isHidden };
  return { isHidden, group: layerGroup(walk, id, name) };
}

function layerName({ layers }: PageWalk, { id, ids }: OptionalContent): string | undefined {
  for (const each of id === undefined ? (ids ?? []) : [id]) {
    const name = layers.getGroup(each)?.name;
    if (name !== undefined && name !== null && name !== '') return name;
  }
  return undefined;
}

function noteHidden({ hiddenLayers, findings, number }: PageWalk, name: string): void {
  if (hiddenLayers.has(name)) return;
  hiddenLayers.add(name);
  ignore(findings, `layer "${name}" on page ${number}`, 'hidden');
}

/** A layer of a page is one group, however often it is opened. */
function layerGroup({ groupKeys, number }: PageWalk, id: string, name: string): DrawnGroup {
  const key = `${number} ${id}`;
  const known = groupKeys.get(key) ?? groupKeys.size;
  groupKeys.set(key, known);
  return { key: known, labels: { given: [name], classes: [], data: {} }, isClone: false };
}
