// Passes that the ticket asks something of: whether this job has them.
import { type Finding, type FindingCode, finding } from '../model/finding.js';
import { isToolpath, namesPass, type Pass } from '../model/pass.js';
import type { Ticket } from '../model/ticket.js';
import { findTieRequest } from '../model/ties.js';
import { nearestWord } from '../ticket/nearest-word.js';

/** A word of the ticket, and the passes that it may mean. */
interface Asked {
  readonly code: FindingCode;
  readonly path: string;
  readonly word: string;
  /** What then is not done, and where it might be done. */
  readonly idle: string;
  readonly fitting: readonly Pass[];
}

function tell({ code, path, word, idle, fitting }: Asked, passes: readonly Pass[]): Finding {
  const there = passes.filter((pass) => namesPass([word], pass));
  const names = fitting.map(({ name }) => name);
  const near = there.length === 0 ? nearestWord(word, [...names, ...fitting.map(({ role }) => role)]) : null;
  const why =
    there.length === 0
      ? 'but this job has no such pass'
      : there.every((pass) => !fitting.includes(pass))
        ? 'but no tool runs along the lines of that pass'
        : 'but all such passes get ties by other items';
  return finding(code, {
    message: `${path} is "${word}", ${why}: ${idle}.`,
    remedy:
      near !== null
        ? `Did you mean "${near}"?`
        : names.length === 0
          ? 'No pass of this job is one that it could be: take it out of the ticket.'
          : `Name one of: ${names.join(', ')}; or take it out of the ticket.`,
    data: { path, pass: word, passes: names },
  });
}

/**
 * Tells every pass that `marks`, `sequence` and `ties` name and this job does not have, or not so that it could be done.
 *
 * Where no pass is named, all that fit are meant; that there is none is told too.
 */
export function checkAskedPasses({ marks, sequence, ties = [] }: Ticket, passes: readonly Pass[]): readonly Finding[] {
  const tools = passes.filter(({ role }) => isToolpath(role));
  const isIdle = (word: string, fitting: readonly Pass[]): boolean => !fitting.some((pass) => namesPass([word], pass));
  const list = (
    names: readonly string[],
    key: string,
    asked: Pick<Asked, 'code' | 'idle' | 'fitting'>,
  ): readonly Finding[] =>
    names.flatMap((word, i) =>
      isIdle(word, asked.fitting) ? [tell({ ...asked, path: `${key}[${i}]`, word }, passes)] : [],
    );
  const sequenced = { code: 'sequence/no-such-pass', idle: 'nothing is put in order for it', fitting: tools } as const;
  return [
    ...(marks.wanted
      ? list(marks.passes, 'marks.passes', {
          code: 'mark/no-such-pass',
          idle: 'it gets no register marks',
          fitting: passes,
        })
      : []),
    ...list(sequence?.passes ?? [], 'sequence.passes', sequenced),
    ...(sequence !== undefined && sequence.passes.length === 0 && tools.length === 0
      ? [
          finding('sequence/no-such-pass', {
            message: 'Lines are to be put in order, but no tool runs along lines in any pass of this job.',
            remedy: 'Take sequence out of the ticket, or give a pass the role of its tool.',
            data: { path: 'sequence', pass: '', passes: [] },
          }),
        ]
      : []),
    ...ties.flatMap((request, i) =>
      tools.some((pass) => findTieRequest(ties, pass) === request)
        ? []
        : [
            tell(
              {
                code: 'ties/no-such-pass',
                path: `ties[${i}].pass`,
                word: request.pass,
                idle: 'no ties are made for it',
                fitting: tools,
              },
              passes,
            ),
          ],
    ),
  ];
}
