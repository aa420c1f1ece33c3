import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import { layTable } from '../lay/table.js';
import { benchNow } from './bench-now.js';
import type { BenchNow } from './bench-now.js';
import { beginFlaw, goBack, goNext, keepFlaw, layMissing, tickFront } from './deeds.js';
import { sizeFlaw } from './found-flaw.js';
import { knuckle } from './knuckle.js';
import type { KnuckleButton } from './knuckle.js';
import { nextSizeMm } from './logic/found-shape.js';
import { neighbour } from './logic/order-of-work.js';
import type { WorkItem } from './logic/order-of-work.js';
import { benchTable } from './table.js';
import type { FlawInHand } from './table.js';

/** The large buttons: three above, and the one that is pressed most below, over the whole width. */
export function benchTray(app: App): TemplateResult {
  const table = benchTable(app);
  const now = benchNow(app);
  if (table.page.get() !== 'cutting' || now === undefined) return html``;
  const run = layTable(app).run.get();
  if (run !== undefined)
    return rows(app, [], { words: app.say('bench.stopLooking'), run: run.stop, disabled: run.isStopping });
  const flaw = table.flaw.get();
  if (flaw !== undefined) return flawButtons(app, flaw);
  if (now.item === undefined) return endButtons(app, now);
  return now.item.kind === 'step' ? stepButtons(app, now) : pieceButtons(app, now, now.item);
}

function rows(app: App, above: readonly KnuckleButton[], below: KnuckleButton): TemplateResult {
  return html`<div class="knuckles">
    ${above.map((each) => knuckle(app, each))} ${knuckle(app, { style: 'main', ...below })}
  </div>`;
}

const back = (app: App, { items, item }: BenchNow): KnuckleButton => ({
  words: app.say('bench.back'),
  disabled: item !== undefined && neighbour(items, item.key, -1) === undefined,
  run: () => goBack(app),
});

const next = (app: App): KnuckleButton => ({ words: app.say('bench.next'), run: () => goNext(app) });

function stepButtons(app: App, now: BenchNow): TemplateResult {
  const flaw: KnuckleButton = { words: app.say('bench.flawHere'), run: () => beginFlaw(app) };
  return rows(app, [back(app, now), flaw], { words: app.say('bench.stepDone'), run: () => goNext(app) });
}

function pieceButtons(
  app: App,
  now: BenchNow,
  { placement: { state } }: WorkItem & { kind: 'piece' },
): TemplateResult {
  const spoiled: KnuckleButton = {
    words: app.say('bench.spoiled'),
    style: 'warns',
    run: () => tickFront(app, 'spoiled'),
  };
  switch (state) {
    case 'planned':
      return rows(app, [back(app, now), spoiled, next(app)], {
        words: app.say('bench.cut'),
        run: () => tickFront(app, 'cut'),
      });
    case 'cut':
      return rows(
        app,
        [back(app, now), spoiled, { words: app.say('bench.notCut'), run: () => tickFront(app, 'planned') }],
        next(app),
      );
    case 'spoiled':
      return rows(
        app,
        [back(app, now), { words: app.say('bench.flawHere'), run: () => beginFlaw(app) }, next(app)],
        { words: app.say('bench.layAgain'), run: () => void layMissing(app) },
      );
  }
}

function endButtons(app: App, now: BenchNow): TemplateResult {
  return now.progress.unlaid > 0
    ? rows(app, [back(app, now)], {
        words: app.say('bench.layMissing', { n: now.progress.unlaid }),
        run: () => void layMissing(app),
      })
    : rows(app, [back(app, now)], {
        words: app.say('bench.toStock'),
        run: () => benchTable(app).page.set('stock'),
      });
}

function flawButtons(app: App, { shape }: FlawInHand): TemplateResult {
  return rows(
    app,
    [
      { words: app.say('bench.flaw.leave'), run: () => benchTable(app).flaw.set(undefined) },
      {
        words: app.say('bench.flaw.smaller'),
        disabled: nextSizeMm(shape, -1) === undefined,
        run: () => sizeFlaw(app, -1),
      },
      {
        words: app.say('bench.flaw.larger'),
        disabled: nextSizeMm(shape, 1) === undefined,
        run: () => sizeFlaw(app, 1),
      },
    ],
    {
      words: app.say(shape === undefined ? 'bench.flaw.touch' : 'bench.flaw.keep'),
      disabled: shape === undefined,
      run: () => void keepFlaw(app),
    },
  );
}
