import {
  BAR_MM,
  MARKERS_PER_SHEET,
  MARKER_FIELDS,
  MARKER_MM,
  markerCorners,
  markerFields,
  markerId,
} from '@hidebound/leather';

/** A printed sheet seen straight: grey, 0 ink to 255 paper; its middle is the middle of the drawing. */
export interface SheetPicture {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
  readonly pxPerMm: number;
}

/** The edges of fields, multiples of 9 mm from 90 and 125 mm, fall on whole pixels. */
const PX_PER_MM = 4;
const A4_MM = { width: 210, height: 297 } as const;
const BAR_WIDE_MM = 0.5;
const END_TICK_MM = 6;

/** A sheet drawn from the sheet plan alone: its four markers and the two bars with their ends. */
export function drawSheet(sheet: number): SheetPicture {
  const width = A4_MM.width * PX_PER_MM;
  const height = A4_MM.height * PX_PER_MM;
  const grey = new Uint8Array(width * height).fill(255);
  const ink = (minX: number, minY: number, wide: number, high: number) => {
    const x0 = Math.round((minX + A4_MM.width / 2) * PX_PER_MM);
    const y0 = Math.round((minY + A4_MM.height / 2) * PX_PER_MM);
    for (let y = y0; y < y0 + high * PX_PER_MM; y++)
      grey.fill(0, y * width + x0, y * width + x0 + wide * PX_PER_MM);
  };
  const field = MARKER_MM / MARKER_FIELDS;
  for (let place = 0; place < MARKERS_PER_SHEET; place++) {
    const [corner] = markerCorners(place);
    markerFields(markerId({ sheet, place })).forEach((row, j) =>
      row.forEach((isWhite, i) => {
        if (!isWhite) ink(corner.x + i * field, corner.y + j * field, field, field);
      }),
    );
  }
  ink(-BAR_MM.across / 2, -BAR_WIDE_MM / 2, BAR_MM.across, BAR_WIDE_MM);
  ink(-BAR_WIDE_MM / 2, -BAR_MM.down / 2, BAR_WIDE_MM, BAR_MM.down);
  for (const end of [-1, 1]) {
    ink((end * BAR_MM.across) / 2 - BAR_WIDE_MM / 2, -END_TICK_MM / 2, BAR_WIDE_MM, END_TICK_MM);
    ink(-END_TICK_MM / 2, (end * BAR_MM.down) / 2 - BAR_WIDE_MM / 2, END_TICK_MM, BAR_WIDE_MM);
  }
  return { width, height, grey, pxPerMm: PX_PER_MM };
}
