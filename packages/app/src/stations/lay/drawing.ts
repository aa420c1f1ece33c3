import type { G } from '@svgdotjs/svg.js';
import { curveBox } from '@hidebound/geometry';
import type { Hide } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import { createGlider } from '../../drawing/glide.js';
import { drawHideInto } from '../../drawing/hide-layer.js';
import { copyKey, pieceOf, placementMatrix, showPieces, shownOnHide } from '../../drawing/piece-layer.js';
import type { DrawnPieces, ShownPiece } from '../../drawing/piece-layer.js';
import type { Stage } from '../../drawing/stage.js';
import type { View } from '../../drawing/view.js';
import { hideAt } from '../../job/job.js';
import type { Laid } from '../../work/lay-tasks.js';
import { hasPicture, openHidePicture } from '../hide/photo/stage/hide-picture.js';
import { handOnPieces } from './hand/hand-on-stage.js';
import { putBack } from './hand/in-hand.js';
import { openSlip } from './hand/slip.js';
import { createTurnHandle } from './hand/turn-handle.js';
import { watchLayout } from './look-over.js';
import { presentLayout } from './present.js';
import { layTable } from './table.js';
import type { InHand, LayTable, Run } from './table.js';

/** Draws the hide in front with its pieces, and lays the hand on that moves them. */
export function openDrawing(app: App, stage: Stage): () => void {
  const table = layTable(app);
  const hideLayer = stage.layer('hide');
  const pieceLayer = stage.layer('pieces');
  const hatching = layHatching(stage);
  const handle = createTurnHandle(app, table, stage);
  const glider = createGlider();
  let drawnHide: Hide | undefined;
  let isOverPhoto = false;
  let drawn: DrawnPieces = new Map();
  let fitted: View | undefined;
  let refit = 0;

  const draw = (): void => {
    const path = app.place.get().hide;
    const hide = hideAt(app.job.get(), path);
    const overPhoto = hide !== undefined && table.overPhoto.get() && hasPicture(app, path, hide);
    if (hide !== drawnHide || overPhoto !== isOverPhoto) {
      isOverPhoto = overPhoto;
      glider.end();
      drawHide(hideLayer, stage, hide, drawnHide, overPhoto);
      if (hide !== undefined && hide.id !== drawnHide?.id) fitted = stage.view.get();
      if (hide?.id !== drawnHide?.id) {
        pieceLayer.clear();
        drawn = new Map();
      }
      drawnHide = hide;
    }
    const shown = hide === undefined ? [] : shownNow(app, table, hide.id);
    drawn = showPieces(pieceLayer, shown, drawn, glider.move);
    markChosen();
  };
  /** The hide is as large as the card leaves room for it, until it is moved. */
  const fitAgain = (): void => {
    refit = 0;
    stage.fitAgain();
    fitted = stage.view.get();
  };
  const markChosen = (): void => {
    const chosen = table.chosen.get();
    for (const [key, { group }] of drawn) group.node.classList.toggle('is-chosen', key === chosen);
    const top = drawn.get(chosen ?? '');
    if (top !== undefined && top.group.node.nextSibling !== null) pieceLayer.node.append(top.group.node);
    handle.update(drawnHide?.id);
  };
  /** Only the one piece is touched: the drawing of all others stays as it is. */
  const moveHeld = (hand: InHand): void => {
    const key = copyKey(hand.copy);
    const known = drawn.get(key);
    if (known === undefined) return;
    const placement = { ...hand.copy, ...hand.at };
    known.group.node.setAttribute('transform', placementMatrix(placement));
    known.group.node.setAttribute('class', `piece ${heldStyle(hand)} is-chosen`);
    drawn = new Map(drawn).set(key, { ...known, placement });
    handle.update(drawnHide?.id);
  };

  draw();
  let takePhotoAway = showPhoto(app, table, stage);
  const ends = [
    app.job.watch(draw),
    table.overPhoto.watch(() => {
      takePhotoAway();
      takePhotoAway = showPhoto(app, table, stage);
      draw();
    }),
    app.place.watch((place, before) => {
      if (place.hide !== before.hide) putBack(app, table);
      draw();
    }),
    table.run.watch((run, before) => {
      if (run?.placements !== before?.placements || (run === undefined) !== (before === undefined)) draw();
    }),
    table.chosen.watch(markChosen),
    table.hand.watch((hand, before) => {
      if (hand !== undefined && before?.copy === hand.copy) moveHeld(hand);
      else draw();
    }),
    stage.size.watch(() => {
      const { scale, turnDeg } = stage.view.get();
      if (scale === fitted?.scale && turnDeg === fitted.turnDeg) refit ||= requestAnimationFrame(fitAgain);
    }),
    stage.view.watch(() => handle.update(drawnHide?.id)),
    stage.lay(handOnPieces(app, table, stage)),
    openSlip(app, table, stage),
    watchLayout(app, table),
  ];
  return () => {
    glider.end();
    cancelAnimationFrame(refit);
    for (const end of ends) end();
    takePhotoAway();
    putBack(app, table);
    handle.remove();
    hatching.remove();
    hideLayer.remove();
    pieceLayer.remove();
  };
}

/** Below the drawing, where it is wished for; gives back what takes it away. */
function showPhoto(app: App, table: LayTable, stage: Stage): () => void {
  if (table.overPhoto.get()) return openHidePicture(app, stage);
  stage.setPhoto(undefined);
  return () => undefined;
}

/** What a piece that breaks a rule is filled with, mm. */
const HATCH_MM = 9;

function layHatching(stage: Stage): G {
  const layer = stage.layer('hatching');
  layer
    .pattern(HATCH_MM, HATCH_MM, (add) => {
      add.rect(HATCH_MM, HATCH_MM).attr({ class: 'hatch-ground' });
      add.line(0, 0, 0, HATCH_MM).attr({ class: 'hatch-line' });
    })
    .attr({ id: 'breaking', patternTransform: 'rotate(45)' });
  return layer;
}

function drawHide(
  layer: G,
  stage: Stage,
  hide: Hide | undefined,
  before: Hide | undefined,
  overPhoto: boolean,
): void {
  layer.clear();
  if (hide === undefined) return;
  drawHideInto(layer, hide, { overPhoto, withCandidates: false });
  if (hide.id !== before?.id) stage.fit(curveBox(hide.outline));
}

/** What a run has found so far, else what the layout says; what is in hand lies where the hand has it. */
function shownNow(app: App, table: LayTable, hideId: string): ShownPiece[] {
  const run = table.run.get();
  if (run?.placements !== undefined) return shownOfRun(run, run.placements, hideId);
  const present = presentLayout(app);
  const lying = present === undefined ? [] : shownOnHide(present.layout, hideId);
  const hand = table.hand.get();
  if (hand === undefined) return lying;
  const key = copyKey(hand.copy);
  const others = lying.filter(
    ({ placement, style }) => style.includes('is-spoiled') || copyKey(placement) !== key,
  );
  if (hand.at.hide !== hideId) return others;
  return [...others, { piece: hand.piece, placement: { ...hand.copy, ...hand.at }, style: heldStyle(hand) }];
}

function shownOfRun(run: Run, placements: readonly Laid[], hideId: string): ShownPiece[] {
  return placements.flatMap((placement) => {
    const piece = placement.hide === hideId ? pieceOf(run, placement) : undefined;
    return piece === undefined ? [] : [{ piece, placement, style: 'is-planned' }];
  });
}

/** By its edge and hatching, not by colour alone. */
function heldStyle({ broken }: InHand): string {
  return broken === undefined || broken.length === 0 ? 'in-hand' : 'in-hand is-breaking';
}
