// The mark of a pass: its number, and its pattern as a small picture.
import { LEFT_OUT_LOOK, lookOf, OPEN_LOOK, type PassLook } from './pass-look.js';
import { h, type VNode } from './view-library.js';

function findLook(pass: number): PassLook {
  if (pass === -1) return OPEN_LOOK;
  return pass < 0 ? LEFT_OUT_LOOK : lookOf(pass);
}

/** A stretch of the line of a pass, in its colour and pattern; decoration beside its name. */
export function drawSample(pass: number, isTool: boolean): VNode {
  const look = findLook(pass);
  const name = pass < 0 ? (pass === -1 ? 'open' : 'out') : String(pass % 8);
  const line = h('path', {
    d: 'M2 8H62',
    class: 'sample-line',
    'stroke-dasharray': look.dash.length === 0 ? 'none' : look.dash.join(' '),
  });
  const hatch = [
    h(
      'defs',
      {},
      h(
        'pattern',
        {
          id: `hatch-${name}`,
          width: look.hatchPx,
          height: look.hatchPx,
          patternUnits: 'userSpaceOnUse',
          patternTransform: `rotate(${look.hatchDegrees})`,
        },
        h('path', { d: `M0 ${look.hatchPx / 2}H${look.hatchPx}`, class: 'sample-hatch' }),
      ),
    ),
    h('rect', { x: 1, y: 1, width: 62, height: 14, rx: 2, fill: `url(#hatch-${name})`, class: 'sample-area' }),
  ];
  return h(
    'svg',
    { class: `sample pass-ink-${name}`, viewBox: '0 0 64 16', preserveAspectRatio: 'xMinYMid', 'aria-hidden': 'true' },
    isTool ? line : hatch,
  );
}

/** The number of a pass in its colour. */
export function drawNumber(pass: number): VNode {
  const name = pass < 0 ? (pass === -1 ? 'open' : 'out') : String(pass % 8);
  return h(
    'span',
    { class: `pass-number pass-ink-${name}`, 'aria-hidden': 'true' },
    pass < 0 ? (pass === -1 ? '?' : '–') : pass + 1,
  );
}
