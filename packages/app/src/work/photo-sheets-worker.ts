import { paperNamed } from '@hidebound/leather';
import { drawReferenceSheet, writePdf } from '@hidebound/render';
import { fontBook } from './making/fonts.js';
import type { PhotoSheetsTasks } from './photo-sheets-tasks.js';
import { serveTasks } from './serve-tasks.js';

serveTasks<PhotoSheetsTasks>({
  draw: async ({ sheets, paper: name, title }) => {
    const fonts = await fontBook();
    const paper = paperNamed(name);
    const pages = sheets.map((sheet) => drawReferenceSheet({ sheet, paper, fonts }));
    return writePdf(pages, { fonts, title });
  },
});
