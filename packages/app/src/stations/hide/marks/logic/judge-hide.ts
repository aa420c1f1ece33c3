import { marksBeside } from '@hidebound/leather';
import type { Hide } from '@hidebound/leather';

export interface TidiedHide {
  readonly hide: Hide;
  /** How many marks lay beside the new outline and are gone. */
  readonly gone: number;
}

/** The hide without marks that a new outline leaves outside. An offcut may carry its parent's and keeps them. */
export function withoutMarksBeside(hide: Hide): TidiedHide {
  if (hide.parent !== undefined) return { hide, gone: 0 };
  const { flaws, candidates, zones, readings } = marksBeside(hide);
  const gone = flaws.length + candidates.length + zones.length + readings.length;
  if (gone === 0) return { hide, gone };
  const [off, possible, patches, places] = [
    new Set(flaws),
    new Set(candidates),
    new Set(zones),
    new Set(readings),
  ];
  return {
    gone,
    hide: {
      ...hide,
      flaws: hide.flaws.filter(({ id }) => !off.has(id)),
      candidates: hide.candidates.filter(({ id }) => !possible.has(id)),
      zones: hide.zones.filter(({ id }) => !patches.has(id)),
      leather: { ...hide.leather, readings: hide.leather.readings.filter((_, i) => !places.has(i)) },
    },
  };
}
