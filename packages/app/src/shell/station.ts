import type { TemplateResult } from 'lit-html';
import type { App } from '../app/app.js';
import type { Stage } from '../drawing/stage.js';
import type { WordKey } from '../words/words.js';

/** A key that does something at one place of the job. */
export interface KeyRow {
  /** As `KeyboardEvent.key` has it, with "Shift+" or "Ctrl+" before it where they matter: "f", "Delete", "Ctrl+d". */
  readonly key: string;
  readonly words: WordKey;
  /** False where it does not apply now, so that others may have the key. */
  readonly run: (app: App) => boolean;
}

/** One place of the job: what stands on its card, which tools are within reach, what is drawn. */
export interface Station {
  /** The paper card beside the drawing; on a phone the drawer below it. */
  readonly card: (app: App) => TemplateResult;
  /** The few tools within reach, in words. */
  readonly tray: (app: App) => TemplateResult;
  /** Draws into the stage and lays hands on it; gives back what takes all of it away. Absent: no drawing, a wide card. */
  readonly open?: (app: App, stage: Stage) => () => void;
  readonly keys: readonly KeyRow[];
}

export type LoadStation = () => Promise<Station>;
