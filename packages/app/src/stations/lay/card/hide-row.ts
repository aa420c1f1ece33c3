import { html, nothing, svg } from 'lit-html';
import { curveBox } from '@hidebound/geometry';
import type { Hide } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { curvePath } from '../../../drawing/path-data.js';
import { pieceOf, placementMatrix } from '../../../drawing/piece-layer.js';
import { pathBeside } from '../../../job/job.js';
import type { Laid } from '../../../work/lay-tasks.js';
import { presentLayout } from '../present.js';
import type { LayTable } from '../table.js';
import { hidesOfOrderInFront } from './ready.js';

interface SmallHide {
  readonly path: string;
  readonly hide: Hide;
}

/** The order's hides side by side, small; the one in front is chosen here. */
export function hideRow(app: App, table: LayTable) {
  const hides = hidesInOrder(app);
  if (hides.length < 2) return nothing;
  const run = table.run.get();
  const placements = run?.placements ?? presentLayout(app)?.layout.placements ?? [];
  return html`<section aria-label=${app.say('lay.hides')}>
    <h3>${app.say('lay.hides')}</h3>
    <div class="hide-row">${hides.map((small) => button(app, table, small, placements))}</div>
  </section>`;
}

function hidesInOrder(app: App): SmallHide[] {
  const job = app.job.get();
  const named = hidesOfOrderInFront(app).map(([path]) => path);
  const present = presentLayout(app);
  const laid = present?.layout.hides.map(({ file }) => pathBeside(present.path, file)) ?? [];
  return [...new Set([...named, ...laid])].flatMap((path) => {
    const file = job.files.get(path);
    return file?.kind === 'hide' ? [{ path, hide: file.hide }] : [];
  });
}

/** While a run lasts only the drawing in front moves: the small ones would take the time that it needs. */
function drawnIn(table: LayTable, own: readonly Laid[]): readonly Laid[] {
  return table.run.get()?.placements === undefined ? own : [];
}

function button(app: App, table: LayTable, { path, hide }: SmallHide, placements: readonly Laid[]) {
  const { minX, minY, maxX, maxY } = curveBox(hide.outline);
  const own = placements.filter((one) => one.hide === hide.id);
  const pieces = table.run.get() ?? presentLayout(app)?.layout;
  return html`<button
    class="small-hide"
    aria-pressed=${String(app.place.get().hide === path)}
    @click=${() => app.place.update((place) => ({ ...place, hide: path }))}
  >
    <svg viewBox="${minX} ${minY} ${maxX - minX} ${maxY - minY}" aria-hidden="true">
      <path class="hide-outline" d=${curvePath(hide.outline)}></path>
      ${drawnIn(table, own).map((placement) => {
        const piece = pieces === undefined ? undefined : pieceOf(pieces, placement);
        return piece === undefined
          ? ''
          : svg`<path class="piece-cut" d=${curvePath(piece.shape.cut)} transform=${placementMatrix(placement)}></path>`;
      })}
    </svg>
    <span class="small-hide-name">${hide.id}</span>
    <span>${app.say('lay.count', { n: own.length })}</span>
  </button>`;
}
