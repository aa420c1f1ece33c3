import { IDENTITY } from '@hidebound/geometry';
import { expect, it } from 'vitest';
import type { GraphicsState } from './state.js';
import { TEXT_START, showText } from './text-runs.js';

// Unicode, alphabetic presentation forms: U+FB02 stands for "fl", U+FB01 for "fi"; U+00BD is no ligature.
it('when a font draws letters as one, the text has them one by one, as they are typed', () => {
  const text = {
    font: 'F1',
    size: 10,
    charSpacing: 0,
    wordSpacing: 0,
    horizontalScale: 1,
    leading: 0,
    rise: 0,
    renderingMode: 0,
  };
  const state = { text, toMm: IDENTITY } as unknown as GraphicsState;
  const glyphs = [...'\uFB02ap \uFB01t \u00BD'].map((unicode) => ({ unicode, width: 500 }));
  expect(showText(glyphs, TEXT_START, state).run?.text).toBe('flap fit \u00BD');
});
