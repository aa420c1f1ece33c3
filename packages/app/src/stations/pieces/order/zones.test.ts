import { ZONE_KINDS } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import { toggledZones } from './zones.js';

describe('the zones that a piece may come from', () => {
  const usual = ['bend', 'shoulder'] as const;

  it('when one is added and taken away again, the piece says nothing of its own any more', () => {
    const more = toggledZones(usual, 'belly', usual);
    expect(more).toEqual(['bend', 'shoulder', 'belly']);
    expect(toggledZones(more!, 'belly', usual)).toBeUndefined();
    expect(toggledZones(ZONE_KINDS.slice(1), ZONE_KINDS[0], ZONE_KINDS)).toBeUndefined();
  });

  it('when the last one is taken away, it stays', () => {
    expect(toggledZones(['bend'], 'bend', usual)).toEqual(['bend']);
  });
});
