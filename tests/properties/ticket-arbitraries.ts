// Tickets of every kind for property tests.
import fc from 'fast-check';
import { FINDING_KINDS } from '../../src/model/finding.js';
import { ROLES } from '../../src/model/pass.js';

const word = fc.string({ minLength: 1, maxLength: 12, unit: 'grapheme' }).filter((text) => text.length <= 500);

const passes = fc.uniqueArray(fc.record({ name: word, role: fc.constantFrom(...ROLES) }), {
  selector: (pass) => pass.name,
  maxLength: 4,
});

const conditions = fc
  .record(
    {
      layer: word,
      stroke: word,
      fill: word,
      widthMm: fc.double({ min: 0, max: 1000, noNaN: true }),
      dashed: fc.boolean(),
      class: word,
      id: word,
      element: fc.constantFrom('path', 'rect', 'image'),
    },
    { requiredKeys: [] },
  )
  .filter((rule) => Object.keys(rule).length > 0);

const marks = fc.record(
  {
    wanted: fc.boolean(),
    discDiameterMm: fc.double({ min: 1, max: 50, noNaN: true }),
    crossSizeMm: fc.double({ min: 1, max: 50, noNaN: true }),
    lineWidthMm: fc.double({ min: 0.01, max: 5, noNaN: true }),
    offsetMm: fc.double({ min: 0, max: 100, noNaN: true }),
    cornerLengthMm: fc.double({ min: 1, max: 100, noNaN: true }),
    passes: fc.array(fc.constantFrom('print', 'crease', 'cut'), { maxLength: 3 }),
    label: fc.boolean(),
  },
  { requiredKeys: [] },
);

const checks = fc.record(
  {
    materialWidthMm: fc.option(fc.double({ min: 1, max: 100_000, noNaN: true })),
    gripperMm: fc.option(fc.double({ min: 0, max: 1000, noNaN: true })),
    gripperSide: fc.constantFrom('top', 'bottom', 'left', 'right'),
    artboardIs: fc.constantFrom('reach', 'sheet'),
    markLayers: fc.array(word, { maxLength: 3 }),
  },
  { requiredKeys: [] },
);

const sheet = fc.record(
  {
    widthMm: fc.double({ min: 1, max: 100_000, noNaN: true }),
    heightMm: fc.double({ min: 1, max: 100_000, noNaN: true }),
    gripperMm: fc.double({ min: 0, max: 1000, noNaN: true }),
    gripperSide: fc.constantFrom('top', 'bottom', 'left', 'right'),
    gutterMm: fc.double({ min: 0, max: 1000, noNaN: true }),
    ups: fc.oneof(fc.constantFrom('max', '3x2', '9999x1'), fc.integer({ min: 1, max: 10_000 })),
    turn: fc.constantFrom(0, 90, 180, 270, 'head-to-tail'),
    place: fc.constantFrom('centre', 'origin'),
    scale: fc.double({ min: 0.001, max: 1000, noNaN: true }),
  },
  { requiredKeys: ['widthMm', 'heightMm'] },
);

const sequence = fc.record(
  {
    passes: fc.array(fc.constantFrom('crease', 'cutting'), { maxLength: 2 }),
    origin: fc.constantFrom('top-left', 'top-right', 'bottom-left', 'bottom-right'),
    restartContours: fc.boolean(),
  },
  { requiredKeys: [] },
);

const ties = fc.uniqueArray(
  fc.record(
    {
      pass: fc.constantFrom('cut', 'perforate', 'perforating'),
      mode: fc.constantFrom('pattern', 'hold'),
      cutMm: fc.double({ min: 0.05, max: 1000, noNaN: true }),
      tieMm: fc.double({ min: 0.05, max: 100, noNaN: true }),
      startsWith: fc.constantFrom('cut', 'tie'),
      leastPerPiece: fc.integer({ min: 0, max: 1000 }),
      tiesPass: fc.boolean(),
    },
    { requiredKeys: ['pass', 'mode'] },
  ),
  { selector: ({ pass }) => pass, maxLength: 3 },
);

const changeable = Object.entries(FINDING_KINDS)
  .filter(([, kind]) => kind.severity !== 'error')
  .map(([code]) => code);

/** JSON that is a ticket: as somebody might write it, keys left out. */
export const validTicket: fc.Arbitrary<{ readonly [key: string]: unknown }> = fc
  .record({
    passes,
    rest: fc.boolean(),
    picks: fc.array(fc.tuple(fc.nat(), conditions), { maxLength: 4 }),
    others: fc.record(
      {
        hidden: fc.constantFrom('ask', 'skip', 'include', 'stop'),
        partPaint: fc.boolean(),
        linkedPictures: fc.constantFrom('ask', 'embed', 'leave-out'),
        marks,
        checks,
        sheet,
        sequence,
        ties,
        marginMm: fc.double({ min: 0, max: 1000, noNaN: true }),
        userUnitsPerInch: fc.option(fc.double({ min: 1, max: 100_000, noNaN: true })),
        compact: fc.boolean(),
        witness: fc.constantFrom('auto', 'always', 'never'),
        severities: fc.dictionary(fc.constantFrom(...changeable), fc.constantFrom('error', 'warning', 'note'), {
          noNullPrototype: true,
        }),
      },
      { requiredKeys: [] },
    ),
  })
  .map((draft) => {
    const words = [...draft.passes.map((pass) => pass.name), ...ROLES];
    const rules: object[] = draft.picks.map(([at, rule]) => ({ pass: words[at % words.length]!, ...rule }));
    if (draft.rest) rules.push({ pass: 'print', rest: true });
    return { pinbar: 1, passes: draft.passes, rules, ...draft.others };
  });
