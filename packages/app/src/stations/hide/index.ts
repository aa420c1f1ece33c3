import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import type { Stage } from '../../drawing/stage.js';
import { nextStepLine } from '../../shell/next-step-line.js';
import type { Station } from '../../shell/station.js';
import {
  MARKS_KEYS,
  asksFirst,
  doubtsLine,
  marksCard,
  marksTable,
  marksTray,
  openMarks,
} from './marks/index.js';
import {
  bringInCard,
  bringInKind,
  hideHead,
  hideLine,
  listenToDrops,
  openBringIn,
  openHidePicture,
  photoTray,
  watchBringIn,
} from './photo/index.js';

const isMarking = (app: App): boolean => bringInKind(app) === undefined;

/** The hide's place: a hide comes in by a photo, and then its marks are drawn. */
export const HIDE_STATION: Station = {
  card: (app) => (isMarking(app) ? markingCard(app) : bringInCard(app)),
  tray: (app) => (isMarking(app) ? marksTray(app) : photoTray(app)),
  open: (app, stage) => openOne(app, stage),
  keys: MARKS_KEYS.map((row) => ({ ...row, run: (app) => isMarking(app) && row.run(app) })),
};

/** While possible flaws are looked through, the answers alone are on the card; what comes next waits for free hands. */
function markingCard(app: App): TemplateResult {
  const { tool, looking } = marksTable(app).get();
  const isFree = looking === undefined && tool === undefined;
  return html`${looking === undefined ? hideHead(app, tool !== undefined) : hideLine(app)} ${marksCard(app)}
  ${isFree ? whatComesNext(app) : nothing}`;
}

function whatComesNext(app: App) {
  return asksFirst(app) ? doubtsLine(app) : nextStepLine(app);
}

/** Of all of it, what goes on now lies on the stage. */
function openOne(app: App, stage: Stage): () => void {
  const open = (): (() => void) => (isMarking(app) ? openMarked(app, stage) : openBringIn(app, stage));
  let shown = bringInKind(app);
  let close = open();
  const settle = (): void => {
    const now = bringInKind(app);
    if (now === shown) return;
    close();
    shown = now;
    close = open();
    app.redraw();
  };
  const ends = [watchBringIn(app, settle), app.place.watch(settle), listenToDrops(app, stage)];
  return () => {
    for (const end of ends) end();
    close();
  };
}

function openMarked(app: App, stage: Stage): () => void {
  const closePicture = openHidePicture(app, stage);
  const closeMarks = openMarks(app, stage);
  return () => {
    closeMarks();
    closePicture();
  };
}
