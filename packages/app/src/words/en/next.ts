/** What comes next, and the way there, in English. */
export const NEXT_EN = {
  'next.hide': 'Next: the hide that they are cut from.',
  'next.go.hide': 'Go to the hide',
  'next.pieces': 'Next: what is made of it.',
  'next.go.pieces': 'Go to the pieces',
  'next.lay': 'Next: lay the pieces on the hide.',
  'next.go.lay': 'Go and lay them',
  'next.make': 'Next: print what you need, then cut.',
  'next.go.make': 'Go to Make',
  'next.bench': 'Next: cut, one piece after another.',
  'next.go.bench': 'Go to the bench',
} as const;
