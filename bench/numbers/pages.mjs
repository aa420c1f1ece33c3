// The pages that are judged.
import { buy } from './pages/buy.mjs';
import { cost, costOfOrder } from './pages/cost.mjs';
import { offcuts } from './pages/offcuts.mjs';
import { prepare } from './pages/prepare.mjs';
import { suit } from './pages/suit.mjs';

export const PAGES = [suit, buy, prepare, cost, costOfOrder, offcuts];
