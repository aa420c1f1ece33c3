import type { App } from '../../../app/app.js';
import { listField } from '../../../fields/index.js';
import type { LayTable } from '../table.js';

/** How long a run may look for better layouts, s; undefined: until it is stopped. */
const CHOICES: readonly (number | undefined)[] = [10, 30, 120, 600, undefined];

export function howLong(app: App, table: LayTable) {
  const now = table.seconds.get();
  return listField(
    'lay-seconds',
    app.say('lay.howLong'),
    CHOICES.map((seconds) => [String(seconds ?? ''), words(app, seconds)] as const),
    String(now ?? ''),
    (seconds) => table.seconds.set(seconds === '' ? undefined : Number(seconds)),
  );
}

function words(app: App, seconds: number | undefined): string {
  if (seconds === undefined) return app.say('lay.untilStopped');
  return seconds < 60 ? app.say('lay.seconds', { n: seconds }) : app.say('lay.minutes', { n: seconds / 60 });
}
