import type { LineRole } from '@hidebound/leather';
import type { DrawnLine } from '../drawing/drawn-line.js';

/** A line with the role that rules or names give it; without one, its shape and place will decide. */
export interface RoleLine extends DrawnLine {
  readonly role?: LineRole;
}
