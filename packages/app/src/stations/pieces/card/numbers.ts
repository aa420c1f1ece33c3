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

/** What is there before anything is said, in round numbers of her own unit; one that is usual, from memory. */
interface FirstNumbers {
  readonly strap: StrapNumbers;
  readonly holes: NonNullable<StrapNumbers['holes']>;
  readonly slot: NonNullable<StrapNumbers['slot']>;
  readonly rectangle: readonly [number, number];
  readonly discMm: number;
}

const ENDS = { holeEnd: 'arched point', buckleEnd: 'square' } as const;

const FIRST_IN_MM: FirstNumbers = {
  strap: { widthMm: 25, lengthMm: 400, ...ENDS },
  holes: { count: 5, spacingMm: 25, diameterMm: 4, fromEndMm: 50 },
  slot: { widthMm: 4, lengthMm: 20, fromEndMm: 40 },
  rectangle: [60, 120],
  discMm: 60,
};

/** 1 by 16 in, holes of 5/32 in an inch apart, a slot of 3/16 by 3/4 in, 2 1/2 by 5 in, 2 1/2 in. */
const FIRST_IN_INCHES: FirstNumbers = {
  strap: { widthMm: 25.4, lengthMm: 406.4, ...ENDS },
  holes: { count: 5, spacingMm: 25.4, diameterMm: 3.969, fromEndMm: 50.8 },
  slot: { widthMm: 4.763, lengthMm: 19.05, fromEndMm: 38.1 },
  rectangle: [63.5, 127],
  discMm: 63.5,
};

function firstNumbers(app: App): FirstNumbers {
  return app.measures().lengthUnit === 'in' ? FIRST_IN_INCHES : FIRST_IN_MM;
}

function firstOf(app: App, kind: NumberSource['kind']): NumberSource {
  const { strap, rectangle, discMm } = firstNumbers(app);
  switch (kind) {
    case 'strap':
      return { kind, strap };
    case 'rectangle':
      return { kind, widthMm: rectangle[0], lengthMm: rectangle[1], cornerRadiusMm: 0 };
    case 'disc':
      return { kind, diameterMm: discMm };
  }
}

const SHAPES = ['strap', 'rectangle', 'disc'] as const;

export function beginNumbers(app: App): void {
  const bench = benchOf(app);
  const leather = leathersFor(app)[0]!.name;
  bench.numbers = newPiece(app.say('pieces.shape.strap'), firstOf(app, 'strap'), { leather, part: 'strap' });
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
      from: firstOf(app, kind),
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
      take(isOn ? { ...strap, holes: firstNumbers(app).holes } : withoutHoles),
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
      take(isOn ? { ...strap, slot: firstNumbers(app).slot } : withoutSlot),
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
