import {
  LEAST_MARGIN_MM,
  USUAL_OVERLAP_MM,
  layoutMark,
  planTiles,
  refuseUnprintable,
} from '@hidebound/leather';
import type {
  Hide,
  HolePlaces,
  LayablePiece,
  Layout,
  PageSettings,
  Paper,
  TilePlan,
  Workshop,
} from '@hidebound/leather';
import type { Drawing, Layer } from '../drawing/model.js';
import { RenderError } from '../error.js';
import type { SeenFrom } from '../picture/hide-view.js';
import type { LengthUnit } from '../sheet/words.js';
import type { FontBook } from '../text/font-book.js';
import { cardPages } from './card-pages.js';
import { pieceCards, roughCutCards } from './card-scene.js';
import type { CardOptions, TemplateCard } from './card-scene.js';
import { hideScene } from './hide-scene.js';
import { largeCardScenes } from './large-cards.js';
import { mapBox, pageFurniture } from './page-furniture.js';
import { pageMap } from './page-map.js';
import { contentOfScene } from './template-scene.js';
import type { SceneLine, TemplateScene } from './template-scene.js';
import { TEMPLATE_LINES } from './template-style.js';
import type { TemplateLine } from './template-style.js';
import { partsOfPages } from './page-parts.js';
import { tilePageLayers } from './tile-page.js';

export interface TemplateOptions {
  readonly layout: Layout;
  readonly paper: Paper;
  readonly fonts: FontBook;
  /** Default: 10 mm. */
  readonly overlapMm?: number;
  /** Default, and the least: 10 mm. */
  readonly marginMm?: number;
  /** Default: the grain side. */
  readonly side?: SeenFrom;
  /** For thicknesses; lengths on templates are true. Default: mm. */
  readonly units?: LengthUnit;
  readonly stitchHoles?: readonly HolePlaces[];
}

/** Pages at full scale, and what came of dividing. */
export interface TemplatePages {
  readonly pages: readonly Drawing[];
  /** The pages' names, in order. */
  readonly names: readonly string[];
  /** So many pieces or rough cuts lie on no page as a whole. */
  readonly cutApart: number;
}

/**
 * One hide's whole layout at full scale, divided among pages. Throws the package leather's refusals of a paper
 * (`planTiles`), and `empty-hide`.
 */
export function drawHideTemplate(
  options: TemplateOptions & { readonly hide: Hide; readonly workshop?: Workshop },
): TemplatePages {
  const { layout, hide, workshop } = options;
  const scene = hideScene({
    ...sceneOptions(options),
    hide,
    ...(workshop === undefined ? {} : { workshop }),
  });
  const mark = layoutMark(layout);
  const job = { ...options, subject: `${orderWords(layout)}; hide ${hide.id}`, mark };
  return numbered(job, tiled(job, [scene]));
}

/** Templates of single pieces: several a page where they fit, tiled where they are larger than the sheet. */
export function drawPieceTemplates(
  options: TemplateOptions & { readonly pieces: readonly LayablePiece[] },
): TemplatePages {
  const job = { ...options, subject: `${orderWords(options.layout)}; single pieces`, mark: '' };
  return cardTemplates(job, pieceCards(sceneOptions(options), options.pieces), 'the layout has no pieces');
}

/** Templates of the rough cuts, which are cut first and prepared whole. */
export function drawRoughCutTemplates(
  options: TemplateOptions & { readonly hides: readonly Hide[] },
): TemplatePages {
  const mark = layoutMark(options.layout);
  const job = { ...options, subject: `${orderWords(options.layout)}; rough cuts`, mark };
  const cards = roughCutCards(sceneOptions(options), options.hides);
  return cardTemplates(job, cards, 'the layout has no rough cuts');
}

function sceneOptions(options: TemplateOptions): CardOptions {
  return {
    layout: options.layout,
    side: options.side ?? 'grain',
    units: options.units ?? 'mm',
    stitchHoles: options.stitchHoles ?? [],
  };
}

function orderWords({ order }: Layout): string {
  return `${order.name}, version ${order.version}, ${order.date}`;
}

/** What all pages of a file have in common. */
interface TemplateJob extends TemplateOptions {
  readonly subject: string;
  /** The layout mark, where it matters how pieces lie. */
  readonly mark: string;
}

/** A page before it is known how many there are. */
interface DraftPage {
  readonly name: string;
  readonly plan: Pick<TilePlan, 'frame'>;
  readonly neighbours: TilePlan['pages'][number]['neighbours'];
  readonly isBridge: boolean;
  readonly layers: readonly Layer[];
  readonly lines: readonly SceneLine[];
  /** Whole pieces, so that no map is needed. */
  readonly isCard: boolean;
}

interface Drafts {
  readonly pages: readonly DraftPage[];
  readonly cutApart: number;
}

function settingsOf(options: TemplateOptions): PageSettings {
  return {
    paper: options.paper,
    overlapMm: options.overlapMm ?? USUAL_OVERLAP_MM,
    marginMm: options.marginMm ?? LEAST_MARGIN_MM,
  };
}

function cardTemplates(job: TemplateJob, cards: readonly TemplateCard[], whyNone: string): TemplatePages {
  const settings = settingsOf(job);
  refuseUnprintable(settings);
  if (cards.length === 0)
    throw new RenderError('nothing-to-draw', `There is no template to draw: ${whyNone}.`);
  const { pages, tooLarge } = cardPages(job.fonts, settings, cards);
  const large = tiled(job, largeCardScenes(settings, tooLarge));
  const drafts = pages.map(({ frame, elements, lines }, i) => ({
    name: String(i + 1),
    plan: { frame },
    neighbours: {},
    isBridge: false,
    layers: [{ name: 'pieces', elements }],
    lines,
    isCard: true,
  }));
  return numbered(job, { pages: [...drafts, ...large.pages], cutApart: large.cutApart });
}

/** Pages of scenes that are divided, their joins numbered on from scene to scene. */
function tiled(job: TemplateJob, scenes: readonly TemplateScene[]): Drafts {
  const pages: DraftPage[] = [];
  let cutApart = 0;
  let firstJoin = 1;
  scenes.forEach((scene, i) => {
    const plan = planTiles({
      ...settingsOf(job),
      content: contentOfScene(scene),
      firstJoin,
      seed: rowSeed(job),
      namePrefix: scenes.length === 1 ? '' : `${i + 1}/`,
    });
    firstJoin += plan.joins.length;
    cutApart += plan.shapesCutApart;
    pages.push(...draftPages(job, scene, plan));
  });
  return { pages, cutApart };
}

/** Pages of an older layout, or of the other side, are to show at their joins that they don't belong. */
function rowSeed({ mark, side }: TemplateJob): number {
  return 2 * Number.parseInt(mark === '' ? '0' : mark, 16) + (side === 'flesh' ? 1 : 0);
}

function draftPages({ fonts }: TemplateJob, scene: TemplateScene, plan: TilePlan): DraftPage[] {
  const parts = partsOfPages(plan, scene);
  const outlines = scene.edges.length > 0 ? scene.edges : scene.shapes.map(({ region }) => region.outer);
  return plan.pages.map((page) => {
    const { layers, lines } = tilePageLayers({ fonts, plan, page, scene, parts });
    const map = plan.pages.length === 1 ? [] : pageMap(plan, page, outlines, mapBox(plan.frame));
    return {
      name: page.name,
      plan,
      neighbours: page.neighbours,
      isBridge: page.isBridge,
      layers: [...layers, { name: 'map', elements: map }],
      lines,
      isCard: false,
    };
  });
}

/** The pages with all that they say of themselves. */
function numbered(job: TemplateJob, drafts: Drafts): TemplatePages {
  const { fonts, paper, subject } = job;
  const side = job.side ?? 'grain';
  const pages = drafts.pages.map((draft, i): Drawing => {
    const { frame } = draft.plan;
    const counted = `page ${i + 1} of ${drafts.pages.length}`;
    const words = {
      ...draft,
      counted,
      mark: job.mark === '' ? undefined : `layout ${job.mark}`,
      subject,
      side,
      lines: kindsOf(draft.lines),
    };
    return {
      widthMm: frame.widthMm,
      heightMm: frame.heightMm,
      title: `${subject}, template ${draft.name}, ${counted}, seen from the ${side} side`,
      layers: [
        ...draft.layers,
        { name: 'bands', elements: pageFurniture(fonts, frame, paper, words, !draft.isCard) },
      ],
    };
  });
  return { pages, names: drafts.pages.map(({ name }) => name), cutApart: drafts.cutApart };
}

/** In the order of the table of lines; the hatching of a flaw is named once with it. */
function kindsOf(lines: readonly SceneLine[]): TemplateLine[] {
  const used = new Set(lines.map(({ kind }) => kind));
  return TEMPLATE_LINES.filter((kind) => used.has(kind));
}
