// The browser as judge of boxes, matrices and paint: itself where it is there, its recorded answers always.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { describeWith } from '../../house/witnesses.js';
import { recallAnswers, recordAnswers } from './answer-store.js';
import { type Answer, askBrowser, openBrowser } from './ask-browser.js';
import { compareAnswer } from './compare-answer.js';
import { FILE_SETS, type FileSet } from './list-files.js';
import { createTally, NOT_COMPARED, printTally, type Tally } from './tally.js';

const isRecording = process.env.ORACLES === 'record';
const isTelling = process.env.ORACLES !== undefined;

function compareAll(set: FileSet, answers: readonly Answer[]): Tally {
  const tally = createTally();
  set.files().forEach((file, at) => {
    compareAnswer(tally, file, answers[at]!);
  });
  if (isTelling) process.stdout.write(`${printTally(set.name, tally)}\n`);
  return tally;
}

/** What must at least be compared, so that a comparison of nothing is none. */
const LEAST: Readonly<Record<FileSet['name'], Partial<Tally>>> = {
  samples: { files: 5, shapes: 364, copied: 214, boxes: 364, matrices: 369, sizes: 5 },
  openmoji: { files: 300, shapes: 5121, boxes: 5121, closedForms: 600, matrices: 5121 },
  openclipart: { files: 299, shapes: 8400, copied: 41, boxes: 8400, closedForms: 300, matrices: 8700, sizes: 299 },
  librsvg: { files: 160, shapes: 2500, copied: 140, boxes: 1700, closedForms: 27, matrices: 2500 },
  generated: { files: 500, shapes: 4000, copied: 400, boxes: 4000, closedForms: 250, matrices: 3500, sizes: 400 },
  corners: { files: 41, shapes: 244, copied: 9, boxes: 237, matrices: 285, sizes: 41 },
  disagreements: { files: 8, shapes: 11 },
};

/** The two agree everywhere; on the documents about known disagreements they differ in each. */
function expectAgreement(set: FileSet, tally: Tally): void {
  if (set.name === 'disagreements') {
    const differing = [...new Set(tally.differences.map(({ file }) => file))];
    expect(differing).toEqual(set.files().map(({ name }) => name));
  } else expect(tally.differences).toEqual([]);
  expect(Object.keys(NOT_COMPARED)).toEqual(expect.arrayContaining([...tally.left.keys()]));
  for (const [what, least] of Object.entries(LEAST[set.name])) {
    expect(tally[what as 'files'], what).toBeGreaterThanOrEqual(least as number);
  }
}

describeWith('chromium', 'the browser itself', () => {
  let opened: Awaited<ReturnType<typeof openBrowser>>;
  beforeAll(async () => {
    opened = await openBrowser();
  });
  afterAll(() => opened?.browser.close());

  for (const set of FILE_SETS) {
    const describeSet = set.witness === null ? describe : describeWith.bind(null, set.witness);
    describeSet(`asked about ${set.name}`, () => {
      it('says what resolve gives', { timeout: 300_000 }, async () => {
        const files = set.files();
        const answers = await askBrowser(opened.page, files);
        if (isRecording) recordAnswers(set.name, opened.browser.version(), files, answers);
        expectAgreement(set, compareAll(set, answers));
      });
    });
  }
});

for (const set of FILE_SETS) {
  const describeSet = set.witness === null ? describe : describeWith.bind(null, set.witness);
  describeSet(`recorded answers about ${set.name}`, () => {
    it('are what resolve gives', { timeout: 120_000 }, () => {
      const tally = compareAll(set, recallAnswers(set.name, set.files()));
      expectAgreement(set, tally);
      expect(Object.fromEntries(tally.left)).toMatchSnapshot();
    });
  });
}
