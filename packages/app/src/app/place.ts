export const PLACE_NAMES = ['hide', 'pieces', 'lay', 'make', 'bench'] as const;
export type PlaceName = (typeof PLACE_NAMES)[number];

/** Where in the job someone is, and what lies in front of her. Paths of files that are gone count as undefined. */
export interface Place {
  readonly name: PlaceName;
  readonly hide: string | undefined;
  readonly order: string | undefined;
  readonly layout: string | undefined;
}

export const FIRST_PLACE: Place = { name: 'hide', hide: undefined, order: undefined, layout: undefined };
