/** A path as a file at another one names it: from "week/a.order.yaml" the hide "side.hide.json" is "../side.hide.json". */
export function namedFrom(file: string, path: string): string {
  const from = file.split('/').slice(0, -1);
  const to = path.split('/');
  let shared = 0;
  while (shared < from.length && shared < to.length - 1 && from[shared] === to[shared]) shared++;
  return [...from.slice(shared).map(() => '..'), ...to.slice(shared)].join('/');
}
