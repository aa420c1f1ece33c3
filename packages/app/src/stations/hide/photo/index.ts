import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../app/app.js';
import type { Stage } from '../../../drawing/stage.js';
import { receiveFiles } from '../../../shell/receive-files.js';
import { bringInOf, hideDesk } from './bring-in.js';
import { mendCard } from './cards/mend-card.js';
import { panelCard } from './cards/panel-card.js';
import { photoCard } from './cards/photo-card.js';
import { waysCard } from './cards/ways-card.js';
import { bringFiles } from './deeds/other-ways.js';
import { openMendStage } from './stage/mend-stage.js';
import { openPhotoStage } from './stage/photo-stage.js';
import { openSeenStage } from './stage/seen-stage.js';
import { openWaysStage } from './stage/ways-stage.js';

export { hideHead, hideLine } from './cards/hide-head.js';
export { openHidePicture } from './stage/hide-picture.js';
export { photoTray } from './tray.js';

/** What of bringing a hide in lies on the stage; undefined while the marks have it. */
export function bringInKind(app: App): string | undefined {
  return bringInOf(app)?.kind;
}

/** Tells when something is brought in, or no longer. */
export function watchBringIn(app: App, listener: () => void): () => void {
  return hideDesk(app).bringIn.watch(listener);
}

/** The steps by which a hide comes in. */
export function bringInCard(app: App): TemplateResult {
  const now = bringInOf(app);
  switch (now?.kind) {
    case 'ways':
      return waysCard(app, now.problem, now.working === true);
    case 'panel':
      return panelCard(app, now);
    case 'photo':
      return photoCard(app, now);
    case 'mend':
      return mendCard(app, now);
    case 'seen':
      return html`<h2>${app.say('hide.seen')}</h2>
        <p>${app.say('hide.seenHow')}</p>`;
    case undefined:
      return html``;
  }
}

/** What is being brought in lies on the stage. */
export function openBringIn(app: App, stage: Stage): () => void {
  switch (bringInKind(app)) {
    case 'ways':
      return openWaysStage(app, stage);
    case 'photo':
      return openPhotoStage(app, stage);
    case 'mend':
      return openMendStage(app, stage);
    case 'seen':
      return openSeenStage(app, stage);
    default:
      return () => undefined;
  }
}

/** Files that are dropped come in as hides. */
export function listenToDrops(app: App, { element }: Stage): () => void {
  return receiveFiles(element, (files) => void bringFiles(app, files));
}
