import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { noticeList } from './notices.js';
import type { OpenSheet, Shell } from './shell.js';

/** A sheet of paper over the table, closed by its button or Escape. The browser's own dialog keeps the focus within. */
export function sheet(
  shell: Shell,
  name: NonNullable<OpenSheet>,
  title: string,
  content: () => TemplateResult,
): TemplateResult | typeof nothing {
  if (shell.frame().sheet !== name) return nothing;
  const close = (): void => shell.openSheet(undefined);
  return html`<dialog
    class="sheet"
    aria-labelledby="sheet-title"
    ${ref((element) => showModal(element))}
    @close=${close}
    @click=${(event: MouseEvent) => event.target === event.currentTarget && close()}
  >
    <div class="sheet-paper">
      <header>
        <h2 id="sheet-title">${title}</h2>
        <button class="quiet" @click=${close}>${shell.app.say('shell.close')}</button>
      </header>
      ${noticeList(shell.app, toldHere(shell))} ${content()}
    </div>
  </dialog>`;
}

function toldHere(shell: Shell) {
  const { toldBefore } = shell.frame();
  return shell.app.notices.get().filter(({ id }) => id > toldBefore);
}

function showModal(element: Element | undefined): void {
  if (element instanceof HTMLDialogElement && !element.open)
    queueMicrotask(() => element.isConnected && !element.open && element.showModal());
}
