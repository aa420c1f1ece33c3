import type { StockRemark } from '../stock/try-piece.js';

/** "the colour is black, not natural". */
export function stockRemarkText(remark: StockRemark): string {
  switch (remark.kind) {
    case 'colour':
    case 'tannage':
      return `the ${remark.kind} is ${remark.is}, not ${remark.wanted}`;
    case 'thickness not known':
      return 'the thickness is not known';
    case 'reserved':
      return 'it is reserved';
  }
}
