import type { Hide } from '../model/hide.js';
import { writeHide } from '../files/hide-file.js';
import { sha256Hex } from './sha256.js';

/** SHA-256 of the hide's file as `writeHide` gives it, as hexadecimal digits: any change of the hide changes it. */
export function hashHide(hide: Hide): string {
  return sha256Hex(writeHide(hide));
}
