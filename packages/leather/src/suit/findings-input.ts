import type { Order, ResolvedOrder } from '../model/order.js';
import type { Workshop } from '../model/workshop.js';
import type { NamedHide } from '../order/sheets.js';
import type { Suit } from './suit-model.js';

export interface FindingsInput {
  readonly written: Order;
  readonly order: ResolvedOrder;
  readonly hides: readonly NamedHide[];
  readonly workshop: Workshop;
}

export type Suited = Pick<Suit, 'hides' | 'pieces'>;
