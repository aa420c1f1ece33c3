/** The same group without the keys whose value is undefined, as `exactOptionalPropertyTypes` wants it. */
export function definedOnly<Group extends object>(group: Group): DefinedOnly<Group> {
  return Object.fromEntries(
    Object.entries(group).filter(([, value]) => value !== undefined),
  ) as DefinedOnly<Group>;
}

type OptionalKeys<Group> = { [Key in keyof Group]: undefined extends Group[Key] ? Key : never }[keyof Group];

export type DefinedOnly<Group> = {
  [Key in Exclude<keyof Group, OptionalKeys<Group>>]: Group[Key];
} & { [Key in OptionalKeys<Group>]?: Exclude<Group[Key], undefined> };
