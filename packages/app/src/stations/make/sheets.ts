import type { App } from '../../app/app.js';
import type { PlaceName } from '../../app/place.js';
import type { SheetName } from '../../work/make-tasks.js';

/** When in the job a sheet is needed. */
export type MakeMoment = 'buying' | 'before' | 'cutting' | 'customer';

export type SheetNeed = 'order' | 'layout' | 'nothing';

export interface SheetRow {
  readonly name: SheetName;
  readonly needs: SheetNeed;
  /** Lengths are measured on the paper, so that it must be printed as large as it is. */
  readonly isTrueScale?: boolean;
}

/** What can be made, by when it is needed. */
export const SHEETS: readonly (readonly [MakeMoment, readonly SheetRow[]])[] = [
  [
    'buying',
    [
      { name: 'buying', needs: 'order' },
      { name: 'suit', needs: 'order' },
    ],
  ],
  [
    'before',
    [
      { name: 'reference', needs: 'nothing', isTrueScale: true },
      { name: 'preparing', needs: 'layout' },
      { name: 'templates', needs: 'layout', isTrueScale: true },
      { name: 'list', needs: 'layout' },
    ],
  ],
  [
    'cutting',
    [
      { name: 'cutting', needs: 'layout' },
      { name: 'settingOut', needs: 'layout' },
      { name: 'cutFiles', needs: 'layout' },
    ],
  ],
  [
    'customer',
    [
      { name: 'cost', needs: 'order' },
      { name: 'quote', needs: 'order' },
    ],
  ],
];

export function sheetRow(name: SheetName): SheetRow {
  return SHEETS.flatMap(([, rows]) => rows).find((row) => row.name === name)!;
}

/** What is not there yet, and where it is made; undefined where the sheet can be made. */
export function missingFor(
  { place, job }: Pick<App, 'place' | 'job'>,
  { needs }: SheetRow,
): PlaceName | undefined {
  const { order, layout } = place.get();
  const laid = layout === undefined ? undefined : job.get().files.get(layout);
  const hasLayout = laid?.kind === 'layout' && laid.layout.placements.length > 0;
  if (needs === 'nothing' || hasLayout) return undefined;
  if (order === undefined) return 'pieces';
  return needs === 'layout' ? 'lay' : undefined;
}
