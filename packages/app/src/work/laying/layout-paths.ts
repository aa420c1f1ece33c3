import type { Layout, NamedHide, ResolvedOrder } from '@hidebound/leather';
import { pathBeside } from '../../job/job.js';
import type { JobFile } from '../../job/job.js';

type Files = ReadonlyMap<string, JobFile>;

/** The layout's file of an order: beside it, under its name. */
export function layoutPathOf(orderPath: string): string {
  return `${stemOf(orderPath)}.layout.json`;
}

/** A layout that is kept under a name. An underscore sorts after the full stop, so that the order's own one is found first. */
export function keptPathOf(orderPath: string, name: string): string {
  return `${stemOf(orderPath)}_${slugOf(name)}.layout.json`;
}

/** What a kept layout is called; undefined for the order's own one. */
export function nameOfKept(orderPath: string, path: string): string | undefined {
  const start = `${stemOf(orderPath)}_`;
  if (!path.startsWith(start) || !path.endsWith('.layout.json')) return undefined;
  return path.slice(start.length, -'.layout.json'.length).replaceAll('-', ' ');
}

function stemOf(orderPath: string): string {
  return orderPath.replace(/(\.order)?\.(ya?ml|json)$/i, '');
}

/** Letters and digits of any language; all else is a stroke. */
function slugOf(name: string): string {
  const slug = name
    .trim()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
  return slug === '' ? 'kept' : slug;
}

/** The hides that an order names, as far as the job has them. */
export function hidesOfOrder(
  { leathers }: Pick<ResolvedOrder, 'leathers'>,
  orderPath: string,
  files: Files,
): NamedHide[] {
  const names = new Set(leathers.flatMap(({ hides }) => hides));
  return [...names].flatMap((file) => hideNamed(file, pathBeside(orderPath, file), files));
}

/** The hides of a layout under the names that it gives them, as far as the job has them. */
export function hidesOfLayout(
  { hides }: Pick<Layout, 'hides'>,
  layoutPath: string,
  files: Files,
): NamedHide[] {
  return hides.flatMap(({ file }) => hideNamed(file, pathBeside(layoutPath, file), files));
}

function hideNamed(file: string, path: string, files: Files): NamedHide[] {
  const found = files.get(path);
  return found?.kind === 'hide' ? [{ file, hide: found.hide }] : [];
}
