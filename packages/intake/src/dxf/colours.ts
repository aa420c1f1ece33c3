/**
 * The 255 numbered colours of the format, `#rrggbb`. From memory, checked against another reader's table but for the greys from 250, of which no two programs agree: 1 to 6 are
 * the pure colours, 7 is the colour of ink, 8 and 9 and 250 to 255 are greys, and 10 to 249 are 24 hues of 15°, each
 * in five steps of brightness (the tens say the hue, even units are full colours, odd ones half as strong).
 */
export function numberedColour(number: number): string {
  return FIXED[number] ?? hueColour(number);
}

/** Number of the colour of ink: black on paper, white on a dark screen. */
export const INK = 7;

const FIXED: Readonly<Record<number, string>> = {
  1: '#ff0000',
  2: '#ffff00',
  3: '#00ff00',
  4: '#00ffff',
  5: '#0000ff',
  6: '#ff00ff',
  7: '#000000',
  8: '#808080',
  9: '#c0c0c0',
  250: '#333333',
  251: '#505050',
  252: '#696969',
  253: '#828282',
  254: '#bebebe',
  255: '#ffffff',
};

/** Brightest channel of each of the five steps. */
const BRIGHTNESS = [255, 165, 127, 76, 38] as const;
const HUE_STEP = 15;

function hueColour(number: number): string {
  if (!(number >= 10 && number < 250)) return FIXED[INK]!;
  const hue = (Math.floor(number / 10) - 1) * HUE_STEP;
  const units = number % 10;
  const most = BRIGHTNESS[Math.floor(units / 2)]!;
  const least = units % 2 === 0 ? 0 : most / 2;
  const channel = (shift: number) => {
    const away = Math.abs(((hue + shift) % 360) - 180);
    const share = Math.min(Math.max((away - 60) / 60, 0), 1);
    return hex(least + (most - least) * share);
  };
  return `#${channel(0)}${channel(240)}${channel(120)}`;
}

/** 0xrrggbb as group code 420 has it. */
export function trueColour(value: number): string {
  return `#${(value & 0xffffff).toString(16).padStart(6, '0')}`;
}

function hex(value: number): string {
  return Math.floor(value).toString(16).padStart(2, '0');
}
