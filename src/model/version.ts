// The version of pinbar; a house test holds it equal to package.json.

/** Version of this program. */
export const PINBAR_VERSION: string = '0.1.0';
