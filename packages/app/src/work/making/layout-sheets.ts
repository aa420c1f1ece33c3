import {
  holePlaces,
  paperNamed,
  planStitches,
  refuseUnprintable,
  rollOf,
  setsOfLayout,
  usedHides,
  writePieceListCsv,
} from '@hidebound/leather';
import type { PageSettings } from '@hidebound/leather';
import {
  PAGE_SIZES,
  drawCuttingSheets,
  drawHideTemplate,
  drawPieceTemplates,
  drawRoughCutTemplates,
  drawSettingOut,
  makeCutFile,
  pieceListReport,
  writeCutSvg,
  writeDxf,
} from '@hidebound/render';
import type { FontBook, MadeCutFile, TemplateOptions, TemplatePages } from '@hidebound/render';
import { cutOptionsOf, pieceKey } from '../make-tasks.js';
import type { MadeFile, MakeChoices, MakeWish, TemplateChoice } from '../make-tasks.js';
import { cutPreview } from './cut-preview.js';
import { drawnReports } from './drawn.js';
import type { Drawn } from './drawn.js';
import { hidePictures } from './hide-pictures.js';
import { layoutJob } from './layout-job.js';
import type { LayoutJob } from './layout-job.js';
import { toldInOrder } from './sentences.js';

/** The layout on a page for each hide, with its figures. */
export async function cuttingSheet({ job, choices }: MakeWish, fonts: FontBook): Promise<Drawn> {
  const own = layoutJob(job);
  const { page, side } = choices;
  const shown = choices.photo
    ? await hidePictures(own, job.files, PAGE_SIZES[page])
    : { pictures: new Map(), lostPhotos: [] };
  return {
    title: `Cutting sheet: ${own.layout.order.name}`,
    pages: drawCuttingSheets({
      layout: own.layout,
      hides: own.hides,
      fonts,
      side,
      ...own.workshop,
      pictures: shown.pictures,
      page,
    }),
    findings: toldInOrder(own.changed),
    lostPhotos: shown.lostPhotos,
  };
}

/** Where each piece goes, measured from one chalk line. */
export function settingOutSheet({ job, choices: { page, side } }: MakeWish, fonts: FontBook): Drawn {
  const { layout, hides, workshop, changed } = layoutJob(job);
  return {
    title: `Setting out: ${layout.order.name}`,
    pages: drawSettingOut({ layout, hides, page, side, fonts, ...workshop }),
    findings: toldInOrder(changed),
  };
}

/** Pieces, a whole hide or its blocks at full scale. */
export function templateSheets({ job, choices }: MakeWish, fonts: FontBook): Drawn {
  const own = layoutJob(job);
  const { layout } = own;
  const settings = pageSettings(choices.template);
  const options: TemplateOptions = {
    layout,
    ...settings,
    fonts,
    side: choices.side,
    stitchHoles: holePlaces(planStitches({ ...layout, setsOf: setsOfLayout(layout) })),
  };
  const made = drawTemplates(options, own, choices.template);
  return {
    title: `Templates: ${layout.order.name}`,
    pages: made.pages,
    findings: toldInOrder(own.changed),
    cutApart: made.cutApart,
  };
}

function pageSettings({ paper, rollMm, overlapMm, marginMm }: TemplateChoice): PageSettings {
  const settings = { paper: paper === 'roll' ? rollOf(rollMm) : paperNamed(paper), overlapMm, marginMm };
  refuseUnprintable(settings);
  return settings;
}

function drawTemplates(
  options: TemplateOptions,
  { layout, hides, workshop }: LayoutJob,
  { kind, hide, pieces }: TemplateChoice,
): TemplatePages {
  switch (kind) {
    case 'pieces': {
      const wanted = layout.pieces.filter((piece) => pieces?.includes(pieceKey(piece)) ?? true);
      return drawPieceTemplates({ ...options, pieces: wanted.length === 0 ? layout.pieces : wanted });
    }
    case 'rough cuts':
      return drawRoughCutTemplates({ ...options, hides });
    case 'hide':
      return drawHideTemplate({
        ...options,
        hide: hides.find(({ id }) => id === hide) ?? hides[0]!,
        ...workshop,
      });
  }
}

/** Every copy of every piece, to tick off and for a spreadsheet. */
export function pieceListSheet({ job, choices: { page } }: MakeWish, fonts: FontBook): Drawn {
  const { layout } = layoutJob(job);
  const csv = (): MadeFile[] => [
    {
      name: `${fileStem(layout.order.name)}-pieces.csv`,
      type: 'text/csv;charset=utf-8',
      bytes: new TextEncoder().encode(writePieceListCsv(layout)),
    },
  ];
  return { ...drawnReports([pieceListReport(layout)], [], { page, fonts }), files: csv };
}

/** A file for a cutting machine for each hide; its pages show what the machine gets. */
export function cutFiles({ job, choices }: MakeWish, fonts: FontBook): Drawn {
  const { layout, hides, changed } = layoutJob(job);
  const options = cutOptionsOf(choices, layout.order.cutting.kerfMm);
  const made = usedHides(layout, hides).map((hide) =>
    makeCutFile(layout, hide, options, options.labels ? fonts : undefined),
  );
  return {
    title: `Cut files: ${layout.order.name}`,
    pages: made.map(({ drawing }) => cutPreview(drawing)),
    findings: [...toldInOrder([...changed, ...made.flatMap((one) => one.diagnostics)])],
    files: () => made.map((one) => machineFile(one, choices)),
  };
}

function machineFile({ file, drawing }: MadeCutFile, { cut }: MakeChoices): MadeFile {
  const content = cut.format === 'svg' ? writeCutSvg(drawing) : writeDxf(drawing, cut.version);
  return {
    name: `${fileStem(file.hide)}.${cut.format}`,
    type: cut.format === 'svg' ? 'image/svg+xml' : 'image/vnd.dxf',
    bytes: new TextEncoder().encode(content),
  };
}

/** A name as a part of a file name. */
export function fileStem(name: string): string {
  return name.replace(/[^\p{L}\p{N}._-]+/gu, '-');
}
