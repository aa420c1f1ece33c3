/** The three losses of leather, apart. */
export interface LossShares {
  /** Between the pieces: on top of their own area. 0.12 is 12 hundredths. */
  readonly between: number;
  /** At the hide's edge: on top of the area of the pieces with what lies between them. */
  readonly edge: number;
  /** Usable share of the hide as it is bought, 0 to 1: 1 less what flaws cost. */
  readonly usable: number;
}

/** What pieces take of leather, step by step, mm². */
export interface AreaToBuy {
  readonly netMm2: number;
  /** With what lies between them. */
  readonly interlockedMm2: number;
  /** With what is lost at the edge, too. */
  readonly soundMm2: number;
  /** With what flaws cost, too: the area to buy. */
  readonly buyMm2: number;
  /** Net over what is bought, 0 to 1. */
  readonly yieldShare: number;
}

/**
 * The area to buy for pieces of a net area: grown by the loss between pieces, by the loss at the edge, and divided by
 * the usable share. That is the way of the published allowances for footwear (parallelogram of interlocked pieces,
 * Russ and Small, Boston 1922: first waste, second waste, coefficient of the leather).
 */
export function areaToBuy(netMm2: number, { between, edge, usable }: LossShares): AreaToBuy {
  const interlockedMm2 = netMm2 * (1 + between);
  const soundMm2 = interlockedMm2 * (1 + edge);
  const buyMm2 = soundMm2 / usable;
  return { netMm2, interlockedMm2, soundMm2, buyMm2, yieldShare: buyMm2 > 0 ? netMm2 / buyMm2 : 0 };
}
