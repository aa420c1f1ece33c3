import { html, nothing } from 'lit-html';
import type { Layout } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { askFor, listField, textField } from '../../../fields/index.js';
import { filesOfKind, layoutAt } from '../../../job/job.js';
import { keptPathOf, layoutPathOf, nameOfKept } from '../../../work/laying/layout-paths.js';
import { presentLayout } from '../present.js';
import type { LayTable } from '../table.js';
import { figuresOf } from './figures.js';

/** The name that was typed for a layout, until it is kept. */
const NAMED = new WeakMap<App, string>();

/** Keeping a layout under a name, and comparing two of them. */
export function compareLayouts(app: App, table: LayTable) {
  const present = presentLayout(app);
  const { order } = app.place.get();
  if (present === undefined || order === undefined) return nothing;
  const others = layoutsOf(app, order).filter((path) => path !== present.path);
  const otherPath = others.find((path) => path === table.other.get()) ?? others[0];
  const other = layoutAt(app.job.get(), otherPath);
  return html`<section class="compare">
    <h3>${app.say('lay.compare')}</h3>
    ${keepForm(app, order)}
    ${
      otherPath === undefined || other === undefined
        ? html`<p class="soft">${app.say('lay.compare.none')}</p>`
        : html`${others.length > 1 ? choice(app, table, order, others, otherPath) : nothing}
            ${sideBySide(app, [nameOf(app, order, present.path), present.layout], [nameOf(app, order, otherPath), other])}
            <div class="row">
              <button @click=${() => flip(app, table, otherPath)}>${app.say('lay.compare.flip')}</button>
              <button @click=${() => choose(app, order)} ?disabled=${present.path === layoutPathOf(order)}>
                ${app.say('lay.compare.choose')}
              </button>
            </div>`
    }
  </section>`;
}

/** Layouts of the order in front, its own one first. */
function layoutsOf(app: App, order: string): string[] {
  const own = layoutPathOf(order);
  return filesOfKind(app.job.get(), 'layout')
    .map(([path]) => path)
    .filter((path) => path === own || nameOfKept(order, path) !== undefined)
    .sort((one, other) => (one === own ? -1 : other === own ? 1 : one < other ? -1 : 1));
}

function nameOf(app: App, order: string, path: string): string {
  return nameOfKept(order, path) ?? app.say('lay.compare.own');
}

function keepForm(app: App, order: string) {
  return html`<form
    @submit=${(event: SubmitEvent) => {
      event.preventDefault();
      const name = NAMED.get(app);
      NAMED.delete(app);
      if (name === undefined) askFor(app, ['lay-keep-name']);
      else keep(app, order, name);
      app.redraw();
    }}
  >
    ${textField(app, {
      id: 'lay-keep-name',
      label: app.say('lay.compare.name'),
      value: NAMED.get(app) ?? '',
      mostLetters: 40,
      take: (name) => NAMED.set(app, name),
      after: html`<button>${app.say('lay.compare.keep')}</button>`,
    })}
  </form>`;
}

/** The present layout, once more under a name. */
function keep(app: App, order: string, name: string): void {
  const present = presentLayout(app);
  if (present === undefined) return;
  const path = keptPathOf(order, name);
  app.change(
    app.say('lay.change.kept', { name }),
    new Map([[path, { kind: 'layout', layout: present.layout }]]),
  );
  app.tell({ tone: 'calm', text: app.say('lay.compare.isKept', { name }) });
}

function choice(app: App, table: LayTable, order: string, others: readonly string[], now: string) {
  return listField(
    'lay-other',
    app.say('lay.compare.with'),
    others.map((path) => [path, nameOf(app, order, path)] as const),
    now,
    (path) => table.other.set(path),
  );
}

function sideBySide(
  app: App,
  [oneName, one]: readonly [string, Layout],
  [otherName, other]: readonly [string, Layout],
) {
  const others = new Map(figuresOf(app, other));
  return html`<table class="side-by-side">
    <thead>
      <tr>
        <td></td>
        <th scope="col">${oneName} <span class="soft">${app.say('lay.compare.shown')}</span></th>
        <th scope="col">${otherName}</th>
      </tr>
    </thead>
    <tbody>
      ${figuresOf(app, one).map(
        ([key, value]) =>
          html`<tr>
            <th scope="row">${app.say(key)}</th>
            <td>${value}</td>
            <td>${others.get(key)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

/** The other one comes in front, and this one beside it. */
function flip(app: App, table: LayTable, otherPath: string): void {
  const { layout } = app.place.get();
  table.hand.set(undefined);
  table.other.set(layout);
  app.place.update((place) => ({ ...place, layout: otherPath }));
}

/** The layout in front becomes the order's own; what was that is kept under the other's name. */
function choose(app: App, order: string): void {
  const present = presentLayout(app);
  const own = layoutPathOf(order);
  if (present === undefined || present.path === own) return;
  const before = app.job.get().files.get(own);
  app.change(
    app.say('lay.change.chosen'),
    new Map([
      [own, { kind: 'layout', layout: present.layout }],
      [present.path, before],
    ]),
  );
  app.place.update((place) => ({ ...place, layout: own }));
}
