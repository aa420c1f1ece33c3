import { ZONE_KINDS } from '@hidebound/leather';
import type { ZoneKind } from '@hidebound/leather';

/**
 * The zones with one put in or taken out; undefined where they are the usual ones again, which need no word. The last one
 * stays: a piece that may come from nowhere can't be cut.
 */
export function toggledZones(
  now: readonly ZoneKind[],
  zone: ZoneKind,
  usual: readonly ZoneKind[],
): readonly ZoneKind[] | undefined {
  const next = ZONE_KINDS.filter((each) => (each === zone ? !now.includes(each) : now.includes(each)));
  const kept = next.length === 0 ? now : next;
  const isUsual = kept.length === usual.length && kept.every((each) => usual.includes(each));
  return isUsual ? undefined : kept;
}
