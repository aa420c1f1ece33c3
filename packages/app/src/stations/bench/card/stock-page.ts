import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { StockRow } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import type { JobFile } from '../../../job/job.js';
import type { StockSeen } from '../../../work/benching/stock.js';
import { textField } from '../../../fields/index.js';
import { benchNow } from '../bench-now.js';
import { showHide } from '../show-hide.js';
import { benchTable } from '../table.js';
import { fitSection } from './fit-section.js';
import { toldError } from '../../../words/told.js';

/** Hides and offcuts of the job, and the way in and out of stock. */
export function stockPage(app: App): TemplateResult {
  const { stock } = benchTable(app);
  const known = stock.get();
  if (known?.job !== app.job.get()) lookThrough(app);
  if (known === undefined) return html`<p role="status">${app.say('bench.stock.lookingIn')}</p>`;
  if ('sentence' in known.seen) return html`<p role="alert">${app.sentence(known.seen)}</p>`;
  return html`<h2>${app.say('bench.page.stock')}</h2>
    ${rows(app, known.seen)} ${fitSection(app)} ${taking(app, known.seen)}`;
}

function lookThrough(app: App): void {
  const job = app.job.get();
  const { desk, asked, stock } = benchTable(app);
  if (asked.stock === job) return;
  asked.stock = job;
  desk.ask('stock', { files: stockFiles(app) }).then(
    (seen) => stock.set({ job, seen }),
    (error: unknown) => stock.set({ job, seen: toldError(error) }),
  );
}

function stockFiles(app: App): ReadonlyMap<string, JobFile> {
  return new Map(
    [...app.job.get().files].filter(
      ([, { kind }]) => kind === 'hide' || kind === 'text' || kind === 'layout',
    ),
  );
}

function rows(app: App, { rows: all, lastOffcuts }: StockSeen) {
  if (all.length === 0) return html`<p>${app.say('bench.stock.empty')}</p>`;
  return html`<ul class="stock-rows">
    ${all.map((row) => stockRow(app, row, lastOffcuts.includes(row.hide.id)))}
  </ul>`;
}

function stockRow(
  app: App,
  { hide, file, sizes, thickness, isWorthKeeping }: StockRow,
  isNew: boolean,
): TemplateResult {
  const measures = app.measures();
  const { colour } = hide.leather;
  const words = [
    app.say('bench.stock.usable', { area: measures.area(sizes.usableMm2) }),
    `${measures.length(sizes.alongMm)} × ${measures.length(sizes.acrossMm)}`,
    ...(thickness === undefined ? [] : [measures.thicknessRange(thickness)]),
    ...(colour === undefined ? [] : [colour]),
    ...(hide.lot === undefined ? [] : [app.say('bench.stock.lot', { lot: hide.lot })]),
    ...(hide.storedAt === undefined ? [] : [hide.storedAt]),
    ...(isWorthKeeping ? [] : [app.say('bench.stock.keep')]),
    ...(isNew ? [app.say('bench.stock.new')] : []),
  ];
  return html`<li>
    <strong>${app.say(hide.cut === 'offcut' ? 'bench.stock.offcut' : 'bench.stock.hide')} ${hide.id}</strong>
    <span>${words.join(' · ')}</span>
    <button class="quiet" @click=${() => showHide(app, file)}>${app.say('bench.stock.look')}</button>
  </li>`;
}

function taking(app: App, { lastTaken, lastOffcuts }: StockSeen): TemplateResult {
  const now = benchNow(app);
  return html`${
    now === undefined || lastTaken?.endsWith(nameOf(now.path)) === true
      ? nothing
      : html`${textField(app, {
            id: 'bench-put-at',
            label: app.say('bench.stock.putAt'),
            hint: app.say('bench.stock.putAt.hint'),
            value: benchTable(app).putAt.get(),
            isOptional: true,
            take: (text) => benchTable(app).putAt.set(text),
          })}
          <p>
            <button class="main" @click=${() => void take(app, now.path)}>
              ${app.say('bench.stock.take')}
            </button>
          </p>
          <p class="soft">
            ${now.progress.left === 0 ? nothing : app.say('bench.stock.takeNotCut', { n: now.progress.left })}
            ${app.say('bench.stock.take.words')}
          </p>`
  }
  ${
    lastTaken === undefined
      ? nothing
      : html`<p role="status">${keptWords(app, lastTaken, lastOffcuts)}</p>
          <p><button @click=${() => void putBack(app)}>${app.say('bench.stock.putBack')}</button></p>
          <p class="soft">${app.say('bench.stock.putBack.words')}</p>`
  }`;
}

function keptWords(app: App, layout: string, offcuts: readonly string[]): string {
  if (offcuts.length === 0) return app.say('bench.stock.nothingKept', { layout });
  return app.say('bench.stock.kept', { n: offcuts.length, names: offcuts.join(', '), layout });
}

/** The journal names a layout from the folder of its hides. */
function nameOf(path: string): string {
  return path.replace(/^.*\//, '');
}

async function take(app: App, layoutPath: string): Promise<void> {
  const table = benchTable(app);
  await table.queue;
  try {
    const place = table.putAt.get();
    const asked = { files: stockFiles(app), layoutPath, date: today(), ...(place === '' ? {} : { place }) };
    const edits = await table.desk.ask('take', asked);
    app.change(app.say('bench.stock.change.take'), new Map(edits));
  } catch (error) {
    app.tellFailure(error);
  }
}

async function putBack(app: App): Promise<void> {
  try {
    const edits = await benchTable(app).desk.ask('putBack', { files: stockFiles(app), date: today() });
    app.change(app.say('bench.stock.change.putBack'), new Map(edits));
  } catch (error) {
    app.tellFailure(error);
  }
}

/** The day as it is here. */
function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
