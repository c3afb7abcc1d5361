// Which bytes and characters may stand in an XML name.

/** Flag of bytes that can begin a name (ASCII). */
export const NAME_START = 1;
/** Flag of bytes that can go on a name (ASCII). */
export const NAME_GOES_ON = 2;
/** Flag of XML white space. */
export const BLANK = 4;

function buildClasses(): Uint8Array {
  const classes = new Uint8Array(256);
  for (let byte = 0; byte < 128; byte += 1) {
    const sign = String.fromCharCode(byte);
    if (/[A-Za-z_:]/.test(sign)) classes[byte] = NAME_START | NAME_GOES_ON;
    else if (/[-.0-9]/.test(sign)) classes[byte] = NAME_GOES_ON;
    else if (/[ \t\r\n]/.test(sign)) classes[byte] = BLANK;
  }
  return classes;
}

/** Flags per byte; bytes above 0x7f have none, since they need their whole character. */
export const BYTE_CLASSES: Uint8Array = buildClasses();

const START = new RegExp(
  '^[\\u00c0-\\u00d6\\u00d8-\\u00f6\\u00f8-\\u02ff\\u0370-\\u037d\\u037f-\\u1fff\\u200c\\u200d\\u2070-\\u218f' +
    '\\u2c00-\\u2fef\\u3001-\\ud7ff\\uf900-\\ufdcf\\ufdf0-\\ufffd\\u{10000}-\\u{effff}]$',
  'u',
);
const GOES_ON = /^(?:\u00b7|[\u0300-\u036f]|\u203f|\u2040)$/u;

/**
 * Whether a character above ASCII may stand in a name.
 *
 * @source XML 1.0 (5th ed.), productions 4 and 4a
 */
export function isNameCharacter(character: string, first: boolean): boolean {
  return START.test(character) || (!first && GOES_ON.test(character));
}
