import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { DRAWING_UNITS, LINE_ROLES } from '@hidebound/leather';
import type { OrderPiece, PatternPiece, RoleRule } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { checkField, listField } from '../../../fields/index.js';
import type { PatternFinding, PatternShown } from '../../../work/patterns-tasks.js';
import { benchOf, choose, editOrder, nameInOrder, orderOf, readingFor, shownPattern } from '../bench.js';
import { sizeOfPiece } from '../large/snap.js';
import { newPiece, partOfName } from '../order/pieces.js';
import { changeReading } from '../order/readings.js';
import { piecesOfArticle } from '../pieces-of.js';
import { leathersFor, takePieces } from '../take.js';
import { intoSection } from './into.js';
import { pagesSection } from './pages.js';
import { scaleSection } from './scale.js';
import { elementWords } from '../../../words/trade.js';

/** Repairs and what was left out are listed so far; a bad drawing has thousands. */
const LISTED = 12;

/** What was read from pattern files, and which pieces of it are taken. */
export function patternsCard(app: App): TemplateResult {
  const { chosen } = benchOf(app);
  if (chosen.kind !== 'patterns') return html``;
  const fresh = chosen.paths.flatMap((path) => freshPieces(app, path));
  return html`<button class="quiet back" @click=${() => choose(app, { kind: 'all' })}>
      ← ${app.say('pieces.all')}
    </button>
    <h2>${app.say('pieces.whatWasRead')}</h2>
    ${chosen.paths.map((path) => fileSection(app, path))}
    ${fresh.length === 0 ? nothing : takeSection(app, fresh)}`;
}

interface Fresh {
  readonly path: string;
  readonly found: PatternPiece;
}

function piecesTaken(app: App, path: string): ReadonlySet<string> {
  const file = nameInOrder(app, path);
  const all = (orderOf(app)?.articles ?? []).flatMap((_, i) => piecesOfArticle(app, i));
  return new Set(
    all.flatMap(({ from }) => (from.kind === 'pattern' && from.file === file ? [from.piece] : [])),
  );
}

function freshPieces(app: App, path: string): readonly Fresh[] {
  const taken = piecesTaken(app, path);
  const { left } = benchOf(app);
  return (shownPattern(app, path)?.read?.pieces ?? [])
    .filter(({ piece }) => !taken.has(piece.name) && !left.has(`${path}#${piece.name}`))
    .map((found) => ({ path, found }));
}

function fileSection(app: App, path: string): TemplateResult {
  const shown = shownPattern(app, path);
  const name = path.replace(/^.*\//, '');
  if (shown === undefined)
    return html`<section>
      <h3>${name}</h3>
      <p class="soft">${app.say('pieces.reading')}</p>
    </section>`;
  return html`<section class="pattern-file">
    <h3>${name}</h3>
    ${shown.failure === undefined ? nothing : failure(app, path, shown.failure)}
    ${pieceRows(app, path, shown)} ${pagesSection(app, path, shown)} ${sizes(app, path, shown)}
    ${fileFindings(app, shown)} ${shown.read === undefined ? nothing : scaleSection(app, path, shown.read)}
    ${strays(app, path, shown)} ${changes(app, shown)}
  </section>`;
}

function failure(app: App, path: string, refused: NonNullable<PatternShown['failure']>): TemplateResult {
  const { code } = refused;
  return html`<p class="finding is-error" role="alert">${app.sentence(refused)}</p>
    ${code.startsWith('dxf-') && code.includes('unit') ? unitField(app, path) : nothing}`;
}

function unitField(app: App, path: string): TemplateResult {
  const { units } = readingFor(app, path);
  return listField(
    `units-${path}`,
    app.say('pieces.unit'),
    [['', '…'] as const, ...DRAWING_UNITS.map((unit) => [unit, unit] as const)],
    units ?? '',
    (unit) => changeReadingOf(app, path, { units: unit === '' ? undefined : unit }),
  );
}

/** A reading belongs to the order; until there is one it is remembered, and goes into it with the first piece. */
export function changeReadingOf(app: App, path: string, patch: Parameters<typeof changeReading>[2]): void {
  if (orderOf(app) === undefined) {
    const bench = benchOf(app);
    bench.readings = changeReading({ patterns: bench.readings }, nameInOrder(app, path), patch).patterns;
    app.redraw();
    return;
  }
  editOrder(app, app.say('pieces.readingLabel'), (order) =>
    changeReading(order, nameInOrder(app, path), patch),
  );
}

function pieceRows(app: App, path: string, { read, findings }: PatternShown): TemplateResult {
  const taken = piecesTaken(app, path);
  const { left } = benchOf(app);
  const measures = app.measures();
  return html`<ul class="piece-list">
    ${(read?.pieces ?? []).map(({ piece }) => {
      const id = `${path}#${piece.name}`;
      const { widthMm, heightMm } = sizeOfPiece(piece);
      const told = findings.filter(({ pieces, tone }) => pieces.includes(piece.name) && tone !== 'note');
      return html`<li>
        <div class="row">
          ${
            taken.has(piece.name)
              ? html`<span class="grow"
                  >✓ ${piece.name} <span class="soft">${app.say('pieces.taken')}</span></span
                >`
              : html`<span class="grow"
                  >${checkField(piece.name, !left.has(id), (isOn) => {
                    if (isOn) left.delete(id);
                    else left.add(id);
                    app.redraw();
                  })}</span
                >`
          }
          <span class="soft">${measures.length(widthMm)} × ${measures.length(heightMm)}</span>
        </div>
        ${told.map((each) => finding(app, each))}
      </li>`;
    })}
  </ul>`;
}

function finding(app: App, each: PatternFinding): TemplateResult {
  return html`<p class="finding is-${each.tone}">${app.sentence(each)}</p>`;
}

/** Graded sizes: one of them, or all. */
function sizes(app: App, path: string, { read }: PatternShown): TemplateResult | typeof nothing {
  const pieces = read?.pieces ?? [];
  const names = [...new Set(pieces.flatMap(({ size }) => (size === undefined ? [] : [size])))];
  if (names.length < 2) return nothing;
  const { left } = benchOf(app);
  const isIn = (size: string): boolean =>
    pieces.some((each) => each.size === size && !left.has(`${path}#${each.piece.name}`));
  const only = names.filter(isIn);
  return listField(
    `size-${path}`,
    app.say('pieces.size'),
    [['', app.say('pieces.allSizes')] as const, ...names.map((size) => [size, size] as const)],
    only.length === 1 ? only[0]! : '',
    (value) => {
      for (const { size, piece } of pieces) {
        const id = `${path}#${piece.name}`;
        if (value === '' || size === undefined || size === value) left.delete(id);
        else left.add(id);
      }
      app.redraw();
    },
  );
}

/** What is said of the file and of no single piece; notes are folded. */
function fileFindings(app: App, { findings, read }: PatternShown): TemplateResult {
  const names = new Set((read?.pieces ?? []).map(({ piece }) => piece.name));
  const rest = findings.filter(
    ({ pieces, tone }) => tone === 'note' || !pieces.some((name) => names.has(name)),
  );
  const notes = rest.filter(({ tone }) => tone === 'note');
  return html`${rest.filter(({ tone }) => tone !== 'note').map((each) => finding(app, each))}
  ${
    notes.length === 0
      ? nothing
      : html`<details>
          <summary>${app.say('pieces.notes', { n: notes.length })}</summary>
          ${notes.map((each) => finding(app, each))}
        </details>`
  }`;
}

/** Lines in no piece, by their look: what they are can be said here. */
function strays(app: App, path: string, { read }: PatternShown): TemplateResult | typeof nothing {
  const looks = new Map<
    string,
    { readonly rule: Omit<RoleRule, 'role'>; readonly words: string; n: number }
  >();
  for (const { stroke, isDashed, source } of read?.strays ?? []) {
    const layer = source.groups.flatMap(({ labels }) => labels.given)[0];
    const colour = stroke?.startsWith('#') === true ? stroke : undefined;
    const rule = {
      ...(layer === undefined ? {} : { layer }),
      ...(colour === undefined ? {} : { colour }),
      dashed: isDashed,
    };
    const dash = app.say(isDashed ? 'pieces.dashed' : 'pieces.solid');
    const words = [layer, colour, dash].filter((word) => word !== undefined).join(', ');
    const known = looks.get(words);
    if (known === undefined) looks.set(words, { rule, words, n: 1 });
    else known.n += 1;
  }
  if (looks.size === 0) return nothing;
  return html`<details>
    <summary>${app.say('pieces.strays', { n: read!.strays.length })}</summary>
    ${[...looks.values()].map(({ rule, words, n }, i) =>
      listField(
        `role-${i}`,
        app.say('pieces.lookOf', { n, look: words }),
        [['', '…'] as const, ...LINE_ROLES.map((role) => [role, app.say(`pieces.role.${role}`)] as const)],
        '',
        (role) => {
          if (role === '') return;
          changeReadingOf(app, path, { roles: [...readingFor(app, path).roles, { ...rule, role }] });
        },
      ),
    )}
  </details>`;
}

/** What was mended and what was left out, so that nothing is done in silence. */
function changes(app: App, { read }: PatternShown): TemplateResult | typeof nothing {
  const repairs = read?.repairs ?? [];
  const ignored = read?.ignored ?? [];
  const n = repairs.length + ignored.length;
  if (n === 0) return nothing;
  const measures = app.measures();
  return html`<details>
    <summary>${app.say('pieces.changes', { n })}</summary>
    <ul>
      ${repairs
        .slice(0, LISTED)
        .map(
          ({ kind, element, sizeMm }) =>
            html`<li>
              ${app.say(`pieces.repair.${kind}`, { element: elementWords(app, element), size: `${measures.number(sizeMm, 3)} mm` })}
            </li>`,
        )}
      ${ignored.slice(0, LISTED).map(
        ({ element, reason }) =>
          html`<li>
            ${app.say('pieces.leftOut', {
              element: elementWords(app, element),
              reason: app.say(`trade.leftOut.${reason}`),
            })}
          </li>`,
      )}
    </ul>
    ${n > 2 * LISTED ? html`<p class="soft">${app.say('pieces.andMore', { n: n - Math.min(LISTED, repairs.length) - Math.min(LISTED, ignored.length) })}</p>` : nothing}
  </details>`;
}

function takeSection(app: App, fresh: readonly Fresh[]): TemplateResult {
  const bench = benchOf(app);
  const leathers = leathersFor(app);
  const leather = leathers.find(({ name }) => name === bench.leather)?.name ?? leathers[0]!.name;
  return html`<section class="take-what">
      ${intoSection(app)}
      ${
        leathers.length < 2
          ? nothing
          : listField(
              'take-leather',
              app.say('pieces.leather'),
              leathers.map(({ name }) => [name, name] as const),
              leather,
              (value) => {
                bench.leather = value;
                app.redraw();
              },
            )
      }
    </section>
    <div class="take">
      <button
        class="main"
        @click=${() =>
          takePieces(
            app,
            fresh.map((each) => taken(app, each, leather)),
          )}
      >
        ${app.say('pieces.take', { n: fresh.length })}
      </button>
    </div>`;
}

/** What the pattern says of a piece is taken over: how often, how often mirrored, of what. */
function taken(app: App, { path, found }: Fresh, leather: string): OrderPiece {
  const { piece, count, mirrored, material } = found;
  const said = leathersFor(app).find(({ name }) => name.toLowerCase() === material?.toLowerCase());
  const from = { kind: 'pattern', file: nameInOrder(app, path), piece: piece.name } as const;
  return newPiece(piece.name, from, {
    leather: said?.name ?? leather,
    part: partOfName(piece.name),
    count,
    mirrored,
  });
}
