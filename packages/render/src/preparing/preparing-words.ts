import { civilTimeAfter, figureOf, formatCivilTime, formatClock } from '@hidebound/leather';
import type { CivilTime, Hazard, PreparationJob, WorkStep, Workshop } from '@hidebound/leather';

type Span = WorkStep['waitH'];

/** What the times of a plan are told by: a day on the calendar, the clock of numbered days, or only hours from the start. */
export interface TimeWords {
  readonly start?: CivilTime;
  readonly hasHours: boolean;
}

const DAY_MIN = 24 * 60;

/** A moment of the plan: "Mon 2026-03-02 8:30", "day 2, 8:30", "+ 26 h 30 min". */
export function momentWords(minutes: number, { start, hasHours }: TimeWords): string {
  if (start !== undefined) return formatCivilTime(civilTimeAfter(start, minutes));
  if (!hasHours) return `+ ${durationWords(minutes)}`;
  const day = Math.floor(minutes / DAY_MIN);
  return `day ${day + 1}, ${formatClock(minutes - day * DAY_MIN)}`;
}

/** "45 min", "2 h", "26 h 30 min". */
export function durationWords(minutes: number): string {
  const whole = Math.round(minutes);
  const [h, min] = [Math.floor(whole / 60), whole % 60];
  if (h === 0) return `${min} min`;
  return min === 0 ? `${h} h` : `${h} h ${min} min`;
}

/** "2 to 4 h", "15 to 30 min", "24 h"; nothing where there is nothing to wait for. */
export function waitWords({ min, max }: Span): string {
  if (max === 0) return '';
  if (min === max) return durationWords(max * 60);
  const inMinutes = max < 2;
  const figure = (hours: number): string => String(Math.round(hours * (inMinutes ? 60 : 1) * 10) / 10);
  return `${figure(min)} to ${figure(max)} ${inMinutes ? 'min' : 'h'}`;
}

/** Millilitres as they are measured out: to 1 mL below 100, to 5 above. */
export function mlWords({ min, max }: Span): string {
  const [least, most] = [min, max].map(mlFigure);
  return least === most ? `${least} mL` : `${least} to ${most} mL`;
}

function mlFigure(ml: number): string {
  const step = ml < 100 ? 1 : 5;
  return String(Math.max(1, Math.round(ml / step) * step));
}

export function coatWords({ min, max }: Span): string {
  return min === max ? String(max) : `${min} to ${max}`;
}

/** What is done, as one says it to somebody at the bench. */
export function stepWords(step: WorkStep, { preparation, worked, blocks }: PreparationJob): string {
  const product = step.product ?? '';
  const sides = preparation.bothSides ? ' on both sides' : '';
  switch (step.kind) {
    case 'look over':
      return 'Look the leather over: flaws, soft places, an old finish.';
    case 'test':
      return 'Try the whole recipe on a test piece of the same leather, and judge it dry.';
    case 'rough cut':
      return `Cut out ${blocks.length === 1 ? 'the rough cut' : `the ${blocks.length} rough cuts`}, outside the line.`;
    case 'take out':
      return 'Cut out what lies on this leather of other leathers.';
    case 'wipe':
      return `Wipe it evenly damp${sides}; wait until its colour is even again.`;
    case 'condition':
      return `Feed it thinly with ${product}${sides}; let it rest.`;
    case 'case':
      return 'Case it: wet it evenly, cover it, wait until its colour begins to come back.';
    case 'work':
      return `${worked === 'tooled' ? 'Tool' : worked === 'moulded' ? 'Mould' : 'Tool and mould'} it, then let it dry through, in the room.`;
    case 'dye':
      return `${product}, coat ${step.coat} of ${step.of}: thin, ${directionWords(step.coat ?? 1)}${sides}.`;
    case 'rub off':
      return 'Rub off loose dye until a clean cloth stays clean.';
    case 'condition again':
      return `Feed it lightly with ${product}${sides}; let it rest.`;
    case 'resist':
      return `Paint ${product} over what is to keep its colour.`;
    case 'finish':
      return `${product}${step.of === 1 ? '' : `, coat ${step.coat} of ${step.of}`}: thin and even${sides}.`;
    case 'buff':
      return 'Buff it; leave it until the finish is through.';
    case 'cut':
      return 'Cut the pieces out, to the line.';
    case 'trim':
      return 'Trim the pieces to the line.';
    case 'edges':
      return 'Bevel and burnish the edges.';
  }
}

/** Streaks of one coat are crossed by the next. */
function directionWords(coat: number): string {
  return coat % 2 === 1 ? 'all strokes along the leather' : 'all strokes across the leather';
}

/** The same in a word or two, for tables and charts. */
export function stepName({ kind, coat, of, product }: WorkStep, { worked }: PreparationJob): string {
  const numbered = (what: string): string => (of === undefined || of === 1 ? what : `${what}, coat ${coat}`);
  switch (kind) {
    case 'condition':
    case 'condition again':
      return kind === 'condition' ? 'feed' : 'feed lightly';
    case 'work':
      return worked === 'tooled' ? 'tool, dry' : worked === 'moulded' ? 'mould, dry' : 'tool, mould, dry';
    case 'test':
      return 'test piece';
    case 'dye':
      return numbered('dye');
    case 'finish':
      return numbered('finish');
    case 'resist':
      return product ?? kind;
    case 'cut':
      return 'cut to the line';
    case 'trim':
      return 'trim to the line';
    default:
      return kind;
  }
}

const SHEET = 'The product’s safety data sheet and your local rules come first.';
const RULES = 'Your local rules come first.';

/** What to mind, as it stands on the card. */
export function hazardWords(hazard: Hazard, workshop: Pick<Workshop, 'figures'>): string {
  switch (hazard) {
    case 'flammable':
      return `Solvent in dye, thinner, lacquer and wax burns: no flame, spark or heater near, a small open quantity, the can closed. ${SHEET}`;
    case 'vapour':
      return `Air the room well, and never spray without extraction and a mask made for vapour. ${SHEET}`;
    case 'skin':
      return `Wear nitrile gloves; dye goes through skin. ${SHEET}`;
    case 'oily rags':
      return `Rags with oil, wax or dye can take fire by themselves: hang them out singly in the open, or put them under water in a lidded metal can, and never in a heap. ${SHEET}`;
    case 'warm water': {
      const { max } = figureOf(workshop, 'water, at most').value;
      return `Water for leather stays below ${max} °C: hot, it shrinks wet leather for good. ${RULES}`;
    }
    case 'drying':
      return `Dry at room temperature, away from heater and sun: leather gets hard, and solvent vapour may catch fire. ${SHEET}`;
    case 'blades':
      return `Knives: cut away from yourself, with a cut-resistant glove on the hand that holds. ${RULES}`;
    case 'dust':
      return `Dust of any leather, of whatever tannage: sand with extraction and a dust mask, and do not burn offcuts. ${RULES}`;
    case 'steel in leather':
      return `Tannage and damp rust steel: store no blade and no gun in leather. ${RULES}`;
  }
}
