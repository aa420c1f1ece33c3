import { curveBox, growBox } from '@hidebound/geometry';
import type { Hide } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import type { Hand } from '../../../drawing/hand.js';
import { fitToView } from '../../../drawing/hatch.js';
import { dotPath, drawHideInto } from '../../../drawing/hide-layer.js';
import type { HideLayerOptions } from '../../../drawing/hide-layer.js';
import type { Stage } from '../../../drawing/stage.js';
import { fitted } from '../../../drawing/view.js';
import { hasPicture } from '../photo/stage/hide-picture.js';
import { hideNow } from './change-hide.js';
import { backHand, thicknessHand } from './hands/along-hands.js';
import { edgeHand } from './hands/edge-hand.js';
import { flawHand } from './hands/flaw-hand.js';
import type { Work } from './hands/work.js';
import { zoneHand } from './hands/zone-hand.js';
import { cornersOf, edgeOf, edgesOf, toldApart } from './logic/edges.js';
import { markBox } from './logic/nearest-mark.js';
import { sizeHandle } from './logic/size-handle.js';
import { marksTable } from './table.js';
import type { MarksTable, Tool } from './table.js';

/** Draws the hide and lays the tool in hand on it; gives back what takes all of it away. The photo is the caller's. */
export function openMarks(app: App, stage: Stage): () => void {
  const layers = {
    hide: stage.layer('hide'),
    handles: stage.layer('handles'),
    sketch: stage.layer('sketch'),
  };
  const work: Work = { app, stage, sketch: layers.sketch };
  const table = marksTable(app);
  let shownPath: string | undefined;

  const showHandles = (): void => {
    const hide = hideNow(app);
    if (hide !== undefined) drawHandles(layers.handles, hide, table.get(), stage.view.get().scale);
  };
  const draw = (): void => {
    const hide = hideNow(app);
    const path = app.place.get().hide;
    if (hide === undefined) {
      layers.handles.clear();
      layers.hide.clear();
      shownPath = undefined;
      return;
    }
    drawHideInto(layers.hide, hide, lookOf(app, hide, table.get()));
    showHandles();
    if (path !== shownPath) stage.fit(curveBox(hide.outline));
    shownPath = path;
    fitToView(layers.hide, stage.view.get());
  };
  const drawSoon = soon(draw);
  const goToCandidate = (now: MarksTable, before: MarksTable): void => {
    if (now.looking === undefined && before.looking !== undefined) stage.fitAgain();
    if (now.looking !== undefined && now.looking.id !== before.looking?.id)
      showCandidate(work, now.looking.id);
  };
  const ends = [
    stage.lay(handOf(work)),
    app.job.watch(drawSoon.ask),
    app.place.watch(drawSoon.ask),
    app.prefs.watch(drawSoon.ask),
    table.watch(drawSoon.ask),
    table.watch(goToCandidate),
    stage.view.watch((view) => fitToView(layers.hide, view)),
    stage.sharpView.watch(showHandles),
    drawSoon.end,
  ];
  draw();
  return () => {
    for (const end of ends) end();
    for (const layer of Object.values(layers)) layer.remove();
  };
}

/** Once a frame, however often it is asked for. */
function soon(draw: () => void): { readonly ask: () => void; readonly end: () => void } {
  let frame = 0;
  return {
    ask: () => {
      if (frame !== 0) return;
      frame = requestAnimationFrame(() => {
        frame = 0;
        draw();
      });
    },
    end: () => cancelAnimationFrame(frame),
  };
}

function lookOf(app: App, hide: Hide, table: MarksTable): HideLayerOptions {
  const chosen = chosenName(table);
  return {
    overPhoto: hasPicture(app, app.place.get().hide, hide),
    withCandidates: true,
    ...(chosen === undefined ? {} : { chosen }),
    words: {
      head: app.say('marks.head'),
      tail: app.say('marks.tail'),
      thickness: (mm) => app.measures().thickness(mm),
    },
  };
}

function chosenName({ chosen, looking }: MarksTable): string | undefined {
  if (looking !== undefined) return `candidate:${looking.id}`;
  if (chosen?.kind === 'flaw' || chosen?.kind === 'zone') return `${chosen.kind}:${chosen.id}`;
  if (chosen?.kind === 'tightness' || chosen?.kind === 'reading') return `${chosen.kind}:${chosen.index}`;
  return undefined;
}

/** Corners that lie closer on the screen are shown when one comes closer: all of a traced edge would be one thick band. */
const CORNERS_APART_PX = 18;

/** What can be taken hold of. */
function drawHandles(
  layer: Work['sketch'],
  hide: Hide,
  { tool, edge, chosen }: MarksTable,
  scale: number,
): void {
  layer.clear();
  if (tool === 'edge' && edge.way === 'corners') {
    const leastMm = CORNERS_APART_PX / scale;
    const dots = edgesOf(hide).flatMap(({ curve }) => toldApart(cornersOf(curve), leastMm).map(dotPath));
    layer.path(dots.join('')).attr({ class: 'corner-dots' });
  }
  if (chosen?.kind === 'corner') {
    const curve = edgeOf(hide, chosen.edge);
    const at = curve === undefined ? undefined : cornersOf(curve)[chosen.corner];
    if (at !== undefined) layer.path(dotPath(at)).attr({ class: 'handle' });
  }
  if (chosen?.kind === 'place') layer.path(dotPath(chosen.at)).attr({ class: 'handle' });
  if (chosen?.kind !== 'flaw' || chosen.isFresh) return;
  const shape = hide.flaws.find(({ id }) => id === chosen.id)?.shape;
  const handle = shape === undefined ? undefined : sizeHandle(shape);
  if (handle !== undefined) layer.path(dotPath(handle)).attr({ class: 'handle' });
}

/** So much leather is shown around what is looked at, mm. */
const AROUND_MM = 60;

function showCandidate({ app, stage }: Work, id: string): void {
  const shape = hideNow(app)?.candidates.find((candidate) => candidate.id === id)?.shape;
  if (shape === undefined) return;
  // "Show all" still means the hide.
  stage.setView(fitted(stage.view.get(), growBox(markBox(shape), AROUND_MM), stage.size.get()));
}

/** The hand of the tool that is in hand; without one, flaws can be chosen and moved. */
function handOf(work: Work): Hand {
  const flaws = flawHand(work);
  const hands: Readonly<Record<Tool, Hand>> = {
    flaws,
    edge: edgeHand(work),
    back: backHand(work),
    zones: zoneHand(work),
    thickness: thicknessHand(work),
  };
  const now = (): Hand => {
    const { tool } = marksTable(work.app).get();
    return tool === undefined ? flaws : hands[tool];
  };
  const has = (): boolean => hideNow(work.app) !== undefined;
  return {
    press: (at) => (has() ? now().press?.(at) : undefined),
    tap: (at) => has() && now().tap?.(at) === true,
    longPress: (at) => {
      if (!has() || flaws.longPress?.(at) !== true) return false;
      // The card is about the flaw, whatever tool was in hand.
      const table = marksTable(work.app);
      if (table.get().tool !== 'flaws') table.update((before) => ({ ...before, tool: undefined }));
      return true;
    },
    describe: (at) => (has() ? now().describe?.(at) : undefined),
  };
}
