// The pages that are judged.
import { suit } from './pages/suit.mjs';

export const PAGES = [suit];
