/** What fields say, wherever they stand. */
export const FIELD_EN = {
  'field.empty': 'Something has to stand here.',
  'field.noLength': '“{text}” is no length. Write a number, with mm or in if you like.',
  'field.noArea': '“{text}” is no area. Write a number, with dm² or ft² if you like.',
  'field.noThickness': '“{text}” is no thickness. Write for instance 2.4 mm or 5-6 oz.',
  'field.noWhole': '“{text}” is no whole number.',
  'field.aboveNothing': 'It has to be more than 0.',
  'field.tooLittle': 'It has to be at least {least}.',
  'field.tooMuch': 'It can be {most} at most.',
  'field.thickness': 'Thickness',
  'field.thicknessFrom': 'Thickness from',
  'field.thicknessTo': 'Thickness to',
  'field.thicknessTurned': 'The thinnest place comes first, the thickest after it.',
  'field.less': '{what}: one less',
  'field.more': '{what}: one more',
} as const;
