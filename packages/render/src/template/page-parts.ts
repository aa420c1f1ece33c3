import { boxesTouch, growBox, intersectRegions, regionArea } from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';
import type { TilePlan } from '@hidebound/leather';
import { boxCorners } from '../drawing/build.js';
import { largestByBox } from './shape-labels.js';
import type { SceneShape, TemplateScene } from './template-scene.js';

/** A part of a shape on a page. */
interface ShapePart {
  readonly shape: SceneShape;
  readonly region: Region;
  readonly areaMm2: number;
}

/** The parts of every shape on every page, by the page's name; words stand on the largest part. */
export type PageParts = ReadonlyMap<string, readonly MarkedPart[]>;

/** Main: the largest part of its shape. */
export type MarkedPart = ShapePart & { readonly isMain: boolean };

/** Words keep so far from where a page is trimmed. */
export const CELL_AIR_MM = 1.5;

/** Divides every shape among the pages, once for all pages. */
export function partsOfPages(plan: TilePlan, scene: TemplateScene): PageParts {
  const parts = new Map<string, ShapePart[]>(plan.pages.map(({ name }) => [name, []]));
  const mains = new Set<ShapePart>();
  for (const shape of scene.shapes) {
    const own: ShapePart[] = [];
    for (const page of plan.pages) {
      const room = growBox(page.cell, -CELL_AIR_MM);
      if (!boxesTouch(shape.box, room)) continue;
      const cut = intersectRegions([shape.region], [{ outer: boxCorners(room), openings: [] }]);
      const region = largestByBox(cut);
      if (region === undefined) continue;
      const part = { shape, region, areaMm2: regionArea(region) };
      own.push(part);
      parts.get(page.name)!.push(part);
    }
    const [main] = [...own].sort((a, b) => b.areaMm2 - a.areaMm2);
    if (main !== undefined) mains.add(main);
  }
  return new Map(
    [...parts].map(([name, each]) => [name, each.map((part) => ({ ...part, isMain: mains.has(part) }))]),
  );
}
