import type { FontBook } from '@hidebound/render';
import type { MakeWish, SheetName } from '../make-tasks.js';
import type { Drawn } from './drawn.js';
import { cutFiles, cuttingSheet, pieceListSheet, settingOutSheet, templateSheets } from './layout-sheets.js';
import {
  buyingSheet,
  costPages,
  preparingSheets,
  quotePages,
  referenceSheets,
  suitSheet,
} from './order-sheets.js';

type DrawSheet = (wish: MakeWish, fonts: FontBook) => Drawn | Promise<Drawn>;

/** How each sheet is drawn. */
export const SHEET_DRAWERS: Readonly<Record<SheetName, DrawSheet>> = {
  suit: suitSheet,
  buying: buyingSheet,
  reference: referenceSheets,
  preparing: preparingSheets,
  templates: templateSheets,
  list: pieceListSheet,
  cutting: cuttingSheet,
  settingOut: settingOutSheet,
  cutFiles,
  cost: costPages,
  quote: quotePages,
};
