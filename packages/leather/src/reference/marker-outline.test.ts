import { pointInRing, ringArea } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { MARKER_CODES } from './marker-codes.js';
import { markerOutline } from './marker-outline.js';
import { MARKER_FIELDS, MARKER_MM, markerCorners, markerFields, markerPlace } from './sheet-plan.js';

const FIELD_MM = MARKER_MM / MARKER_FIELDS;
const IDS = MARKER_CODES.map((_, id) => id);

test('when a marker is outlined, a point is within an odd number of rings exactly where its field is black', () => {
  for (const id of IDS) {
    const place = markerPlace(id)!;
    const rings = markerOutline(place);
    const { x, y } = markerCorners(place.place)[0];
    markerFields(id).forEach((row, r) => {
      row.forEach((isWhite, c) => {
        const middle = { x: x + (c + 0.5) * FIELD_MM, y: y + (r + 0.5) * FIELD_MM };
        const around = rings.filter((ring) => pointInRing(middle, ring) === 'inside').length;
        expect(around % 2 === 0, `marker ${id}, row ${r}, column ${c}`).toBe(isWhite);
      });
    });
  }
});

test('when a marker is outlined, its rings enclose as much as its black fields have', () => {
  for (const id of IDS) {
    const black = markerFields(id)
      .flat()
      .filter((isWhite) => !isWhite).length;
    const area = markerOutline(markerPlace(id)!).reduce((sum, ring) => sum + ringArea(ring), 0);
    expect(area, `marker ${id}`).toBeCloseTo(black * FIELD_MM ** 2, 6);
  }
});

test('when a marker is outlined, no corner lies on a straight line', () => {
  for (const id of IDS) {
    for (const ring of markerOutline(markerPlace(id)!)) {
      ring.forEach((corner, i) => {
        const next = ring[(i + 1) % ring.length]!;
        const after = ring[(i + 2) % ring.length]!;
        expect((next.x - corner.x) * (after.y - next.y) - (next.y - corner.y) * (after.x - next.x)).not.toBe(
          0,
        );
      });
    }
  }
});
