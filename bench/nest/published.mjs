// Published densities, in per cent of strip width times length, and exact densities of double lattices.

/**
 * `average` and `best`: Gardeyn, Vanden Berghe & Wauters 2025, "An open-source heuristic to reboot 2D nesting
 * research", arXiv 2509.13329, Tables 2 and 3 (100 runs of 20 minutes). `earlierAverage`: the best average among
 * Sato et al. 2019 (EJOR 279:657-671), Elkeran 2013 (EJOR 231:757-769), Wang et al. 2017 (IJPR 55:3025-3045) and
 * Leung et al. 2012 (C&OR 39:678-686), as quoted there.
 */
export const PUBLISHED = {
  albano: { average: 89.47, best: 89.82, earlierAverage: 88.01 },
  dagli: { average: 89.26, best: 90.17, earlierAverage: 87.5 },
  fu: { average: 92.24, best: 92.41, earlierAverage: 91.95 },
  jakobs1: { average: 89.09, best: 89.26, earlierAverage: 89.09 },
  jakobs2: { average: 84.77, best: 87.73, earlierAverage: 83.56 },
  mao: { average: 86.14, best: 86.87, earlierAverage: 83.76 },
  marques: { average: 90.93, best: 92.02, earlierAverage: 89.97 },
  shapes0: { average: 68.6, best: 69.98, earlierAverage: 68.73 },
  shapes1: { average: 75.69, best: 76.73, earlierAverage: 75.86 },
  shapes2: { average: 84.68, best: 86.23, earlierAverage: 83.02 },
  shirts: { average: 89.66, best: 90.92, earlierAverage: 88.21 },
  swim: { average: 78.26, best: 79.83, earlierAverage: 74.66 },
  trousers: { average: 91.73, best: 92.62, earlierAverage: 90.48 },
  // Gomes & Oliveira 2006 (EJOR 171:811-829): the layouts in the data sets, which are optimal.
  dighe1: { best: 100 },
  dighe2: { best: 100 },
};

/**
 * Regular polygons. Pentagon: Hales & Kusner, arXiv 1602.07220 (optimal). Heptagon: Kallus, "Pessimal packing
 * shapes", arXiv 1305.0289. Octagon: centrally symmetric, so the lattice (4 + 4√2)/(5 + 4√2) is the densest.
 */
export const LATTICE_DENSITY = {
  5: (5 - Math.sqrt(5)) / 3,
  6: 1,
  7: (2 / 97) * (-111 + 492 * Math.cos(Math.PI / 7) - 356 * Math.cos(Math.PI / 7) ** 2),
  8: (4 + 4 * Math.SQRT2) / (5 + 4 * Math.SQRT2),
};
