import type { TannageRule } from '../model/workshop-rules.js';

const PRACTICE = 'common practice, no source';
const MEMORY = 'from memory';

/**
 * What leather of each tannage can do. What is not named, it can. "With care" is done, but a master would say
 * something first; the words for it are those of the finding.
 */
export const DEFAULT_TANNAGES: readonly TannageRule[] = [
  {
    tannage: 'vegetable',
    alsoCalled: ['veg', 'veg tan', 'vegetable tanned', 'bark', 'bark tan', 'oak bark', 'bridle'],
    // It is acid too: no blade and no gun is stored in it.
    meets: { 'lying against steel': 'with care' },
    source: `${PRACTICE}; linings for guns and blades: guild workshop notes`,
  },
  {
    tannage: 'chrome',
    alsoCalled: ['chrome tan', 'chrome tanned', 'wet blue'],
    meets: {
      tooling: 'no',
      moulding: 'no',
      'burnished edges': 'no',
      'standing up': 'with care',
      'keeping its length': 'with care',
      'lying against steel': 'no',
      'lying on skin': 'with care',
    },
    source: `rust on blued steel: guild workshop notes; limit of chromium(VI) on skin: REACH Annex XVII entry 47; all else: ${PRACTICE}`,
  },
  {
    tannage: 'oil',
    alsoCalled: ['pull-up', 'oil tan', 'oil tanned', 'oiled', 'waxy pull-up'],
    meets: {
      tooling: 'no',
      moulding: 'no',
      'burnished edges': 'with care',
      'standing up': 'with care',
      'keeping its length': 'with care',
      'lying against steel': 'with care',
    },
    source: PRACTICE,
  },
  {
    tannage: 'combination',
    alsoCalled: ['retan', 'chrome retan', 'semi-chrome', 'latigo', 'combination tanned'],
    meets: {
      tooling: 'no',
      moulding: 'with care',
      'burnished edges': 'with care',
      'lying against steel': 'no',
      'lying on skin': 'with care',
    },
    source: `${MEMORY} (tanned with chrome first, so beside steel and skin it counts as chrome)`,
  },
  {
    tannage: 'alum',
    alsoCalled: ['alum tawed', 'tawed', 'white leather'],
    // The alum washes out: wet, it goes hard as rawhide.
    meets: {
      tooling: 'no',
      moulding: 'no',
      'burnished edges': 'no',
      'standing up': 'no',
      'lying against steel': 'no',
    },
    source: MEMORY,
  },
  {
    tannage: 'brain',
    alsoCalled: ['smoke', 'smoked', 'brain tan', 'buckskin', 'chamois'],
    meets: {
      tooling: 'no',
      moulding: 'no',
      'burnished edges': 'no',
      'standing up': 'no',
      'keeping its length': 'no',
    },
    source: MEMORY,
  },
  {
    tannage: 'aldehyde',
    alsoCalled: ['wet white', 'chrome free'],
    meets: {
      tooling: 'no',
      moulding: 'no',
      'burnished edges': 'no',
      'standing up': 'with care',
      'keeping its length': 'with care',
    },
    source: MEMORY,
  },
  {
    tannage: 'rawhide',
    alsoCalled: ['raw hide', 'parchment', 'untanned'],
    meets: { tooling: 'no', 'burnished edges': 'no', 'turned edges': 'no', 'lying on skin': 'with care' },
    source: MEMORY,
  },
  {
    tannage: 'bonded',
    alsoCalled: ['bonded leather', 'reconstituted', 'leather fibre board', 'fibre board'],
    meets: {
      tooling: 'no',
      moulding: 'no',
      'burnished edges': 'no',
      'turned edges': 'no',
      'keeping its length': 'no',
    },
    source: `${MEMORY}; EN 15987 does not let it be called leather (${MEMORY})`,
  },
];
