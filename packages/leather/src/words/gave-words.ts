import type { StitchMarks } from '../model/stitch.js';
import { SAME_PITCH_MM } from '../stitch/stitch-constants.js';
import { trimmed } from '../units/length.js';

/** What gave way on a line, short enough for a list: "ends give 1.6 mm"; undefined where nothing did. */
export function gaveWords({ gave, pitchMm, usedPitchMm, cornersMissed }: StitchMarks): string | undefined {
  const mm = Math.abs(gave.changeMm).toFixed(1);
  const corners = cornersMissed === 0 ? [] : [`${cornersMissed} corners without a hole`];
  const words = (): string[] => {
    switch (gave.what) {
      case 'nothing':
        return [];
      case 'end gap':
        return [`ends give ${mm} mm`];
      case 'length':
        return [`${mm} mm ${gave.changeMm > 0 ? 'longer' : 'shorter'} than drawn`];
      case 'last stitch':
        return [`last stitch ${mm} mm ${gave.changeMm > 0 ? 'longer' : 'shorter'}`];
      case 'pitch':
        return [
          usedPitchMm.max - usedPitchMm.min < SAME_PITCH_MM
            ? `${trimmed(pitchMm, 2)} mm asked`
            : `${usedPitchMm.min.toFixed(2)} to ${usedPitchMm.max.toFixed(2)} mm, ${trimmed(pitchMm, 2)} asked`,
        ];
      case 'gathering':
        return [
          `${mm} mm ${gave.changeMm > 0 ? 'gathered in' : 'stretched'}, pitch ${usedPitchMm.mean.toFixed(2)}`,
        ];
    }
  };
  const all = [...words(), ...corners];
  return all.length === 0 ? undefined : all.join(', ');
}
