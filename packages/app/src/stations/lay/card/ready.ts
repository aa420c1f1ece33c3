import { html, nothing } from 'lit-html';
import type { Hide } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { filesOfKind, orderAt, pathBeside } from '../../../job/job.js';
import { namedFrom } from '../../../work/patterns/named-from.js';

/** The hides that the order in front names and the job has, each once. */
export function hidesOfOrderInFront(app: App): readonly (readonly [path: string, hide: Hide])[] {
  const { order: orderPath } = app.place.get();
  const { files } = app.job.get();
  const named = (orderAt(app.job.get(), orderPath)?.leathers ?? []).flatMap(({ hides }) =>
    hides.map((file) => pathBeside(orderPath!, file)),
  );
  return [...new Set(named)].flatMap((path) => {
    const file = files.get(path);
    return file?.kind === 'hide' ? [[path, file.hide] as const] : [];
  });
}

/** What has to be said or done before laying can begin: which hide, and which way it stretches. */
export function whatIsMissing(app: App) {
  const hides = hidesOfOrderInFront(app);
  if (hides.length === 0) return whichHide(app);
  const without = hides.filter(([, hide]) => !showsDirection(hide));
  if (without.length === 0) return nothing;
  return html`<div class="older">
    <p>${app.say('lay.noDirection', { hides: without.map(([, { id }]) => id).join(', ') })}</p>
    <p><button @click=${() => toHide(app, without[0]![0])}>${app.say('lay.toHide')}</button></p>
  </div>`;
}

function showsDirection({ backbone, tightness }: Hide): boolean {
  return backbone !== undefined || tightness.length > 0;
}

export function toHide(app: App, path: string | undefined): void {
  app.place.update((place) => ({ ...place, name: 'hide', hide: path ?? place.hide }));
}

/** An order that names no hide yet: one of the job's is chosen right here. */
function whichHide(app: App) {
  const there = filesOfKind(app.job.get(), 'hide');
  if (there.length === 0)
    return html`<p>${app.say('lay.noHideYet')}</p>
      <p>
        <button class="main" @click=${() => toHide(app, undefined)}>${app.say('lay.toHide')}</button>
      </p>`;
  return html`<p>${app.say('lay.whichHide')}</p>
    <p class="row">
      ${there.map(
        ([path, { hide }]) =>
          html`<button @click=${() => cutFrom(app, path, hide)}>
            ${app.say('lay.cutFrom', { hide: hide.id })}
          </button>`,
      )}
    </p>
    <p><button class="quiet" @click=${() => app.goTo('pieces')}>${app.say('lay.toPieces')}</button></p>`;
}

/** The hide becomes one of each leather of the order that has none. */
function cutFrom(app: App, hidePath: string, { id }: Hide): void {
  const { order: path } = app.place.get();
  const order = orderAt(app.job.get(), path);
  if (path === undefined || order === undefined) return;
  const file = namedFrom(path, hidePath);
  const leathers = order.leathers.map((leather) =>
    leather.hides.length === 0 ? { ...leather, hides: [file] } : leather,
  );
  const changed = { kind: 'order', order: { ...order, leathers } } as const;
  app.change(app.say('lay.change.cutFrom', { hide: id }), new Map([[path, changed]]));
  app.place.update((place) => ({ ...place, hide: hidePath }));
}
