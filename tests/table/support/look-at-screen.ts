import type { Page } from 'playwright-core';

/** Something on the screen that can be pressed, as it is seen at one moment. */
export interface SeenControl {
  /** What stands on it. */
  readonly label: string;
  /** What stands around it: the sentence, or the question, that it belongs to. */
  readonly context: string;
  /** Greyed out. */
  readonly isOff: boolean;
  /** It shows that it is chosen already. */
  readonly isChosen: boolean;
  /** Its middle, px. */
  readonly x: number;
  readonly y: number;
}

/** What a person sees without scrolling. */
export interface Screen {
  readonly controls: readonly SeenControl[];
  /** All that can be read. */
  readonly text: string;
  /** A sentence that goes on: “The photo is being opened…”. */
  readonly isBusy: boolean;
}

/**
 * What is in view: of all that the page holds only what lies uncovered within the window, and of that only what can be
 * read. No name, class or id of the page's own making is looked at, so that nobody who is given this knows more than a
 * stranger in front of the screen.
 */
export function lookAtScreen(page: Page): Promise<Screen> {
  return page.evaluate(seeAll);
}

/** Draws what is scrolled at a list that is cut off; false where all of it was seen. */
export function scrollOn(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    // A stroke of the thumb, or a turn of the wheel, moves a list by so much of its height.
    const share = 0.7;
    const isInView = (element: Element): boolean => {
      const { left, right, top, bottom } = element.getBoundingClientRect();
      const there = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
      return there !== null && element.contains(there);
    };
    for (const element of document.querySelectorAll('*')) {
      const left = element.scrollHeight - element.clientHeight - element.scrollTop;
      if (left < 2 || !/auto|scroll/.test(getComputedStyle(element).overflowY) || !isInView(element))
        continue;
      element.scrollBy({ top: share * element.clientHeight, behavior: 'instant' });
      return true;
    }
    return false;
  });
}

/** Runs in the page: nothing from outside of it can be named here. */
function seeAll(): Screen {
  const squeezed = (text: string): string => text.replace(/\s+/g, ' ').trim();
  const hits = (element: Element, x: number, y: number): boolean => {
    const there = document.elementFromPoint(x, y);
    return there !== null && (element.contains(there) || there.contains(element));
  };
  /** What stands on it, each word that is drawn apart by itself. */
  const readOf = (element: HTMLElement): string => {
    const words: string[] = [];
    const texts = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
    for (let text = texts.nextNode(); text !== null; text = texts.nextNode())
      if ((text.parentElement?.getClientRects().length ?? 0) > 0) words.push(text.textContent ?? '');
    return squeezed(words.join(' '));
  };
  const wordsOf = (element: HTMLElement): string =>
    element instanceof HTMLInputElement || element instanceof HTMLSelectElement
      ? [...(element.labels ?? [])].map(({ innerText }) => innerText).join(' ')
      : readOf(element);
  /** The nearest surroundings that say more than the control itself, and not the whole page. */
  const contextOf = (element: HTMLElement): string => {
    const own = readOf(element);
    for (let around = element.parentElement; around !== null; around = around.parentElement) {
      const words = readOf(around);
      const isQuestion = around instanceof HTMLFieldSetElement;
      const isAlone = around.querySelectorAll('button, a, input, select, summary').length === 1;
      if (isQuestion || (isAlone && words !== own)) return words;
      if (!isAlone && (around.closest('fieldset') ?? undefined) === undefined) return '';
    }
    return '';
  };

  const controls: SeenControl[] = [];
  for (const element of document.querySelectorAll<HTMLElement>(
    'button, a[href], select, summary, input, label',
  )) {
    // A field for files is seen by its label, other labels are no controls of their own.
    const isForFiles =
      element instanceof HTMLLabelElement && element.control?.getAttribute('type') === 'file';
    if (element instanceof HTMLLabelElement && !isForFiles) continue;
    const { left, right, top, bottom } = element.getBoundingClientRect();
    const [x, y] = [(left + right) / 2, (top + bottom) / 2];
    if (right - left < 2 || !hits(element, x, y)) continue;
    const label = squeezed(wordsOf(element));
    if (label === '') continue;
    controls.push({
      ...{ label, context: contextOf(element), x: Math.round(x), y: Math.round(y) },
      isOff: element.matches(':disabled'),
      isChosen:
        element.getAttribute('aria-pressed') === 'true' || element.getAttribute('aria-current') === 'page',
    });
  }

  const read: string[] = [];
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  for (let text = texts.nextNode(); text !== null; text = texts.nextNode()) {
    const parent = text.parentElement;
    if (parent === null || squeezed(text.textContent ?? '') === '') continue;
    range.selectNodeContents(text);
    const { left, top, width, height } = range.getBoundingClientRect();
    if (width > 1 && hits(parent, left + width / 2, top + height / 2))
      read.push(squeezed(text.textContent ?? ''));
  }
  const text = read.join('\n');
  return { controls, text, isBusy: /…$/m.test(text) };
}
