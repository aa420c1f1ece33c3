import type { DirectionWish, Part } from '../model/order.js';
import type { PartRule, Workshop } from '../model/workshop.js';

/** Within 10° of the direction, either way round: the trade's rule for belts and straps, and for fronts laid along. */
const ALONG: DirectionWish = { rule: 'along', angleDeg: 0, toleranceDeg: 10, halfTurn: true };
const FREE: DirectionWish = { rule: 'free', angleDeg: 0, toleranceDeg: 180, halfTurn: true };

const ZONES_AND_DIRECTION = 'common practice, no source';

/**
 * What each part means where order and workshop file are silent. Zones and directions are common practice without
 * a source; the thicknesses span the usual figures for the goods that have such a part, most of them from memory.
 * A strap's hole end belongs at its firmer end: that is a preference of lanes (`firmEnd`), not a rule, because a
 * strap without holes has no such end.
 */
export const DEFAULT_PARTS: readonly PartRule[] = [
  {
    part: 'strap',
    looks: { face: 'A', rest: 'B' },
    bearsLoad: true,
    // The shoulder's strength equals the bend's; belts are cut from double shoulders too.
    zones: ['bend', 'shoulder'],
    direction: ALONG,
    thickness: { minMm: 2, maxMm: 5.2 },
    tooThick: 'refuse',
    source: `${ZONES_AND_DIRECTION}; strength of the shoulder: US supplier, parts of a side; thickness: Australian supplier chart (belts, bag straps)`,
  },
  {
    part: 'front',
    looks: { face: 'A', rest: 'B' },
    bearsLoad: false,
    zones: ['bend', 'shoulder'],
    direction: ALONG,
    tooThick: 'refuse',
    source: ZONES_AND_DIRECTION,
  },
  {
    part: 'back',
    looks: { face: 'B', rest: 'C' },
    bearsLoad: false,
    // The neck is stout but uneven: used for backs and small parts.
    zones: ['bend', 'shoulder', 'neck'],
    direction: ALONG,
    tooThick: 'refuse',
    source: `${ZONES_AND_DIRECTION}; neck for backs: F. Y. Golding 1902`,
  },
  {
    part: 'gusset',
    looks: { face: 'B', rest: 'C' },
    bearsLoad: false,
    // Bend leather is better than a gusset needs, so it is allowed too.
    zones: ['bend', 'shoulder', 'belly'],
    direction: ALONG,
    thickness: { minMm: 1, maxMm: 1.8 },
    tooThick: 'skive',
    source: `${ZONES_AND_DIRECTION} (long axis along the tight direction); thickness from memory`,
  },
  {
    part: 'flap',
    looks: { face: 'A', rest: 'B' },
    bearsLoad: false,
    zones: ['bend', 'shoulder'],
    direction: ALONG,
    tooThick: 'refuse',
    source: ZONES_AND_DIRECTION,
  },
  {
    part: 'pocket',
    looks: { face: 'B', rest: 'C' },
    bearsLoad: false,
    zones: ['bend', 'shoulder', 'belly'],
    direction: FREE,
    tooThick: 'skive',
    source: ZONES_AND_DIRECTION,
  },
  {
    part: 'lining',
    looks: { face: 'B', rest: 'C' },
    bearsLoad: false,
    direction: FREE,
    thickness: { minMm: 0.6, maxMm: 1 },
    tooThick: 'skive',
    source: `${ZONES_AND_DIRECTION}; thickness: Australian supplier chart (bag linings 0.6–0.8), shoe linings to 1.0 from memory`,
  },
  {
    part: 'stiffener',
    looks: { face: 'C', rest: 'C' },
    bearsLoad: false,
    direction: FREE,
    tooThick: 'skive',
    source: ZONES_AND_DIRECTION,
  },
  {
    part: 'moulded',
    looks: { face: 'A', rest: 'B' },
    bearsLoad: false,
    zones: ['shoulder', 'bend', 'belly'],
    direction: FREE,
    thickness: { minMm: 2, maxMm: 3.6 },
    tooThick: 'refuse',
    source: `${ZONES_AND_DIRECTION}; thickness: guild workshop notes (holsters), trays from memory`,
  },
  {
    part: 'tab',
    looks: { face: 'A', rest: 'B' },
    bearsLoad: false,
    zones: ['bend', 'shoulder', 'neck', 'shank'],
    direction: FREE,
    tooThick: 'refuse',
    source: `${ZONES_AND_DIRECTION}; shanks for tabs and loops: W. H. Dooley 1912`,
  },
];

/** The rules of a part: the workshop's own row if it has one, else the built-in row. */
export function ruleOfPart(part: Part, workshop?: Pick<Workshop, 'parts'>): PartRule {
  const row =
    workshop?.parts.find((rule) => rule.part === part) ?? DEFAULT_PARTS.find((rule) => rule.part === part);
  // The table has a row for every part; a test holds that.
  return row!;
}
