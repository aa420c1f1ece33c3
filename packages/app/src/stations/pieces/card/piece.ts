import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { PARTS, ruleOfPart } from '@hidebound/leather';
import type { DirectionWish, OrderPiece, ResolvedPiece } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import {
  checkField,
  countField,
  lengthField,
  listField,
  oneOf,
  textField,
  thicknessSpan,
} from '../../../fields/index.js';
import type { BoardPiece } from '../../../work/patterns-tasks.js';
import { benchOf, choose, editOrder } from '../bench.js';
import { isOwnPiece, setArrow } from '../large/chosen-hand.js';
import { sizeOfPiece } from '../large/snap.js';
import { changePiece, withoutPiece } from '../order/pieces.js';
import { piecesOfArticle } from '../pieces-of.js';
import { leathersFor, workshopFor } from '../take.js';
import { faceSection, paintingSlip } from './face.js';
import { legend } from './legend.js';
import { numbersFields } from './numbers.js';
import { suitSection } from './suit.js';
import { zonesField } from './zones.js';

const MOST_COPIES = 10_000;

export function pieceCard(app: App): TemplateResult {
  const { chosen, board } = benchOf(app);
  if (chosen.kind !== 'piece') return html``;
  const piece = piecesOfArticle(app, chosen.article)[chosen.piece];
  const found = board?.articles[chosen.article]?.pieces[chosen.piece];
  if (piece === undefined) return html`<p>${app.say('pieces.gone')}</p>`;
  return html`<button class="quiet back" @click=${() => choose(app, { kind: 'all' })}>
      ← ${app.say('pieces.all')}
    </button>
    <h2>${piece.name}</h2>
    ${isOwnPiece(app) ? paintingSlip(app, piece) : nothing} ${sourceLine(app, piece, found)}
    ${findings(app, found)}
    ${
      isOwnPiece(app)
        ? fields(app, piece, found?.resolved)
        : html`<p class="soft">${app.say('pieces.inFile')}</p>`
    }
    ${found?.shape === undefined ? nothing : legend(app, found.shape.shape)} ${suitSection(app, piece)}`;
}

function sourceLine(app: App, { from }: OrderPiece, found: BoardPiece | undefined): TemplateResult {
  const measures = app.measures();
  const size = found?.shape === undefined ? undefined : sizeOfPiece(found.shape.shape);
  const words =
    size === undefined ? '' : `${measures.length(size.widthMm)} × ${measures.length(size.heightMm)}`;
  if (from.kind !== 'pattern') return html`<p class="soft">${words}</p>`;
  const path = from.file;
  return html`<p class="soft">
    ${words}${words === '' ? '' : ', '}${app.say('pieces.from', { file: path.replace(/^.*\//, '') })}
  </p>`;
}

function findings(app: App, found: BoardPiece | undefined): TemplateResult {
  return html`${
    found?.refused === undefined
      ? nothing
      : html`<p class="finding is-error">${app.sentence(found.refused)}</p>`
  }
  ${(found?.findings ?? []).map((each) => html`<p class="finding is-${each.tone}">${app.sentence(each)}</p>`)}`;
}

function changer(app: App): (patch: Parameters<typeof changePiece>[3]) => void {
  return (patch) => {
    const { chosen } = benchOf(app);
    if (chosen.kind !== 'piece') return;
    const { article, piece } = chosen;
    const { name } = piecesOfArticle(app, article)[piece]!;
    editOrder(app, app.say('pieces.pieceLabel', { piece: name }), (order) =>
      changePiece(order, article, piece, patch),
    );
  };
}

function fields(app: App, piece: OrderPiece, resolved: ResolvedPiece | undefined): TemplateResult {
  const change = changer(app);
  const { chosen } = benchOf(app);
  const key = chosen.kind === 'piece' ? `${chosen.article}-${chosen.piece}` : '';
  return html`${textField(app, {
      id: `name-${key}`,
      label: app.say('pieces.name'),
      value: piece.name,
      take: (name) => change({ name }),
    })}
    <div class="counts">
      ${countField(app, {
        id: `count-${key}`,
        label: app.say('pieces.count'),
        value: piece.count,
        least: 1,
        most: MOST_COPIES,
        take: (count) => change({ count }),
      })}
      ${countField(app, {
        id: `mirrored-${key}`,
        label: app.say('pieces.mirrored'),
        value: piece.mirrored,
        least: 0,
        most: piece.count,
        take: (mirrored) => change({ mirrored }),
      })}
    </div>
    ${
      piece.from.kind === 'pattern'
        ? nothing
        : numbersFields(app, `own-${key}`, piece.from, (from) => change({ from }))
    }
    ${listField(
      `leather-${key}`,
      app.say('pieces.leather'),
      leathersFor(app).map(({ name }) => [name, name] as const),
      piece.leather,
      (leather) => change({ leather }),
    )}
    ${listField(
      `part-${key}`,
      app.say('pieces.part'),
      PARTS.map((part) => [part, app.say(`pieces.part.${part}`)] as const),
      piece.part,
      (part) => change({ part }),
    )}
    ${directionFields(app, key, piece, resolved)}
    <details>
      <summary>${app.say('pieces.leatherNeeds')}</summary>
      ${needsFields(app, key, piece, resolved)}
    </details>
    ${faceSection(app, key, piece)}
    <button class="quiet danger" @click=${() => remove(app, piece.name)}>
      ${app.say('pieces.remove')}
    </button>`;
}

function remove(app: App, name: string): void {
  const { chosen } = benchOf(app);
  if (chosen.kind !== 'piece') return;
  const { article, piece } = chosen;
  choose(app, { kind: 'all' });
  editOrder(app, app.say('pieces.removedLabel', { piece: name }), (order) =>
    withoutPiece(order, article, piece),
  );
}

const RULES = ['along', 'across', 'free', 'fixed'] as const;
/** As an order file has it where it says the rule alone. */
const USUAL_TOLERANCE = { along: 10, across: 10, free: 180, fixed: 5 } as const;

function directionFields(
  app: App,
  key: string,
  piece: OrderPiece,
  resolved: ResolvedPiece | undefined,
): TemplateResult {
  const change = changer(app);
  const wish = piece.direction ?? resolved?.direction ?? ruleOfPart(piece.part, workshopFor(app)).direction;
  const withRule = (rule: DirectionWish['rule']): DirectionWish => ({
    rule,
    angleDeg: rule === 'fixed' ? wish.angleDeg : 0,
    toleranceDeg: USUAL_TOLERANCE[rule],
    halfTurn: rule !== 'fixed',
  });
  return html`${oneOf(
    `rule-${key}`,
    app.say('pieces.direction'),
    RULES.map((rule) => [rule, app.say(`pieces.rule.${rule}`)] as const),
    wish.rule,
    (rule) => change({ direction: withRule(rule) }),
    { isColumn: true },
  )}
  ${
    wish.rule === 'free'
      ? nothing
      : html`<div class="counts">
            ${
              wish.rule === 'fixed'
                ? html`${countField(app, {
                    id: `angle-${key}`,
                    label: app.say('pieces.fixedAngle'),
                    value: wish.angleDeg,
                    least: -360,
                    most: 360,
                    take: (angleDeg) => change({ direction: { ...wish, angleDeg } }),
                  })}`
                : nothing
            }
            ${countField(app, {
              id: `tolerance-${key}`,
              label: app.say('pieces.tolerance'),
              value: wish.toleranceDeg,
              least: 0,
              most: 180,
              take: (toleranceDeg) => change({ direction: { ...wish, toleranceDeg } }),
            })}
          </div>
          ${checkField(app.say('pieces.halfTurn'), wish.halfTurn, (halfTurn) =>
            change({ direction: { ...wish, halfTurn } }),
          )}`
  }
  ${arrowRow(app, piece)}`;
}

function arrowRow(app: App, piece: OrderPiece): TemplateResult {
  const { chosen, board } = benchOf(app);
  const shape =
    chosen.kind === 'piece' ? board?.articles[chosen.article]?.pieces[chosen.piece]?.shape : undefined;
  if (shape === undefined) return html``;
  const turn = (by: number): void => setArrow(app, (shape.arrowDeg + by + 360) % 360);
  return html`<div class="arrow-row">
    <p class="soft">
      ${app.say(shape.arrowIsGuessed ? 'pieces.arrowGuessed' : 'pieces.arrowIs', {
        angle: app.measures().degrees(shape.arrowDeg),
      })}
    </p>
    <div class="row">
      <button @click=${() => turn(-15)}>${app.say('pieces.turnLeft')}</button>
      <button @click=${() => turn(15)}>${app.say('pieces.turnRight')}</button>
      <button @click=${() => turn(180)}>${app.say('pieces.turnOver')}</button>
      ${
        piece.arrowDeg === undefined
          ? nothing
          : html`<button class="quiet" @click=${() => setArrow(app, undefined)}>
              ${app.say('pieces.arrowAsDrawn')}
            </button>`
      }
    </div>
  </div>`;
}

const LOOKS = ['A', 'B', 'C'] as const;

function needsFields(
  app: App,
  key: string,
  piece: OrderPiece,
  resolved: ResolvedPiece | undefined,
): TemplateResult {
  const change = changer(app);
  const usual = ruleOfPart(piece.part, workshopFor(app));
  const looks = { ...usual.looks, ...resolved?.looks, ...piece.looks };
  const options = LOOKS.map((value) => [value, app.say(`pieces.looks.${value}`)] as const);
  return html`${listField(`face-looks-${key}`, app.say('pieces.faceLooks'), options, looks.face, (face) =>
    change({ looks: { ...piece.looks, face } }),
  )}
  ${listField(`rest-looks-${key}`, app.say('pieces.restLooks'), options, looks.rest, (rest) =>
    change({ looks: { ...piece.looks, rest } }),
  )}
  ${checkField(app.say('pieces.load'), piece.bearsLoad ?? usual.bearsLoad, (bearsLoad) =>
    change({ bearsLoad }),
  )}
  ${thicknessSpan(app, {
    id: `thickness-${key}`,
    range: piece.thickness,
    take: (thickness) => change({ thickness }),
  })}
  ${checkField(app.say('pieces.maySkive'), (piece.tooThick ?? usual.tooThick) === 'skive', (isOn) =>
    change({ tooThick: isOn ? 'skive' : 'refuse' }),
  )}
  ${lengthField(app, {
    id: `allowance-${key}`,
    label: app.say('pieces.allowance'),
    value: piece.allowanceMm,
    least: 0,
    take: (allowanceMm) => change({ allowanceMm }),
  })}
  ${zonesField(app, piece, usual.zones, (zones) => change({ zones }))}
  ${
    piece.part === 'strap' || piece.inLane
      ? html`${checkField(app.say('pieces.inLane'), piece.inLane, (inLane) => change({ inLane }))}
          <p class="soft">${app.say('pieces.inLaneHow')}</p>`
      : nothing
  }`;
}
