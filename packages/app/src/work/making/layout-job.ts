import { changedHides, leatherError, workshopOfLayout } from '@hidebound/leather';
import type { Diagnostic, Hide, Layout, NamedHide, Workshop } from '@hidebound/leather';
import { pathBeside } from '../../job/job.js';
import type { MakeJob } from '../make-tasks.js';

/** A layout with the hides that it lies on. */
export interface LayoutJob {
  readonly path: string;
  readonly layout: Layout;
  readonly named: readonly NamedHide[];
  readonly hides: readonly Hide[];
  /** What marks meant when it was made; nothing where it doesn't say. */
  readonly workshop: { readonly workshop?: Workshop };
  /** Hides that are not what they were. */
  readonly changed: readonly Diagnostic[];
}

/** Throws `missing-file` where the layout or one of its hides is gone. */
export function layoutJob({ files, layout: path = '' }: MakeJob): LayoutJob {
  const file = files.get(path);
  if (file?.kind !== 'layout') throw leatherError('missing-file', { file: path });
  const { layout } = file;
  const named = layout.hides.map((entry): NamedHide => {
    const hide = files.get(pathBeside(path, entry.file));
    if (hide?.kind !== 'hide') throw leatherError('missing-file', { file: entry.file });
    return { file: entry.file, hide: hide.hide };
  });
  const workshop = workshopOfLayout(layout);
  return {
    path,
    layout,
    named,
    hides: named.map(({ hide }) => hide),
    workshop: workshop === undefined ? {} : { workshop },
    changed: changedHides(layout, named, path),
  };
}
