import { html, nothing, render } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App, Notice } from '../app/app.js';
import { PLACE_NAMES } from '../app/place.js';
import type { PlaceName } from '../app/place.js';
import { openStage } from '../drawing/stage.js';
import type { Stage } from '../drawing/stage.js';
import { STATIONS } from '../stations/index.js';
import { listenToAppKeys } from './app-keys.js';
import { cardHandle } from './card-handle.js';
import type { CardHeight } from './card-handle.js';
import { saveJobFile } from './job-files.js';
import { jobMenu, lookUpJobs } from './job-menu.js';
import { keySheet } from './key-sheet.js';
import { noticeList } from './notices.js';
import { lookUpOffline } from './offline-line.js';
import { safetyLine } from './safety.js';
import { settingsSheet } from './settings.js';
import type { Station } from './station.js';
import { topBar } from './top-bar.js';

export type OpenSheet = 'keys' | 'settings' | 'job' | undefined;

/** What the frame itself has to remember. */
export interface Frame {
  readonly station: Station | undefined;
  /** Whose station it is; while another one is loaded, still the one before. */
  readonly shown: PlaceName | undefined;
  readonly sheet: OpenSheet;
  /** The last notice before the sheet was opened: what is told later is told on the sheet, which covers all else. */
  readonly toldBefore: number;
  /** On a phone: how much of the card is seen. */
  readonly card: CardHeight;
  /** Another tab holds the pen, and not just for the moment that it takes to get it. */
  readonly isLookingOn: boolean;
}

export interface Shell {
  readonly app: App;
  frame(): Frame;
  /** Brings all of the drawing into view; undefined where it is. */
  showAll(): (() => void) | undefined;
  openSheet(sheet: OpenSheet): void;
  setCard(card: CardHeight): void;
}

/** A tab that is alone on its job gets the pen sooner than this. */
const PEN_COMES_WITHIN_MS = 1500;

/** The frame around the five places: bar above, drawing in the middle, card beside it, tools below. */
export function openShell(app: App, root: HTMLElement): Shell {
  let frame: Frame = {
    station: undefined,
    shown: undefined,
    sheet: undefined,
    toldBefore: 0,
    card: 'low',
    isLookingOn: false,
  };
  let stage: Stage | undefined;
  let close: (() => void) | undefined;
  let opened: PlaceName | undefined;
  let queued = false;
  let cardSubject = '';
  let showAll: Shell['showAll'] = () => undefined;

  const shell: Shell = {
    app,
    frame: () => frame,
    showAll: () => showAll(),
    openSheet: (sheet) => {
      frame = { ...frame, sheet, toldBefore: app.notices.get().at(-1)?.id ?? 0 };
      draw();
      if (sheet === 'settings') void lookUpOffline(app);
      if (sheet === 'job') lookUpJobs(app).catch((error: unknown) => app.tellFailure(error));
    },
    setCard: (card) => {
      frame = { ...frame, card };
      draw();
    },
  };

  const draw = (): void => {
    queued = false;
    document.documentElement.lang = app.prefs.get().language;
    render(shellTemplate(shell), root);
    showCardFromTop();
    const { station } = frame;
    if (station === undefined || close !== undefined) return;
    const element = root.querySelector<HTMLElement>('.floor');
    if (station.open === undefined || element === null) {
      close = () => undefined;
      return;
    }
    if (stage === undefined) {
      const drawing = openStage(element, {
        name: app.say('shell.drawing'),
        help: app.say('shell.drawingHelp'),
      });
      drawing.isAway.watch(drawSoon);
      showAll = () => (drawing.isAway.get() && drawing.hasDrawing() ? () => drawing.fitAgain() : undefined);
      stage = drawing;
    }
    close = station.open(app, stage);
  };
  /** When the card is about something else, as its first two headings tell, its head is in view again. */
  const showCardFromTop = (): void => {
    const paper = root.querySelector('.card-paper');
    const heads = [...(paper?.querySelectorAll('h2, h3') ?? [])].slice(0, 2);
    const subject = [frame.shown, ...heads.map(({ textContent }) => textContent)].join('\n');
    if (subject !== cardSubject) paper?.scrollTo({ top: 0 });
    cardSubject = subject;
  };
  const drawSoon = (): void => {
    if (queued) return;
    queued = true;
    requestAnimationFrame(draw);
  };
  const enter = async (name: PlaceName): Promise<void> => {
    if (opened === name) return;
    opened = name;
    try {
      const station = await STATIONS[name]();
      if (opened !== name) return;
      close?.();
      close = undefined;
      frame = { ...frame, station, shown: name };
      draw();
    } catch (error) {
      app.tellFailure(error);
    }
  };

  const lookOn = (): void => {
    frame = { ...frame, isLookingOn: !app.session.penHeld.get() };
    drawSoon();
  };
  app.session.penHeld.watch(lookOn);
  setTimeout(lookOn, PEN_COMES_WITHIN_MS);
  for (const watched of [app.job, app.history, app.place, app.prefs, app.saved, app.notices, app.redraws])
    (watched as App['redraws']).watch(drawSoon);
  app.place.watch(({ name }) => void enter(name));
  app.prefs.watch((value, before) => {
    applyLight(app);
    if (value.language !== before.language) void app.useLanguage();
  });
  applyLight(app);
  listenToAppKeys(shell);
  draw();
  void enter(app.place.get().name);
  return shell;
}

function shellTemplate(shell: Shell): TemplateResult {
  const { app } = shell;
  const { station, shown, card } = shell.frame();
  const place = app.place.get().name;
  const hasDrawing = station === undefined || station.open !== undefined;
  return html`<div
    class="table ${hasDrawing ? '' : 'without-drawing'} card-${card}"
    data-place=${place}
    data-shown=${shown ?? ''}
  >
    <a class="skip" href="#card" @click=${skipToCard}>${app.say('shell.toCard')}</a>
    <div class="above">${topBar(shell)} ${safetyLine(app, shell.frame().isLookingOn)}</div>
    <nav class="places" aria-label=${app.say('place.nav')}>
      ${PLACE_NAMES.map(
        (name) =>
          html`<button
            class="place"
            aria-current=${name === place ? 'page' : 'false'}
            @click=${() => app.goTo(name)}
          >
            ${app.say(`place.${name}`)}
          </button>`,
      )}
    </nav>
    <main class="middle">
      <div class="drawing" ?hidden=${!hasDrawing}>
        ${hasDrawing ? showAllButton(shell) : nothing}
        <div class="floor"></div>
      </div>
      <div class="notices-place">${noticeList(app, noticesBelow(shell))}</div>
      <section class="tray" aria-label=${app.say('shell.tools')}>${station?.tray(app)}</section>
    </main>
    <section class="card" id="card" tabindex="-1" aria-label=${app.say('shell.card')}>
      ${cardHandle(shell)}
      <div class="card-paper">${cardOf(shell)}</div>
    </section>
    ${keySheet(shell)} ${settingsSheet(shell)} ${jobMenu(shell)}
  </div>`;
}

/** Within reach only where there is something out of view. */
function showAllButton(shell: Shell): TemplateResult | typeof nothing {
  const showAll = shell.showAll();
  return showAll === undefined
    ? nothing
    : html`<button class="show-all" @click=${showAll}>${shell.app.say('shell.showAll')}</button>`;
}

/** A sheet has its own: nothing below it can be reached, or heard of, while it lies there. */
function noticesBelow(shell: Shell): readonly Notice[] {
  const { sheet, toldBefore } = shell.frame();
  const all = shell.app.notices.get();
  return sheet === undefined ? all : all.filter(({ id }) => id <= toldBefore);
}

/** For those who come by keys: past the bar and the drawing, to what is told and asked. */
function skipToCard(event: Event): void {
  event.preventDefault();
  document.getElementById('card')?.focus();
}

/** A card that can't be drawn says so, and leaves the rest of the table as it is. */
function cardOf(shell: Shell): TemplateResult {
  const { app } = shell;
  const { station } = shell.frame();
  if (station === undefined) return html`<p>${app.say('shell.loading')}</p>`;
  try {
    return station.card(app);
  } catch (error) {
    console.error(error);
    const sentence = error instanceof Error ? error.message : String(error);
    return html`<p role="alert">${app.say('failure.card', { sentence })}</p>
      <div class="row">
        <button @click=${() => app.undo()}>${app.say('shell.undo')}</button>
        <button @click=${() => saveJobFile(app).catch((reason: unknown) => app.tellFailure(reason))}>
          ${app.say('job.save')}
        </button>
      </div>`;
  }
}

function applyLight(app: App): void {
  document.documentElement.dataset['light'] = app.prefs.get().light;
}
