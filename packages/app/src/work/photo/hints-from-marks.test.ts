import { IDENTITY } from '@hidebound/geometry';
import type { PhotoView } from '@hidebound/intake/photo';
import { parsePhotoHints, writePhotoHints } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import { hintsFromMarks } from './hints-from-marks.js';

/** One pixel for a mm, so that places keep their numbers; the second photo shows what lies 500 mm farther right. */
const view = (file: string, fromX: number): PhotoView => ({
  file,
  camera: {
    width: 600,
    height: 400,
    homography: [1, 0, -fromX, 0, 1, 0, 0, 0, 1],
    axis: { x: 300, y: 200 },
    radiusPx: 360,
    k1: 0,
    k2: 0,
    p1: 0,
    p2: 0,
  },
  frame: IDENTITY,
  references: [],
});
const VIEWS = [view('left.jpg', 0), view('right.jpg', 500)];
const line = (...xs: readonly number[]) => xs.map((x) => ({ x, y: 100 }));

describe('strokes on a hide as hints of its photos', () => {
  it('when a stroke runs from one photo into the next, each is told the part that it shows', () => {
    const marks = { hideStrokes: [line(450, 520, 580, 700)], floorStrokes: [], edgePoints: [] };
    const { photos } = hintsFromMarks({ photos: [] }, marks, VIEWS);
    expect(photos.map(({ photo, hideStrokes }) => [photo, hideStrokes])).toEqual([
      ['left.jpg', [line(450, 520, 580)]],
      ['right.jpg', [line(20, 80, 200)]],
    ]);
  });

  it('when hints are there already, they stay, and a photo that is told nothing new is not named', () => {
    const rectangle = {
      kind: 'rectangle',
      corners: [line(1)[0]!, line(9)[0]!, { x: 9, y: 200 }, { x: 1, y: 200 }],
      widthMm: 300,
      heightMm: 200,
    } as const;
    const said = {
      photos: [
        {
          photo: 'left.jpg',
          reference: rectangle,
          hideStrokes: [],
          floorStrokes: [line(5, 8)],
          edgePoints: [],
        },
      ],
    };
    const marks = { hideStrokes: [], floorStrokes: [], edgePoints: [{ x: 40, y: 50 }] };
    const hints = hintsFromMarks(said, marks, VIEWS);
    expect(hints.photos).toEqual([{ ...said.photos[0]!, edgePoints: [{ x: 40, y: 50 }] }]);
    // What is kept is read again as it was (the format's own reader).
    expect(parsePhotoHints(writePhotoHints(hints), { file: 'side.hints.yaml' })).toEqual(hints);
  });
});
