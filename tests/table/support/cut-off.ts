/**
 * Runs in the page: words of the frame and the card that can't be read in full, because they reach out of the screen or
 * of what holds them, or because something lies over them. What scrolls up and down is read by scrolling; sideways only
 * the row of small hides may.
 */
export function wordsCutOff(): readonly string[] {
  const found = new Set<string>();
  const walker = document.createTreeWalker(document.querySelector('#table')!, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const holder = node.parentElement!;
    const text = node.textContent?.trim() ?? '';
    if (text === '' || !isSeen(holder)) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const box of range.getClientRects()) {
      const fault = box.width < 1 ? undefined : faultOf(holder, box);
      if (fault !== undefined) found.add(`“${text.slice(0, 40)}” ${fault}`);
    }
  }
  return [...found];

  function isSeen(element: Element): boolean {
    return (
      element.checkVisibility({ visibilityProperty: true, opacityProperty: true }) &&
      element.closest('.for-listeners, .skip-link, .drawing, option') === null
    );
  }

  function faultOf(holder: Element, box: DOMRect): string | undefined {
    const SLACK_PX = 1.5;
    let scrolls = false;
    let { left, right, top, bottom } = { left: 0, right: innerWidth, top: 0, bottom: innerHeight };
    for (let each: Element | null = holder; each !== null; each = each.parentElement) {
      const style = getComputedStyle(each);
      const frame = each.getBoundingClientRect();
      if (style.overflowX !== 'visible') {
        if (each.matches('.hide-row')) return undefined;
        if (box.right > frame.right + SLACK_PX || box.left < frame.left - SLACK_PX)
          return `reaches out of ${each.tagName.toLowerCase()}.${each.className}`;
        left = Math.max(left, frame.left);
        right = Math.min(right, frame.right);
      }
      if (style.overflowY !== 'visible') {
        scrolls ||= /auto|scroll/.test(style.overflowY);
        if (!scrolls && box.bottom > frame.bottom + SLACK_PX)
          return `is cut off below by ${each.tagName.toLowerCase()}.${each.className}`;
        top = Math.max(top, frame.top);
        bottom = Math.min(bottom, frame.bottom);
      }
    }
    if (box.right > innerWidth + SLACK_PX || box.left < -SLACK_PX) return 'reaches out of the screen';
    const at = { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
    if (at.x < left || at.x > right || at.y < top || at.y > bottom) return undefined;
    // What lets touches through is not found by a place.
    if (getComputedStyle(holder).pointerEvents === 'none') return undefined;
    const above = document.elementFromPoint(at.x, at.y);
    // What comes next stays in view at the foot of the card, which scrolls below it.
    if (above === null || above.contains(holder) || holder.contains(above) || above.closest('.next-step'))
      return undefined;
    return `lies below ${above.tagName.toLowerCase()}.${above.className}`;
  }
}
