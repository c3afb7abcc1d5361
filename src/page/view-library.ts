// The door to the view library.
import { type ComponentChildren, h as make, type VNode } from 'preact';

export { render, type VNode } from 'preact';
export { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';

/** Makes a node: an element by its name, or a part of the page with what it is handed. */
export const h: <P extends object>(
  what: string | ((props: P) => VNode | null),
  props: P & { readonly key?: string | number },
  ...children: readonly ComponentChildren[]
) => VNode = make as never;
