/** Looks of a place or need of a piece: A is the best. */
export type Looks = 'A' | 'B' | 'C';
export type Strength = 'sound' | 'weak';

/** What a flaw or zone does to the places under it. Void: never to be used. */
export interface Effect {
  readonly looks: Looks;
  readonly strength: Strength;
  readonly isVoid: boolean;
}

/** The side of the skin: grain is the outside, flesh the inside. */
export type Side = 'grain' | 'flesh';

/** A span of thickness, in mm, min ≤ max. */
export interface ThicknessRange {
  readonly minMm: number;
  readonly maxMm: number;
}

/** An exact sum of money: a decimal string such as "12.50" and an ISO 4217 code. */
export interface Money {
  readonly amount: string;
  readonly currency: string;
}
