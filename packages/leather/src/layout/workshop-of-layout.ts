import type { Layout } from '../model/layout.js';
import type { Workshop } from '../model/workshop.js';
import { DEFAULT_WORKSHOP } from '../workshop/default-workshop.js';

/** A workshop in which marks mean what they meant when the layout was made; nothing where it doesn't say. */
export function workshopOfLayout({ marks }: Pick<Layout, 'marks'>): Workshop | undefined {
  if (marks === undefined) return undefined;
  const source = 'the layout';
  return {
    ...DEFAULT_WORKSHOP,
    flawDefaults: marks.flawDefaults.map((line) => ({ ...line, source })),
    zoneDefaults: marks.zoneDefaults.map((line) => ({ ...line, source })),
  };
}
