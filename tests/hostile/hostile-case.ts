// A hostile file: what it is called, how it is made, and how pinbar must end with it.
import { encodeUtf8 } from '../../src/model/platform.js';

/** One hostile file of a class. */
export interface HostileCase {
  readonly name: string;
  readonly make: () => Uint8Array;
  /**
   * How it ends: an outcome (`in-register`, `answer-needed`, `refused`), or the code of an error thrown;
   * with a blank, an outcome and codes of findings that go with it.
   */
  readonly ends: string;
  /** The ticket of the job; by layer names when left out. */
  readonly ticket?: unknown;
  /** Gets a process of its own, so that its memory is measured by itself. */
  readonly alone?: true;
}

/** Parts of the file around the hostile part. */
export interface Around {
  /** Before the root: declaration, document type, instructions. */
  readonly head?: string;
  /** Attributes of the root. */
  readonly root?: string;
  /** Children of the root before the layers. */
  readonly first?: string;
  /** In the layer Art. */
  readonly art?: string;
  /** Children of the root after the layers. */
  readonly last?: string;
}

/** A small sound carton with hostile parts in it, as text. */
export function drawText({ head = '', root = '', first = '', art = '', last = '' }: Around): string {
  return `${head}<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="100mm" height="80mm" viewBox="0 0 100 80" ${root}>
${first}
<g id="Art"><rect id="ground" x="30" y="30" width="40" height="20" fill="#2f6f5e"/>
${art}
</g>
<g id="Cut"><rect id="edge" x="32" y="32" width="36" height="16" fill="none" stroke="#c2185b" stroke-width=".3"/></g>
${last}
</svg>
`;
}

/** A small sound carton with hostile parts in it. */
export function drawCarton(around: Around): Uint8Array {
  return encodeUtf8(drawText(around));
}

/** Some text many times, the number put in for `#`. */
export function repeat(count: number, text: string | ((i: number) => string)): string {
  return Array.from({ length: count }, (_, i) => (typeof text === 'string' ? text : text(i))).join('');
}
