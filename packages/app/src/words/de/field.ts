import type { Translated } from '../translated.js';
import type { FIELD_EN } from '../en/field.js';

export const FIELD_DE: Translated<typeof FIELD_EN> = {
  'field.empty': 'Hier muss etwas stehen.',
  'field.noLength': '„{text}“ ist keine Länge. Schreibe eine Zahl, wenn du willst mit mm oder in.',
  'field.noArea': '„{text}“ ist keine Fläche. Schreibe eine Zahl, wenn du willst mit dm² oder ft².',
  'field.noThickness': '„{text}“ ist keine Stärke. Schreibe zum Beispiel 2,4 mm oder 5-6 oz.',
  'field.noWhole': '„{text}“ ist keine ganze Zahl.',
  'field.aboveNothing': 'Es muss mehr als 0 sein.',
  'field.tooLittle': 'Es muss mindestens {least} sein.',
  'field.tooMuch': 'Es können höchstens {most} sein.',
  'field.thickness': 'Stärke',
  'field.thicknessFrom': 'Stärke von',
  'field.thicknessTo': 'Stärke bis',
  'field.thicknessTurned': 'Erst kommt die dünnste Stelle, dann die dickste.',
  'field.less': '{what}: eins weniger',
  'field.more': '{what}: eins mehr',
};
