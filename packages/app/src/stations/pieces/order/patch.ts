/** What becomes of keys: a new value, or undefined for one that is taken away. Keys that are not named stay. */
export type Patch<Group> = { readonly [Key in keyof Group]?: Group[Key] | undefined };

/** The group with a patch laid over it. */
export function patched<Group extends object>(group: Group, patch: Patch<Group>): Group {
  const all = { ...group, ...patch };
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as Group;
}

/** A list with one member replaced. */
export function replacedAt<T>(list: readonly T[], index: number, make: (one: T) => T): readonly T[] {
  return list.map((one, i) => (i === index ? make(one) : one));
}

/** The name, or with the next number behind it where it is taken. */
export function freeName(wanted: string, taken: readonly string[]): string {
  if (!taken.includes(wanted)) return wanted;
  for (let number = 2; ; number++) {
    const name = `${wanted} ${number}`;
    if (!taken.includes(name)) return name;
  }
}

/** Lengths and angles as files hold them: to a thousandth. */
export function thousandth(value: number): number {
  return Math.round(value * 1000) / 1000 + 0;
}

export function within(value: number, least: number, most: number): number {
  return Math.max(least, Math.min(most, Math.round(value)));
}
