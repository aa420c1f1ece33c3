import type { BaseLine, Measure } from '@hidebound/leather';
import type { App } from '../../../app/app.js';

/** A length as it is read off a rule: millimetres to the half, which the screen's rounding of long lengths would hide. */
export function ruleLength(app: App, mm: number): string {
  const measures = app.measures();
  return measures.lengthUnit === 'mm' ? `${measures.number(mm, 1)} mm` : measures.length(mm);
}

/** True if pieces lie on both sides of the line, so that outs are left or right of it. */
function hasTwoSides({ kind }: BaseLine): boolean {
  return kind === 'backbone' || kind === 'long axis';
}

/** How far out from the line: with its side where the line runs down the middle. */
export function outWords(app: App, line: BaseLine | undefined, { outMm }: Measure): string {
  if (line === undefined || !hasTwoSides(line) || outMm === 0) return ruleLength(app, outMm);
  return app.say(outMm > 0 ? 'bench.right' : 'bench.left', { length: ruleLength(app, Math.abs(outMm)) });
}

/** The turn of an arrow against the line, clockwise as seen from the grain side. */
export function turnWords(app: App, turnDeg: number): string {
  if (turnDeg === 0) return app.say('bench.turn.with');
  if (turnDeg === 180) return app.say('bench.turn.against');
  const size = app.measures().degrees(Math.abs(turnDeg));
  return app.say(turnDeg > 0 ? 'bench.turn.right' : 'bench.turn.left', { size });
}
