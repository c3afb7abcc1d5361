// What the pointer is on: the shape, the pass it goes to, and why.
import { sayReason } from './german-reasons.js';
import type { PartProps } from './page-state.js';
import { drawNumber } from './pass-mark.js';
import { h, type VNode } from './view-library.js';

/** Where a shape goes, in words. */
function sayPass({ state, say }: PartProps, pass: number): string {
  if (pass === -1) return say('open');
  return pass < 0 ? say('leftOut') : (state.job?.passes[pass]?.name ?? '');
}

/** One line under the board. */
export function PointedLine(props: PartProps): VNode {
  const { state, say } = props;
  const { pointed, job, names, inspection } = state;
  if (pointed < 0 || job === null) return h('p', { class: 'pointed quiet' }, say('point'));
  const pass = job.sorted.passes[pointed]!;
  const fill = job.sorted.fillPasses[pointed]!;
  const own = job.reasons[job.sorted.reasons[pointed]!] ?? '';
  const reason = state.language === 'de' ? sayReason(own) : own;
  const layer = inspection?.layers[state.shapeLayers[pointed]!]?.path;
  return h(
    'p',
    { class: 'pointed' },
    fill < 0 || pass !== -2 ? drawNumber(pass) : null,
    fill >= 0 ? drawNumber(fill) : null,
    h('strong', {}, fill >= 0 && pass < 0 ? sayPass(props, fill) : sayPass(props, pass)),
    ` ${names[pointed] ?? ''}${layer === undefined ? '' : ` · ${layer}`}`,
    reason === '' ? null : h('span', { class: 'quiet' }, ` · ${reason}`),
  );
}
