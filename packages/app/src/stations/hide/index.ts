import { html } from 'lit-html';
import type { App } from '../../app/app.js';
import type { Stage } from '../../drawing/stage.js';
import type { Station } from '../../shell/station.js';
import { MARKS_KEYS, marksCard, marksTray, openMarks } from './marks/index.js';
import { addingCell, isAdding } from './photo/adding.js';
import { hideHead, openHidePicture, openPhoto, photoCard, photoTray } from './photo/index.js';

/** The hide's place: a hide comes in by a photo, and then its marks are drawn. */
export const HIDE_STATION: Station = {
  card: (app) => html`${hideHead(app)} ${isAdding(app) ? photoCard(app) : marksCard(app)}`,
  tray: (app) => (isAdding(app) ? photoTray(app) : marksTray(app)),
  open: (app, stage) => openOne(app, stage),
  keys: MARKS_KEYS.map((row) => ({ ...row, run: (app) => !isAdding(app) && row.run(app) })),
};

/** Of the two, what goes on now lies on the stage. */
function openOne(app: App, stage: Stage): () => void {
  let shown: boolean | undefined;
  let close = (): void => undefined;
  const settle = (): void => {
    const now = isAdding(app);
    if (now === shown) return;
    close();
    shown = now;
    close = now ? openPhoto(app, stage) : openMarked(app, stage);
    app.redraw();
  };
  const ends = [addingCell(app).watch(settle), app.place.watch(settle)];
  settle();
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
