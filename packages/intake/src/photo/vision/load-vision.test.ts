import { MARKER_CODES, MARKER_FIELDS, markerFields } from '@hidebound/leather';
import { expect, test } from 'vitest';
import { loadVision } from './load-vision.js';
import { withMats } from './mats.js';

test('when the vision library is loaded twice, both calls give the same one', async () => {
  const first = await loadVision();
  const second = await loadVision();
  expect(second.vision).toBe(first.vision);
});

test('when a marker of the sheets is drawn, it is that of the open dictionary 36h11', async () => {
  // Source: OpenCV's own table of that dictionary.
  const { vision } = await loadVision();
  const dictionary = vision.getPredefinedDictionary(vision.DICT_APRILTAG_36h11);
  for (let id = 0; id < MARKER_CODES.length; id++) {
    const drawn = withMats((keep) => {
      const mat = keep(new vision.Mat());
      dictionary.generateImageMarker(id, MARKER_FIELDS, mat, 1);
      return Array.from({ length: MARKER_FIELDS }, (_, row) =>
        [...mat.data.slice(row * MARKER_FIELDS, (row + 1) * MARKER_FIELDS)].map((value) => value > 0),
      );
    });
    expect(markerFields(id), `marker ${id}`).toEqual(drawn);
  }
});
