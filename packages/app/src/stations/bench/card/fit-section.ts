import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { StockRemark } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { countField, listField } from '../../../fields/index.js';
import type { StockFit } from '../../../work/benching/fits.js';
import { toldError } from '../../../words/told.js';
import { openBenchDesk } from '../../../work/bench.js';
import { tannageWord } from '../../hide/marks/tannage-word.js';
import { filesWithoutPictures, piecesOfJob } from '../logic/goods-of-job.js';
import type { MadePiece } from '../logic/goods-of-job.js';
import { showHide } from '../show-hide.js';
import { benchTable } from '../table.js';
import type { FitSought } from '../table.js';

/** More of one piece are not looked for at once. */
const MOST_COPIES = 200;

/** What a piece can be cut from: each hide and offcut of the job is tried by itself. */
export function fitSection(app: App): TemplateResult | typeof nothing {
  const pieces = piecesOfJob(app.job.get(), app.place.get().order);
  const [first] = pieces;
  if (first === undefined) return nothing;
  const { fit } = benchTable(app);
  const wanted = (): Pick<FitSought, 'of' | 'count'> => {
    const sought = fit.get();
    const of = pieces.find((each) => sought !== undefined && isSame(each, sought.of)) ?? first;
    return { of, count: sought?.count ?? 1 };
  };
  const sought = fit.get();
  const { of, count } = wanted();
  return html`<section class="bench-fit">
    <h3>${app.say('bench.fit')}</h3>
    ${listField(
      'bench-fit-piece',
      app.say('bench.fit.piece'),
      pieces.map((each, i) => [String(i), `${each.article}: ${each.piece}`] as const),
      String(pieces.indexOf(of)),
      (i) => fit.set({ ...wanted(), of: pieces[Number(i)]! }),
    )}
    ${countField(app, {
      id: 'bench-fit-count',
      label: app.say('bench.fit.count'),
      value: count,
      least: 1,
      most: MOST_COPIES,
      take: (value) => fit.set({ ...wanted(), count: value }),
    })}
    <p>
      <button ?disabled=${sought?.isLooking === true} @click=${() => void look(app, wanted())}>
        ${app.say('bench.fit.look')}
      </button>
    </p>
    ${sought === undefined ? nothing : answer(app, sought)}
  </section>`;
}

function isSame(one: MadePiece, other: MadePiece): boolean {
  return one.path === other.path && one.article === other.article && one.piece === other.piece;
}

/** In a worker of its own: at the bench nobody waits for it. */
async function look(app: App, { of, count }: Pick<FitSought, 'of' | 'count'>): Promise<void> {
  const { fit } = benchTable(app);
  const job = app.job.get();
  const sought: FitSought = { of, count, isLooking: true };
  fit.set(sought);
  const desk = openBenchDesk();
  const tell = (fits: NonNullable<FitSought['found']>['fits']): void =>
    // Another piece may be looked for by now.
    fit.update((now) => (now === sought ? { of, count, found: { job, fits } } : now));
  try {
    tell(await desk.ask('fits', { ...of, count, files: filesWithoutPictures(job) }));
  } catch (error) {
    tell(toldError(error));
  } finally {
    desk.end();
  }
}

function answer(app: App, { found, isLooking, count, of }: FitSought): TemplateResult | typeof nothing {
  if (isLooking === true) return html`<p role="status">${app.say('bench.fit.looking')}</p>`;
  // The leather has changed since: what was said of it may be wrong.
  if (found === undefined || found.job !== app.job.get()) return nothing;
  const { fits } = found;
  if ('sentence' in fits) return html`<p role="alert">${app.sentence(fits)}</p>`;
  const n = fits.filter(({ isEnough }) => isEnough).length;
  const enough = count === 1 ? 'bench.fit.enoughForOne' : 'bench.fit.enough';
  const words = n > 0 ? enough : fits.length > 0 ? 'bench.fit.notEnough' : 'bench.fit.none';
  return html`<p role="status">${app.say(words, { n, count, piece: of.piece })}</p>
    <ul class="stock-rows">
      ${fits.map((each) => fitRow(app, each))}
    </ul>`;
}

function fitRow(app: App, fit: StockFit): TemplateResult {
  const { id, file, fits, isFull, isOffcut, usableMm2, storedAt, remarks } = fit;
  const words = [
    app.say(isFull ? 'bench.fit.orMore' : 'bench.fit.fits', { n: fits }),
    app.say('bench.stock.usable', { area: app.measures().area(usableMm2) }),
    ...(storedAt === undefined ? [] : [storedAt]),
    ...remarks.map((remark) => remarkWords(app, remark)),
  ];
  return html`<li>
    <strong>${app.say(isOffcut ? 'bench.stock.offcut' : 'bench.stock.hide')} ${id}</strong>
    <span>${words.join(' · ')}</span>
    <button class="quiet" @click=${() => showHide(app, file)}>${app.say('bench.stock.look')}</button>
  </li>`;
}

function remarkWords(app: App, remark: StockRemark): string {
  switch (remark.kind) {
    case 'colour':
      return app.say('bench.fit.colour', { is: remark.is, wanted: remark.wanted });
    case 'tannage':
      return app.say('bench.fit.tannage', {
        is: tannageWord(app, remark.is),
        wanted: tannageWord(app, remark.wanted),
      });
    case 'thickness not known':
      return app.say('bench.fit.thickness');
    case 'reserved':
      return app.say('bench.articles.reserved');
  }
}
