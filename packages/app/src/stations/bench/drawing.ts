import { pieceCopyKey } from '@hidebound/leather';
import type { Hide } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import type { Watched } from '../../app/cell.js';
import { fitToView } from '../../drawing/hatch.js';
import { drawHideInto } from '../../drawing/hide-layer.js';
import { showPieces, shownOnHide } from '../../drawing/piece-layer.js';
import type { DrawnPieces } from '../../drawing/piece-layer.js';
import type { Stage } from '../../drawing/stage.js';
import { hideAt } from '../../job/job.js';
import { hasPicture, openHidePicture } from '../hide/photo/stage/hide-picture.js';
import { benchNow, hidePathOf } from './bench-now.js';
import type { BenchNow } from './bench-now.js';
import { handOnFlaw } from './found-flaw.js';
import { handAtBench } from './hand.js';
import { boxAround } from './logic/around.js';
import { drawMeasuresInto } from './measure-layer.js';
import { stayAwake } from './stay-awake.js';
import { benchTable } from './table.js';
import { watchMeasures } from './watch-measures.js';

/** Draws what is in front, large, with what lies around it, over the hide's photo where there is one. */
export function openBenchDrawing(app: App, stage: Stage): () => void {
  const table = benchTable(app);
  const layers = {
    hide: stage.layer('hide'),
    pieces: stage.layer('pieces'),
    measures: stage.layer('measures'),
    sketch: stage.layer('sketch'),
  };
  let drawnHide: Hide | undefined;
  let drawn: DrawnPieces = new Map();
  let shownKey: string | undefined;
  let frame = 0;

  const draw = (): void => {
    const now = benchNow(app);
    lookAtHideOf(app, now);
    const { hide: path } = app.place.get();
    const hide = hideAt(app.job.get(), path);
    if (hide !== drawnHide) {
      layers.hide.clear();
      if (hide !== undefined)
        drawHideInto(layers.hide, hide, { overPhoto: hasPicture(app, path, hide), withCandidates: false });
      if (hide?.id !== drawnHide?.id) {
        layers.pieces.clear();
        drawn = new Map();
      }
      drawnHide = hide;
    }
    const shown = now === undefined || hide === undefined ? [] : shownOnHide(now.layout, hide.id);
    drawn = showPieces(layers.pieces, shown, drawn);
    markFront(drawn, now);
    drawMeasuresInto(layers.measures, app, now);
    goThere(now);
    fitAll();
  };
  const goThere = (now: BenchNow | undefined): void => {
    const item = now?.item;
    if (now === undefined || item === undefined || item.key === shownKey) return;
    const box = boxAround(now.layout, item);
    if (box === undefined) return;
    shownKey = item.key;
    stage.fit(box);
    stage.say(app.say('bench.inFront', { number: item.number }));
  };
  const fitAll = (): void => {
    const view = stage.sharpView.get();
    if (view !== undefined) for (const layer of Object.values(layers)) fitToView(layer, view);
  };

  draw();
  const ends = [
    ...[app.job, app.place, table.front, table.pending, table.setOut, table.flaw].map((each) =>
      (each as Watched<unknown>).watch(draw),
    ),
    stage.sharpView.watch(fitAll),
    stage.size.watch(() => {
      // The stage keeps its middle where it was first; only then is there a size to fit into.
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(() => {
        shownKey = undefined;
        goThere(benchNow(app));
      });
    }),
    stage.lay(handAtBench(app)),
    stage.lay(handOnFlaw(app, stage, layers.sketch)),
    openHidePicture(app, stage),
    watchMeasures(app),
    stayAwake(app),
  ];
  return () => {
    cancelAnimationFrame(frame);
    for (const end of ends) end();
    table.flaw.set(undefined);
    for (const layer of Object.values(layers)) layer.remove();
  };
}

/** The hide that the piece in front lies on comes in front, too. */
function lookAtHideOf(app: App, now: BenchNow | undefined): void {
  const path = now?.item === undefined ? undefined : hidePathOf(app, now, now.item.hide);
  if (path !== undefined && path !== app.place.get().hide)
    app.place.update((place) => ({ ...place, hide: path }));
}

function markFront(drawn: DrawnPieces, now: BenchNow | undefined): void {
  const item = now?.item;
  const own = item?.kind === 'piece' ? item.key : undefined;
  const waiting = new Set(item?.kind === 'step' ? item.before : []);
  for (const { group, placement } of drawn.values()) {
    const key = pieceCopyKey(placement);
    group.node.classList.toggle('is-chosen', key === own || waiting.has(key));
  }
}
