import { IntakeError } from '@hidebound/intake';
import { leatherError } from '@hidebound/leather';
import { RenderError } from '@hidebound/render';
import { describe, expect, it } from 'vitest';
import { StoreError } from '../store/store-error.js';
import { WorkError } from '../work/task.js';
import { germanFindings } from './de/sentences.js';
import { toldError } from './told.js';

const write = germanFindings('de-DE');
const german = (error: unknown): string | undefined => {
  const { finding } = toldError(error);
  return finding && write(finding);
};

describe('what was thrown, as it is told', () => {
  it('when two packages have one code, each is told in its own words', () => {
    expect(german(leatherError('too-large', { sizeMb: 70, limitMb: 64 }, { file: 'a.hide.json' }))).toBe(
      'a.hide.json: Die Datei hat 70 MB Text, höchstens 64 MB werden gelesen; aufteilen oder nachsehen, ob es die richtige ist.',
    );
    expect(german(new IntakeError('too-large', { megabytes: 70, limit: 50 }, { file: 'a.svg' }))).toBe(
      'a.svg: Die Datei hat 70 MB; ein Schnittmuster hat höchstens 50 MB. Bilder und verborgene Ebenen herausnehmen.',
    );
  });

  it('when a worker refused, it is told as if it had been thrown here', () => {
    const error = leatherError('missing-file', { file: 'a.svg' });
    const passed = new WorkError({ code: error.code, isRefusal: true, ...toldError(error) });
    expect(toldError(passed).sentence).toBe(error.message);
    expect(german(passed)).toBe(
      'Im Auftrag fehlt die Datei „a.svg“, oder sie lässt sich nicht lesen; hinzufügen oder aus dem Auftrag nehmen.',
    );
  });

  it('when drawing or keeping failed, that has German words, too', () => {
    expect(german(new RenderError('nothing-to-draw', 'There is no template to draw: none.'))).toBe(
      'So ausgewählt, gibt es keine Schablone zu zeichnen.',
    );
    expect(german(new StoreError('too large', 'Too large.'))).toBe('Die Datei ist zu groß.');
  });

  it('when it is a fault of the program, only its own message is told', () => {
    expect(toldError(new TypeError('x is undefined'))).toEqual({ sentence: 'x is undefined' });
    expect(toldError('torn')).toEqual({ sentence: 'torn' });
  });

  it('when a code is nobody’s, nothing is made up', () => {
    expect(write({ code: 'mystery', params: {} })).toBeUndefined();
    expect(write({ code: 'toString', params: {} })).toBeUndefined();
    expect(write({ of: 'app', code: 'mystery', params: {} })).toBeUndefined();
  });
});
