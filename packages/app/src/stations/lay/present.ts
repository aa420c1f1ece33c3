import type { Layout, NamedHide, PiecePlacement } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import { copyKey } from '../../drawing/piece-layer.js';
import { layoutAt } from '../../job/job.js';
import { hidesOfLayout } from '../../work/laying/layout-paths.js';

/** The layout in front, with its path. */
export interface Present {
  readonly path: string;
  readonly layout: Layout;
}

export function presentLayout(app: App): Present | undefined {
  const { layout: path } = app.place.get();
  const layout = layoutAt(app.job.get(), path);
  return path === undefined || layout === undefined ? undefined : { path, layout };
}

export function hidesOf(app: App, { path, layout }: Present): readonly NamedHide[] {
  return hidesOfLayout(layout, path, app.job.get().files);
}

/** The placement with a key, spoiled ones aside. */
export function placementWith({ placements }: Layout, key: string | undefined): PiecePlacement | undefined {
  return placements.find((one) => one.state !== 'spoiled' && copyKey(one) === key);
}
