// The proof, and the files to take away.
import type { Judgement } from '../model/proof.js';
import type { PageState, PartProps } from './page-state.js';
import type { MadeFile } from './protocol.js';
import { sayCommand } from './say-command.js';
import { fixed, type Say } from './texts.js';
import { h, type VNode } from './view-library.js';

/** What a judge looked at, where that is said. */
function sayOf({ of }: Judgement, say: Say): string {
  return of === undefined ? '' : ` (${say(`of.${of}`)})`;
}

function sayJudge(judge: Judgement, index: number, say: Say): VNode {
  const errors = judge.findings.filter(({ severity }) => severity === 'error').length;
  const words = judge.looked
    ? say('judged', judge.shapesJudged, fixed(judge.greatestDeviationMm, 6), errors)
    : say('didNotLook', judge.why);
  return h('li', { key: index }, h('strong', {}, `${say(`judge.${judge.judge}`)}${sayOf(judge, say)}: `), words);
}

/** What the judges said. */
export function ProofPart({ state, say }: PartProps): VNode | null {
  if (state.job === null) return null;
  const { proof, files } = state.job;
  const looked = proof.judges.filter((judge) => judge.looked);
  const greatest = Math.max(0, ...looked.map((judge) => judge.greatestDeviationMm));
  const body =
    files.length === 0
      ? h('p', { class: 'quiet' }, say('noProof'))
      : h(
          'div',
          {},
          h('p', { class: 'greatest' }, `${say('greatest')}: `, h('strong', {}, say('mm', fixed(greatest, 6)))),
          h(
            'ul',
            { class: 'judges' },
            proof.judges.map((judge, index) => sayJudge(judge, index, say)),
          ),
          h('p', {}, say(proof.equalExtents ? 'equalExtents' : 'unequalExtents')),
        );
  return h(
    'section',
    { id: 'proof', 'aria-labelledby': 'proof-title' },
    h('h2', { id: 'proof-title', tabIndex: -1 }, say('proof')),
    body,
  );
}

function drawFile(file: MadeFile, address: string, say: Say): VNode {
  return h(
    'li',
    { key: file.name },
    h('a', { href: address, download: file.name }, file.name),
    h('span', { class: 'quiet' }, ` ${say('bytes', file.byteLength)}`),
  );
}

/** Whether there are files to take away. While the work goes on, those there are belong to the ticket before. */
export function isReady({ isWorking, fault, job, zipAddress }: PageState): boolean {
  if (isWorking || fault !== null || zipAddress === null || job === null) return false;
  return job.files.length > 0 && (job.outcome === 'in-register' || job.outcome === 'not-verified');
}

/** The files, as one archive or one by one. */
export function TakePart({ state, say }: PartProps): VNode | null {
  if (state.job === null) return null;
  const { files, stem } = state.job;
  const body = !isReady(state)
    ? h('p', { class: 'quiet' }, say('takeNothing'))
    : h(
        'div',
        {},
        h(
          'p',
          {},
          h('a', { class: 'main-act', href: state.zipAddress!, download: `${stem}.passes.zip` }, say('takeAll')),
        ),
        h(
          'ul',
          { class: 'files' },
          files.map((file, index) => drawFile(file, state.addresses[index]!, say)),
        ),
        h('h3', {}, say('repeat')),
        h('pre', { class: 'command' }, sayCommand(state.file!.name, stem, state.along)),
      );
  return h(
    'section',
    { id: 'take', 'aria-labelledby': 'take-title' },
    h('h2', { id: 'take-title', tabIndex: -1 }, say('take')),
    body,
  );
}
