import { html, nothing } from 'lit-html';
import type { App } from '../../../app/app.js';
import { benchNow } from '../bench-now.js';
import { benchTable } from '../table.js';
import type { Remark } from '../table.js';

/** What was just done, with the way to take it back. */
export function remarkLine(app: App) {
  const { remark, pending } = benchTable(app);
  const last = remark.get();
  const isSettled = pending.get().size === 0;
  return html`<div class="bench-remark" role="status">
    ${
      last === undefined || (isSettled && isPast(app, last))
        ? nothing
        : html`<span>${remarkWords(app, last)}</span>
            ${last.kind === 'no room' || last.kind === 'marking' ? nothing : takeBack(app, last, isSettled)}`
    }
  </div>`;
}

/** Undone by other ways, or no longer the last thing: taking back would take back something else. */
function isPast(app: App, last: Remark): boolean {
  const step = stepOf(app, last);
  return step !== undefined && app.history.get().done.at(-1)?.label !== step;
}

/** The step to undo that a remark is about. */
function stepOf(app: App, last: Remark): string | undefined {
  switch (last.kind) {
    case 'ticked':
      return app.say(`bench.change.${last.to}`, { number: last.number, piece: last.piece });
    case 'laid':
      return app.say('lay.change.missing');
    case 'flaw':
      return app.say('bench.change.flaw');
    default:
      return undefined;
  }
}

function takeBack(app: App, last: Remark, isSettled: boolean) {
  const back = (): void => {
    const { remark, front } = benchTable(app);
    remark.set(undefined);
    app.undo();
    // The piece itself comes in front again: it is the one that is in hand.
    if (last.kind === 'ticked')
      front.set(benchNow(app)?.items.find(({ number }) => number === last.number)?.key);
  };
  return html`<button class="quiet" ?disabled=${!isSettled} @click=${back}>
    ${app.say('bench.takeBack')}
  </button>`;
}

function remarkWords(app: App, remark: Remark): string {
  switch (remark.kind) {
    case 'ticked':
      return app.say(`bench.just.${remark.to}`, { number: remark.number, piece: remark.piece });
    case 'laid':
      return app.say('bench.just.laid', { piece: remark.piece, hide: remark.hide, number: remark.number });
    case 'no room':
      return app.say('bench.noRoom', { n: remark.n });
    case 'marking':
      return app.say('bench.just.marking');
    case 'flaw': {
      const taken = remark.lifted.filter(({ isCut }) => !isCut).length;
      const cut = remark.lifted.length - taken;
      if (remark.lifted.length === 0) return app.say('bench.just.flaw');
      if (cut > 0) return app.say('bench.just.flawCut', { taken, cut });
      return app.say('bench.just.flawLifted', { n: taken });
    }
  }
}
