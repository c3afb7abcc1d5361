// Judges the order of painting of small drawings.
import { classify } from '../../../src/classify/classify.js';
import type { Finding, Json } from '../../../src/model/finding.js';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { readColour } from '../../../src/resolve/colour.js';
import { resolve } from '../../../src/resolve/resolve.js';
import { judgeOrder } from '../../../src/road/judge-order.js';
import { readSource } from '../../../src/source/read-source.js';
import { readTicket } from '../../../src/ticket/read-ticket.js';

/** Passes by stroke: red cuts, blue creases, what is stroked green is varnish; the rest is print. */
const RULES: Json = [
  { pass: 'cutting', stroke: '#ff0000' },
  { pass: 'creasing', stroke: '#0000ff' },
  { pass: 'varnish', stroke: '#00ff00' },
  { pass: 'print', rest: true },
];

/** What is found about the order of painting in a root of 200 by 100 px. */
export function judgeBody(body: string, ticket: { readonly [key: string]: Json } = {}): readonly Finding[] {
  const text = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="200px" height="100px">${body}</svg>`;
  const source = readSource(encodeUtf8(text));
  const artwork = resolve(source, { userUnitsPerInch: 96 });
  const classified = classify(artwork, readTicket({ pinbar: 1, rules: RULES, ...ticket }), readColour);
  const { findings } = judgeOrder(source, artwork, classified);
  return findings.filter((item) => item.code.startsWith('order/'));
}

/** Code, ids and passes of each finding. */
export function tellOrder(body: string, ticket: { readonly [key: string]: Json } = {}): readonly string[] {
  return judgeBody(body, ticket).map(({ code, data }) => {
    const list = (value: Json | undefined): string => (value as readonly string[]).join(',');
    return `${code.slice('order/'.length)} ${list(data.ids)}: ${list(data.passes)}`;
  });
}
