import type { Point } from '@hidebound/geometry';
import type { Locator, Page } from 'playwright-core';

/** One way of working: all of a walk is done by it, and by nothing else. */
export interface WalkHand {
  readonly name: 'pointer' | 'keys';
  /** Presses a button, a link, a tick box or the line that unfolds something. */
  press(control: Locator): Promise<void>;
  /** Opens the system's choice of files by a control and takes some. */
  chooseFiles(control: Locator, files: readonly string[]): Promise<void>;
  /** Takes a line of a list of choices. */
  pick(list: Locator, words: string): Promise<void>;
  /** Taps the drawing at a place of the page, px. */
  tap(at: Point): Promise<void>;
  /** Draws over the drawing, through places of the page, px. */
  draw(line: readonly Point[]): Promise<void>;
}

/** A mouse. */
export function pointerHand(page: Page): WalkHand {
  return {
    name: 'pointer',
    press: (control) => control.click(),
    chooseFiles: async (control, files) => {
      // What is seen of a field for files is its label.
      const label = control.locator('xpath=ancestor::label');
      const seen = (await label.count()) === 0 ? control : label;
      const [chooser] = await Promise.all([page.waitForEvent('filechooser'), seen.click()]);
      await chooser.setFiles([...files]);
    },
    pick: async (list, words) => {
      await list.selectOption({ label: words });
    },
    tap: ({ x, y }) => page.mouse.click(x, y),
    draw: async ([first, ...rest]) => {
      await page.mouse.move(first!.x, first!.y);
      await page.mouse.down();
      for (const { x, y } of rest) await page.mouse.move(x, y, { steps: 8 });
      await page.mouse.up();
    },
  };
}

/** No page has so many places that keys can go to. */
const MOST_TABS = 150;
/** Steps of the cross by an arrow key, px, as the app's own list of keys tells them: far, and near. */
const CROSS_STEPS = [
  { px: 60, with: 'Shift+' },
  { px: 10, with: '' },
] as const;

/** Keys alone: Tab until the wanted control has the focus, then Enter or Space; in the drawing the arrows. */
export function keysHand(page: Page): WalkHand {
  const press = async (control: Locator): Promise<void> => {
    await reach(page, control);
    await page.keyboard.press((await isTickBox(control)) ? 'Space' : 'Enter');
  };
  const drawing = page.getByRole('application');
  return {
    name: 'keys',
    press,
    chooseFiles: async (control, files) => {
      const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(control)]);
      await chooser.setFiles([...files]);
    },
    pick: async (list, words) => {
      await reach(page, list);
      await page.keyboard.type(words);
    },
    tap: async (at) => {
      await reach(page, drawing);
      await moveCross(page, drawing, at);
      await page.keyboard.press('Enter');
    },
    draw: async ([first, ...rest]) => {
      await reach(page, drawing);
      await moveCross(page, drawing, first!);
      await page.keyboard.press('Space');
      for (const at of rest) await moveCross(page, drawing, at);
      await page.keyboard.press('Space');
    },
  };
}

function isTickBox(control: Locator): Promise<boolean> {
  return control.evaluate(
    (element) => element instanceof HTMLInputElement && ['checkbox', 'radio'].includes(element.type),
  );
}

/**
 * Presses Tab until a control has the focus. There it must be seen (WCAG 2.2, 2.4.7 Focus Visible) and not lie below
 * something else (2.4.11 Focus Not Obscured).
 */
async function reach(page: Page, control: Locator): Promise<void> {
  let wanted = await control.elementHandle();
  for (let i = 0; i < MOST_TABS; i++) {
    const has = await wanted.evaluate((element) =>
      element.isConnected ? element === document.activeElement : undefined,
    );
    if (has === true) {
      const fault = await wanted.evaluate(faultOfFocus);
      if (fault !== undefined) throw new Error(`${String(control)} has the focus, and ${fault}.`);
      return;
    }
    // What was drawn anew is another one.
    if (has === undefined) wanted = await control.elementHandle();
    await page.keyboard.press('Tab');
  }
  throw new Error(`${String(control)} is not reached by ${MOST_TABS} presses of Tab.`);
}

/** Runs in the page. What is wrong with how the focus is seen; undefined where nothing is. */
function faultOfFocus(element: Node): string | undefined {
  if (!(element instanceof Element)) return 'it is nothing that is seen';
  // A field for files is seen by its label.
  const seen = [element, ...(element.closest('label') === null ? [] : [element.closest('label')!])];
  const isMarked = seen.some((each) => {
    const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(each);
    return (outlineStyle !== 'none' && parseFloat(outlineWidth) >= 1) || boxShadow !== 'none';
  });
  if (!isMarked) return 'nothing shows it';
  const box = seen.at(-1)!.getBoundingClientRect();
  const isSeen = [0.5, 0.2, 0.8].some((share) => {
    const there = document.elementFromPoint(box.left + box.width / 2, box.top + box.height * share);
    return there !== null && seen.at(-1)!.contains(there);
  });
  return isSeen ? undefined : 'something lies over it';
}

/** The cross comes within half a step of the arrows to a place. */
async function moveCross(page: Page, drawing: Locator, to: Point): Promise<void> {
  const cross = page.locator('.stage-cross');
  const around = (await ((await cross.isVisible()) ? cross : drawing).boundingBox())!;
  let away = {
    x: to.x - (around.x + around.width / 2),
    y: to.y - (around.y + around.height / 2),
  };
  for (const { px, with: held } of CROSS_STEPS) {
    const steps = { x: Math.round(away.x / px), y: Math.round(away.y / px) };
    for (let i = 0; i < Math.abs(steps.x); i++)
      await page.keyboard.press(`${held}${steps.x > 0 ? 'ArrowRight' : 'ArrowLeft'}`);
    for (let i = 0; i < Math.abs(steps.y); i++)
      await page.keyboard.press(`${held}${steps.y > 0 ? 'ArrowDown' : 'ArrowUp'}`);
    away = { x: away.x - steps.x * px, y: away.y - steps.y * px };
  }
}
