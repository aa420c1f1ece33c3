import { PLACE_NAMES } from '../app/place.js';
import type { Shell } from './shell.js';

/** Keys of the whole app, and of the place that is open; never while someone types into a field. */
export function listenToAppKeys(shell: Shell): void {
  document.addEventListener('keydown', (event) => {
    if (event.defaultPrevented || shell.frame().sheet !== undefined) return;
    if (isTyping(event.target)) return;
    if (ownKey(shell, event) || commonKey(shell, event)) event.preventDefault();
  });
}

function ownKey(shell: Shell, event: KeyboardEvent): boolean {
  const name = keyName(event);
  return (shell.frame().station?.keys ?? []).some(({ key, run }) => key === name && run(shell.app));
}

function commonKey(shell: Shell, event: KeyboardEvent): boolean {
  const { app } = shell;
  const isCommand = event.ctrlKey || event.metaKey;
  const key = event.key.toLowerCase();
  if (isCommand && key === 'z') {
    if (event.shiftKey) app.redo();
    else app.undo();
    return true;
  }
  if (isCommand && key === 'y') {
    app.redo();
    return true;
  }
  if (isCommand || event.altKey) return false;
  if (event.key === '?') {
    shell.openSheet('keys');
    return true;
  }
  const place = PLACE_NAMES[Number(event.key) - 1];
  if (place === undefined) return false;
  app.goTo(place);
  return true;
}

/** "Ctrl+d", "Shift+Delete", "f"; letters small, whatever Shift or the lock makes of them. */
export function keyName({
  key,
  ctrlKey,
  metaKey,
  shiftKey,
}: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey'>): string {
  const isLetter = key.length === 1;
  const shift = shiftKey && (!isLetter || /[a-z]/i.test(key)) ? 'Shift+' : '';
  return `${ctrlKey || metaKey ? 'Ctrl+' : ''}${shift}${isLetter ? key.toLowerCase() : key}`;
}

function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement)
    return !['checkbox', 'radio', 'button', 'range', 'file'].includes(target.type);
  return (
    target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement || target.isContentEditable
  );
}
