// Signs beside the cautions: the shapes of ISO 7010 (triangle for a warning, disc for what must be done), drawn for this page.
import type { Caution } from '../model/run-sheet.js';

const TRIANGLE =
  '<path d="M50 7Q53 7 55 10.5L95 79.5Q97 83 95.5 85.5Q94 88 90 88H10Q6 88 4.5 85.5Q3 83 5 79.5L45 10.5Q47 7 50 7Z" fill="#ffd23c" stroke="#111" stroke-width="5.5" stroke-linejoin="round"/>';

/** A fingertip over an edge that has cut it. */
const BLADE =
  '<path d="M24 77L73 56L80 62L80 77Z" fill="#111"/><path d="M24 77H80" stroke="#111" stroke-width="2.5"/><path d="M43.5 34Q43.5 28 50 28Q56.5 28 56.5 34V54.5L43.5 60Z" fill="#111"/><path d="M41 63.5L59 55.8" stroke="#ffd23c" stroke-width="3.2"/><path d="M47 40H53M47 45H53" stroke="#ffd23c" stroke-width="1.8"/>';

/** A lamp's point and its rays. */
const RAYS =
  '<circle cx="50" cy="59" r="8.5" fill="#111"/><path d="M50 45V32M50 73V82M62 52L72 42M38 52L28 42M64.5 59H78M35.5 59H22M61 68L68 76M39 68L32 76" stroke="#111" stroke-width="4.2" stroke-linecap="round" transform="translate(0 -.5)"/>';

/** Heat rising from a plate. */
const HEAT =
  '<path d="M22 77H78" stroke="#111" stroke-width="6"/><path d="M36 69C30 61 42 57 36 48M50 69C43 59 57 53 50 40M64 69C58 61 70 57 64 48" fill="none" stroke="#111" stroke-width="5" stroke-linecap="round"/>';

/** An open booklet under a reader's head. */
const MANUAL =
  '<circle cx="50" cy="50" r="46" fill="#0b5aa6" stroke="#111" stroke-width="2"/><circle cx="50" cy="27" r="9.5" fill="#fff"/><path d="M50 47Q38 39 20 42V70Q38 67 50 75Q62 67 80 70V42Q62 39 50 47Z" fill="#fff"/><path d="M50 48V73M27 50Q37 49 44 53M27 57Q37 56 44 60M73 50Q63 49 56 53M73 57Q63 56 56 60" fill="none" stroke="#0b5aa6" stroke-width="2.8"/>';

const PICTURES: Readonly<Record<Caution['sign'], string>> = {
  W022: TRIANGLE + BLADE,
  W027: TRIANGLE + RAYS,
  W017: TRIANGLE + HEAT,
  M002: MANUAL,
};

const NAMES: Readonly<Record<Caution['sign'], string>> = {
  W022: 'Sharp element',
  W027: 'Optical radiation',
  W017: 'Hot surface',
  M002: 'Refer to the manual',
};

/** A sign as inline SVG. */
export function drawSign(sign: Caution['sign']): string {
  const height = sign === 'M002' ? 100 : 92;
  return `<svg class="sign" viewBox="0 0 100 ${height}" role="img" aria-label="${NAMES[sign]} (${sign})">${PICTURES[sign]}</svg>`;
}
