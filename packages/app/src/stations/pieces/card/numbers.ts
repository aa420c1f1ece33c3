import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { PARTS, STRAP_ENDS } from '@hidebound/leather';
import type { PieceSource, StrapNumbers } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { checkField, countField, lengthField, listField, oneOf, textField } from '../../../fields/index.js';
import { benchOf, choose } from '../bench.js';
import { tryNumbers } from '../numbers-shape.js';
import { newPiece } from '../order/pieces.js';
import { leathersFor, takePieces } from '../take.js';
import { intoSection } from './into.js';

export type NumberSource = Exclude<PieceSource, { readonly kind: 'pattern' }>;

const FIRST_STRAP: StrapNumbers = {
  widthMm: 25,
  lengthMm: 400,
  holeEnd: 'arched point',
  buckleEnd: 'square',
};
const FIRST_HOLES = { count: 5, spacingMm: 25, diameterMm: 4, fromEndMm: 50 };
const FIRST_SLOT = { widthMm: 4, lengthMm: 20, fromEndMm: 40 };

const FIRST: Readonly<Record<NumberSource['kind'], NumberSource>> = {
  strap: { kind: 'strap', strap: FIRST_STRAP },
  rectangle: { kind: 'rectangle', widthMm: 60, lengthMm: 120, cornerRadiusMm: 0 },
  disc: { kind: 'disc', diameterMm: 60 },
};

const SHAPES = ['strap', 'rectangle', 'disc'] as const;

export function beginNumbers(app: App): void {
  const bench = benchOf(app);
  const leather = leathersFor(app)[0]!.name;
  bench.numbers = newPiece(app.say('pieces.shape.strap'), FIRST.strap, { leather, part: 'strap' });
  choose(app, { kind: 'numbers' });
}

/** A piece that needs no pattern: it is drawn while its numbers are set. */
export function numbersCard(app: App): TemplateResult {
  const bench = benchOf(app);
  const piece = bench.numbers;
  if (piece === undefined || piece.from.kind === 'pattern') return html``;
  const set = (patch: Partial<typeof piece>): void => {
    bench.numbers = { ...piece, ...patch };
    app.redraw();
  };
  const setKind = (kind: NumberSource['kind']): void =>
    set({
      from: FIRST[kind],
      name: app.say(`pieces.shape.${kind}`),
      part: kind === 'strap' ? 'strap' : 'tab',
      inLane: kind === 'strap',
    });
  const made = tryNumbers(piece);
  return html`<button class="quiet back" @click=${() => choose(app, { kind: 'all' })}>
      ← ${app.say('pieces.all')}
    </button>
    <h2>${app.say('pieces.byNumbers')}</h2>
    ${oneOf(
      'shape',
      app.say('pieces.shape'),
      SHAPES.map((kind) => [kind, app.say(`pieces.shape.${kind}`)] as const),
      piece.from.kind,
      setKind,
    )}
    ${numbersFields(app, 'new', piece.from, (from) => set({ from }))}
    ${'sentence' in made ? html`<p class="finding is-error" role="alert">${app.sentence(made)}</p>` : nothing}
    ${textField(app, {
      id: 'new-name',
      label: app.say('pieces.name'),
      value: piece.name,
      take: (name) => set({ name }),
    })}
    <div class="counts">
      ${countField(app, {
        id: 'new-count',
        label: app.say('pieces.count'),
        value: piece.count,
        least: 1,
        most: 10_000,
        take: (count) => set({ count }),
      })}
    </div>
    ${listField(
      'new-leather',
      app.say('pieces.leather'),
      leathersFor(app).map(({ name }) => [name, name] as const),
      piece.leather,
      (leather) => set({ leather }),
    )}
    ${listField(
      'new-part',
      app.say('pieces.part'),
      PARTS.map((part) => [part, app.say(`pieces.part.${part}`)] as const),
      piece.part,
      (part) => set({ part }),
    )}
    ${intoSection(app)}
    <button class="main" ?disabled=${typeof made === 'string'} @click=${() => takePieces(app, [piece])}>
      ${app.say('pieces.takeIt')}
    </button>`;
}

/** The numbers of a piece, whether it is being made or is there. */
export function numbersFields(
  app: App,
  id: string,
  from: NumberSource,
  take: (from: NumberSource) => void,
): TemplateResult {
  const length = (name: string, label: string, mm: number, change: (mm: number) => void): TemplateResult =>
    lengthField(app, {
      id: `${id}-${name}`,
      label,
      value: mm,
      take: change,
    });
  switch (from.kind) {
    case 'disc':
      return length('diameter', app.say('pieces.diameter'), from.diameterMm, (diameterMm) =>
        take({ ...from, diameterMm }),
      );
    case 'rectangle':
      return html`<div class="pair">
        ${length('width', app.say('pieces.width'), from.widthMm, (widthMm) => take({ ...from, widthMm }))}
        ${length('length', app.say('pieces.length'), from.lengthMm, (lengthMm) => take({ ...from, lengthMm }))}
        ${lengthField(app, {
          id: `${id}-corner`,
          label: app.say('pieces.corners'),
          value: from.cornerRadiusMm,
          least: 0,
          take: (mm) => take({ ...from, cornerRadiusMm: mm }),
        })}
      </div>`;
    case 'strap':
      return strapFields(app, id, from.strap, length, (strap) => take({ kind: 'strap', strap }));
  }
}

type LengthOf = (name: string, label: string, mm: number, change: (mm: number) => void) => TemplateResult;

function strapFields(
  app: App,
  id: string,
  strap: StrapNumbers,
  length: LengthOf,
  take: (strap: StrapNumbers) => void,
): TemplateResult {
  const { holes, slot } = strap;
  const { holes: _holes, ...withoutHoles } = strap;
  const { slot: _slot, ...withoutSlot } = strap;
  const ends = STRAP_ENDS.map((end) => [end, app.say(`pieces.end.${end}`)] as const);
  return html`<div class="pair">
      ${length('width', app.say('pieces.width'), strap.widthMm, (widthMm) => take({ ...strap, widthMm }))}
      ${length('length', app.say('pieces.length'), strap.lengthMm, (lengthMm) => take({ ...strap, lengthMm }))}
      ${listField(`${id}-hole-end`, app.say('pieces.holeEnd'), ends, strap.holeEnd, (holeEnd) =>
        take({ ...strap, holeEnd }),
      )}
      ${listField(`${id}-buckle-end`, app.say('pieces.buckleEnd'), ends, strap.buckleEnd, (buckleEnd) =>
        take({ ...strap, buckleEnd }),
      )}
    </div>
    ${checkField(app.say('pieces.withHoles'), holes !== undefined, (isOn) =>
      take(isOn ? { ...strap, holes: FIRST_HOLES } : withoutHoles),
    )}
    ${
      holes === undefined
        ? nothing
        : html`<div class="counts">
              ${countField(app, {
                id: `${id}-holes`,
                label: app.say('pieces.holeCount'),
                value: holes.count,
                least: 1,
                most: 200,
                take: (count) => take({ ...strap, holes: { ...holes, count } }),
              })}
            </div>
            <div class="pair">
              ${length('spacing', app.say('pieces.holeSpacing'), holes.spacingMm, (spacingMm) =>
                take({ ...strap, holes: { ...holes, spacingMm } }),
              )}
              ${length('hole', app.say('pieces.holeDiameter'), holes.diameterMm, (diameterMm) =>
                take({ ...strap, holes: { ...holes, diameterMm } }),
              )}
              ${length('first', app.say('pieces.holeFromEnd'), holes.fromEndMm, (fromEndMm) =>
                take({ ...strap, holes: { ...holes, fromEndMm } }),
              )}
            </div>`
    }
    ${checkField(app.say('pieces.withSlot'), slot !== undefined, (isOn) =>
      take(isOn ? { ...strap, slot: FIRST_SLOT } : withoutSlot),
    )}
    ${
      slot === undefined
        ? nothing
        : html`<div class="pair">
            ${length('slot-width', app.say('pieces.slotWidth'), slot.widthMm, (widthMm) =>
              take({ ...strap, slot: { ...slot, widthMm } }),
            )}
            ${length('slot-length', app.say('pieces.slotLength'), slot.lengthMm, (lengthMm) =>
              take({ ...strap, slot: { ...slot, lengthMm } }),
            )}
            ${length('slot-end', app.say('pieces.slotFromEnd'), slot.fromEndMm, (fromEndMm) =>
              take({ ...strap, slot: { ...slot, fromEndMm } }),
            )}
          </div>`
    }`;
}
