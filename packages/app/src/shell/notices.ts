import { html } from 'lit-html';
import type { App, Notice } from '../app/app.js';

/** What there is to tell, until it is put away. */
export function noticeList(app: App, all: readonly Notice[] = app.notices.get()) {
  return html`<div class="notices" role="status">
    ${all.map(
      ({ id, tone, text, action }) =>
        html`<div class="notice ${tone}">
          <p>${text}</p>
          ${
            action === undefined
              ? ''
              : html`<button
                  @click=${() => {
                    app.putAway(id);
                    action.run();
                  }}
                >
                  ${action.label}
                </button>`
          }
          <button class="quiet" @click=${() => app.putAway(id)}>${app.say('shell.close')}</button>
        </div>`,
    )}
  </div>`;
}
