import type { Page } from 'playwright-core';
import { lookAtScreen, scrollOn } from './look-at-screen.js';
import type { Screen, SeenControl } from './look-at-screen.js';

/** Something that the newcomer wants, in the words that she looks for. */
export interface Aim {
  readonly aim: string;
  /** What would have to stand on a button for it, the best word first. */
  readonly words: readonly string[];
  /** What she reads when she has it; or she has it with the next file that is saved. */
  readonly done: RegExp | 'a file is saved';
  /** She does not wait for what is going on: it is what she wants to end. */
  readonly isUrgent?: boolean;
  /** What she gives when she is asked for files. */
  readonly files?: readonly string[];
}

/** A question that she can answer because she stands before the hide. */
export interface Answer {
  readonly question: RegExp;
  readonly answer: string;
}

export interface NewcomerInput {
  readonly page: Page;
  readonly isTouch: boolean;
  readonly answers: readonly Answer[];
  /** How a sentence begins that says what comes next. */
  readonly hint: RegExp;
  /** Told after each thing that was done, and where she gives up. */
  readonly watch?: (what: string) => Promise<void>;
}

export interface Newcomer {
  /** Does what the screen offers until the aim is reached; what was saved on the way, if that was the aim. @throws where she does not know on */
  reach(aim: Aim): Promise<string | undefined>;
  /** What she did, each with the words on the screen that made her do it. */
  readonly diary: readonly string[];
}

const MOST_TURNS = 25;
const MOST_WAITS = 600;
/** So many looks at a screen that offers nothing, until she gives up. */
const PATIENCE = 20;
const LOOKS_EVERY_MS = 100;
/** What was pressed shows by then that it was. */
const MOST_LOOKS_AFTER = 30;

/** Somebody who knows leather and nothing of this app: she reads what is in view, and presses what says what she wants. */
export function newcomer({ page, isTouch, answers, hint, watch }: NewcomerInput): Newcomer {
  const diary: string[] = [];
  let files: readonly string[] = [];
  let saved: string | undefined;
  page.on('filechooser', (chooser) => void chooser.setFiles([...files]));
  page.on('download', (download) => void download.path().then((path) => (saved = path)));

  /** The screen as it rests: the same at two looks, one after the other. */
  const look = async (): Promise<Screen> => {
    let before = await lookAtScreen(page);
    for (let i = 0; i < MOST_WAITS; i++) {
      await page.waitForTimeout(LOOKS_EVERY_MS);
      const now = await lookAtScreen(page);
      if (JSON.stringify(now.controls) === JSON.stringify(before.controls)) return now;
      before = now;
    }
    return before;
  };

  const untilItChanges = async ({ text, controls }: Screen): Promise<void> => {
    for (let i = 0; i < MOST_LOOKS_AFTER; i++) {
      await page.waitForTimeout(LOOKS_EVERY_MS);
      const now = await lookAtScreen(page);
      if (now.text !== text || JSON.stringify(now.controls) !== JSON.stringify(controls)) return;
    }
  };

  const choose = (screen: Screen, { words }: Aim, tried: ReadonlySet<string>): Choice | undefined => {
    const open = screen.controls.filter(({ isOff, isChosen }) => !isOff && !isChosen);
    const fresh = open.filter((control) => !tried.has(stateOf(screen, control)));
    for (const { question, answer } of answers) {
      const asked = screen.controls.filter(({ context }) => question.test(context));
      const control = asked.find(({ label }) => holds(label, answer));
      if (control !== undefined && !asked.some(({ isChosen }) => isChosen))
        return { control, reason: `the screen asks “${question.source}”` };
    }
    for (const word of words) {
      const control = fresh.find(({ label }) => holds(label, word));
      if (control !== undefined) return { control, reason: `it says “${word}”` };
    }
    const control = screen.isBusy ? undefined : fresh.find(({ context }) => hint.test(context));
    return control === undefined ? undefined : { control, reason: `the screen says “${control.context}”` };
  };

  const press = ({ x, y }: SeenControl): Promise<void> =>
    isTouch ? page.touchscreen.tap(x, y) : page.mouse.click(x, y);

  return {
    diary,
    reach: async (aim) => {
      files = aim.files ?? [];
      saved = undefined;
      const tried = new Set<string>();
      for (let turn = 0, waits = 0, patience = PATIENCE; turn < MOST_TURNS;) {
        const screen = await look();
        if (aim.done === 'a file is saved' ? saved !== undefined : aim.done.test(screen.text)) return saved;
        const isWaiting = screen.isBusy && waits < MOST_WAITS;
        const choice = isWaiting && aim.isUrgent !== true ? undefined : choose(screen, aim, tried);
        if (choice !== undefined) {
          const { control, reason } = choice;
          tried.add(stateOf(screen, control));
          diary.push(`${aim.aim}: “${control.label}”, because ${reason}`);
          await press(control);
          await untilItChanges(screen);
          await watch?.(control.label);
          turn++;
        } else if (isWaiting) waits++;
        else if (await scrollOn(page)) turn++;
        else if (patience-- === 0) break;
      }
      await watch?.(`lost: ${aim.aim}`);
      const { text } = await lookAtScreen(page);
      throw new Error(
        `The newcomer does not know on. She wants ${aim.aim} and sees:\n${text}\n\n${diary.join('\n')}`,
      );
    },
  };
}

interface Choice {
  readonly control: SeenControl;
  readonly reason: string;
}

/** A whole word, or several. */
function holds(label: string, word: string): boolean {
  return new RegExp(`(^|[^\\p{L}])${word}([^\\p{L}]|$)`, 'iu').test(label);
}

/** The same button on the same screen is not pressed twice for one aim. */
function stateOf({ text }: Screen, { label, context }: SeenControl): string {
  return [label, context, text].join('\n');
}
