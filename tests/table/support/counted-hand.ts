import type { Locator, Page } from 'playwright-core';

/** A thumb on a phone whose every tap and stroke is counted. */
export interface CountedHand {
  /** Taps what is named; what lies outside of the screen is drawn into view first, which counts too. */
  tap(locator: Locator): Promise<void>;
  /** A field of the system that files are chosen in counts as one tap. */
  choose(locator: Locator, file: string): Promise<void>;
  /** What was done, in order. */
  readonly done: readonly string[];
}

/** A stroke of the thumb moves a list by so much of its height. */
const SWIPE_SHARE = 0.7;
const MOST_SWIPES = 20;

export function countedHand(page: Page): CountedHand {
  const done: string[] = [];
  return {
    done,
    async tap(locator) {
      await locator.waitFor({ timeout: 60_000 });
      for (let i = 0; i < MOST_SWIPES && (await drawNearer(locator)); i++)
        done.push('stroke: the card is drawn on');
      done.push(`tap: ${(await locator.innerText()).replace(/\s+/g, ' ').trim()}`);
      await locator.tap();
    },
    async choose(locator, file) {
      await page.getByText('Take a photo').waitFor();
      done.push('tap: Take a photo');
      await locator.setInputFiles(file);
    },
  };
}

/** Draws what holds the element on by one stroke, where its middle can't be touched. True where it was needed. */
function drawNearer(locator: Locator): Promise<boolean> {
  return locator.evaluate((element, share) => {
    const { left, right, top, bottom } = element.getBoundingClientRect();
    const [x, y] = [(left + right) / 2, (top + bottom) / 2];
    const there = document.elementFromPoint(x, y);
    if (element.contains(there)) return false;
    for (let box = element.parentElement; box !== null; box = box.parentElement) {
      const canMove = box.scrollHeight > box.clientHeight + 1 || box.scrollWidth > box.clientWidth + 1;
      if (!canMove || !/auto|scroll/.test(getComputedStyle(box).overflow)) continue;
      const frame = box.getBoundingClientRect();
      const down = y > frame.bottom ? 1 : y < frame.top ? -1 : 0;
      const across = x > frame.right ? 1 : x < frame.left ? -1 : 0;
      box.scrollBy({
        top: down * share * box.clientHeight,
        left: across * share * box.clientWidth,
        behavior: 'instant',
      });
      return down !== 0 || across !== 0;
    }
    return false;
  }, SWIPE_SHARE);
}
