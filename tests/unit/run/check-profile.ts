// A shop profile with the check values, for tests: round figures of common practice, no source.
import { readProfile } from '../../../src/index.js';
import type { ShopProfile } from '../../../src/model/profile.js';

const figure = (value: unknown, more: object = {}) => ({
  value,
  from: 'strip',
  on: '2026-03-31',
  by: 'R. O.',
  batch: 'B7',
  state: 'tested',
  ...more,
});

/** The profile as it stands in a file. */
export const CHECK_PROFILE = {
  pinbar: 1,
  shop: 'Corner shop',
  machines: [
    {
      name: 'table',
      widthMm: figure(700),
      heightMm: figure(500),
      margins: { topMm: figure(5), rightMm: figure(5), bottomMm: figure(5), leftMm: figure(5) },
      origin: figure('bottom-left'),
      tools: [
        { name: 'wheel', roles: ['creasing'], hazards: [] },
        { name: 'point', roles: ['perforating'] },
        { name: 'knife', roles: ['cutting'] },
      ],
      register: { layMm: figure(0.3), marksMm: figure(0.1), headMm: figure(0.05) },
      times: {
        loadS: figure(18),
        marksS: figure(7),
        toolChangeS: figure(90),
        startS: figure(3),
        liftS: figure(0.25),
        travelCmS: figure(30),
        accelerationCmS2: figure(50),
        stopDegrees: figure(20),
      },
    },
  ],
  materials: [
    {
      name: 'board',
      batch: 'B7',
      caliperMm: figure(0.45),
      grammageGsm: figure(320),
      grain: figure('along-width'),
      spareSheets: figure(2),
      settings: [
        // A crease of one stroke at 5 cm/s, 300 gf, offset 0; a cut at 10 cm/s, 50 gf, 0.5 mm; 10 mm stretches at 250 gf between 1 mm ties.
        { tool: 'wheel', speedCmS: figure(5), pressureGf: figure(300), strokes: figure(1), offsetMm: figure(0) },
        { tool: 'knife', speedCmS: figure(10), pressureGf: figure(50), strokes: figure(1), offsetMm: figure(0.5) },
        {
          tool: 'point',
          speedCmS: figure(10),
          pressureGf: figure(250),
          strokes: figure(1),
          offsetMm: figure(0.5),
          cutMm: figure(10),
          tieMm: figure(1),
        },
      ],
    },
  ],
  orders: [
    {
      name: 'Tools first',
      reason: 'No tool on the printed face.',
      passes: [
        { role: 'creasing', registersTo: 'edge', reason: 'Flat board.' },
        { role: 'print', registersTo: 'edge' },
        { role: 'perforating', registersTo: 'printed-marks' },
        { role: 'cutting', registersTo: 'printed-marks', reason: 'Last.' },
      ],
    },
  ],
};

/** The profile, changed by whoever asks. */
export function makeProfile(change: (profile: typeof CHECK_PROFILE) => void = () => undefined): ShopProfile {
  const copy = structuredClone(CHECK_PROFILE);
  change(copy);
  return readProfile(copy);
}

/** A figure for a change of the profile. */
export { figure };
