export { checkField, listField, oneOf, pressRow } from './choices.js';
export type { Choice } from './choices.js';
export { countField } from './count-field.js';
export {
  lengthField,
  optionalAreaField,
  optionalLengthField,
  optionalWholeField,
  wholeField,
} from './measure-fields.js';
export { readField, textField } from './text-field.js';
export { readThickness, thicknessField, thicknessSpan } from './thickness.js';
export { askFor, typedInputs } from './typed-inputs.js';
export type { Reading } from './typing.js';
