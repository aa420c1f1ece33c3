/**
 * A seeded source of numbers: xoshiro128** (Blackman & Vigna 2018), seeded by splitmix32. Whole-number
 * arithmetic on 32 bits only, so every engine draws the same numbers.
 */
export interface Random {
  /** A multiple of 2^-53 in [0, 1). */
  next(): number;
  /** A whole number in [0, n), for n from 1 to 2^31. */
  integer(n: number): number;
  /** A number in [a, b). */
  between(a: number, b: number): number;
  /** Mean 0, deviation 1: the sum of twelve uniform numbers less 6, so nothing lies beyond 6. */
  normal(): number;
  /** A generator of its own, told by this one's seed and the label alone, however much either has drawn. */
  fork(label: number): Random;
}

/** The seed counts modulo 2^32; a fraction is cut off. */
export function createRandom(seed: number): Random {
  const state = stateFromSeed(seed >>> 0);
  const next = (): number => {
    const high = nextWord(state) >>> 5;
    const low = nextWord(state) >>> 6;
    return (high * 67_108_864 + low) / 9_007_199_254_740_992;
  };
  return {
    next,
    integer: (n) => Math.floor(next() * n),
    between: (a, b) => a + (b - a) * next(),
    normal: () => {
      let sum = -6;
      for (let i = 0; i < 12; i++) sum += next();
      return sum;
    },
    fork: (label) => createRandom(mix(mix(seed >>> 0) ^ Math.imul((label >>> 0) + 1, 0x9e3779b1))),
  };
}

function stateFromSeed(seed: number): Uint32Array {
  const state = new Uint32Array(4);
  for (let i = 0; i < 4; i++) state[i] = mix(seed + Math.imul(i + 1, 0x9e3779b9));
  // All zero is the one state from which the generator never leaves.
  if (state[0] === 0 && state[1] === 0 && state[2] === 0 && state[3] === 0) state[0] = 1;
  return state;
}

/** The finishing step of splitmix32 (constants of the "lowbias32" search, Wellons 2018). */
function mix(n: number): number {
  let z = n >>> 0;
  z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
  z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
  return (z ^ (z >>> 15)) >>> 0;
}

/** One step of xoshiro128** on its four words of state: a whole number of 32 bits. */
export function nextWord(s: Uint32Array): number {
  const s1 = s[1]!;
  const product = Math.imul(s1, 5);
  const result = Math.imul((product << 7) | (product >>> 25), 9) >>> 0;
  s[2] = s[2]! ^ s[0]!;
  s[3] = s[3]! ^ s1;
  s[1] = s1 ^ s[2];
  s[0] = s[0]! ^ s[3];
  s[2] = s[2] ^ (s1 << 9);
  s[3] = (s[3] << 11) | (s[3] >>> 21);
  return result;
}
