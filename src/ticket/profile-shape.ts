// What a shop profile may hold: one description that the reader and the JSON Schema both follow.
import { ROLES } from '../model/pass.js';
import { type Field, type Fields, millimetres, text } from './field.js';

/** Words for the state of a figure that nobody has tried on a strip. */
export const UNTESTED = 'untested starting point';

const ORIGIN_FIELDS: Fields = {
  from: { type: 'word', doc: 'Where it came from', words: ['strip', 'typed', 'fitted'] },
  on: text('Day, YYYY-MM-DD'),
  by: text('Who entered it'),
  batch: text('Batch of the material it was found on'),
  state: { type: 'word', doc: 'Whether anybody tried it', words: ['tested', UNTESTED] },
};

/** A figure with where it came from. */
function entered(value: Field): Field {
  return {
    type: 'object',
    doc: value.doc,
    fields: { value, ...ORIGIN_FIELDS },
    required: ['value', 'from', 'on', 'by'],
  };
}

const number = (doc: string, least: number, most: number): Field => ({ type: 'number', doc, least, most });

const length = (doc: string, most: number = 10_000): Field => entered(millimetres(doc, 0, most));

const seconds = (doc: string): Field => entered(number(`${doc}, s`, 0, 100_000));

const force = (doc: string): Field => entered(number(`${doc}, gram-force`, 0, 100_000));

const TOOL_FIELDS: Fields = {
  name: text('Name of the tool'),
  roles: { type: 'texts', doc: 'Roles of passes that it can do', longest: 100 },
  hazards: { type: 'texts', doc: 'blade, ultraviolet, hot: which cautions go with it', longest: 100 },
  mount: text('What to look to when it is mounted'),
  takeOff: text('What to look to when it is taken off'),
};

const LIKE_FIELDS: Fields = {
  lengthMm: millimetres('Length of each', 0, 100_000),
  count: number('How many', 1, 1_000_000),
};

const RUN_FIELDS: Fields = {
  name: text('Job and pass'),
  on: text('Day, YYYY-MM-DD'),
  by: text('Who held the watch'),
  speedCmS: number('Speed of the tool, cm/s', 0.001, 1000),
  lifts: number('How often the tool was raised and lowered', 0, 10_000_000),
  stretches: { type: 'objects', doc: 'Stretches between stops', fields: LIKE_FIELDS, required: ['lengthMm', 'count'] },
  travels: { type: 'objects', doc: 'Ways with the tool up', fields: LIKE_FIELDS, required: ['lengthMm', 'count'] },
  seconds: number('From start to rest, without loading and mark reading, s', 0.001, 1_000_000),
};

const MACHINE_FIELDS: Fields = {
  name: text('Name of the machine'),
  widthMm: length('Width that it reaches'),
  heightMm: length('Height that it reaches'),
  margins: {
    type: 'object',
    doc: 'Strips that the machine holds or does not reach',
    fields: {
      topMm: length('At the top'),
      rightMm: length('At the right'),
      bottomMm: length('At the bottom'),
      leftMm: length('At the left'),
    },
    required: [],
  },
  origin: entered({
    type: 'word',
    doc: 'Corner of the sheet where the machine has its zero',
    words: ['top-left', 'top-right', 'bottom-left', 'bottom-right'],
  }),
  tools: { type: 'objects', doc: 'Its tools', fields: TOOL_FIELDS, required: ['name', 'roles'] },
  register: {
    type: 'object',
    doc: 'How far off things come out, one standard deviation each',
    fields: {
      layMm: length('The sheet against lay edge or pins', 100),
      marksMm: length('Printed marks as the machine reads them', 100),
      headMm: length('The head coming back to a place', 100),
    },
    required: [],
  },
  times: {
    type: 'object',
    doc: 'How long things take',
    fields: {
      loadS: seconds('Loading and taking off one sheet'),
      marksS: seconds('Reading the printed marks of one sheet'),
      toolChangeS: seconds('Taking one tool off and mounting another'),
      startS: seconds('From start to the first line and from the last line to rest'),
      liftS: seconds('Raising and lowering the tool once'),
      travelCmS: entered(number('Speed with the tool up, cm/s', 0.001, 10_000)),
      accelerationCmS2: entered(number('Acceleration of the head, cm/s²', 0.001, 1_000_000)),
      stopDegrees: entered(number('A turn sharper than this brings the tool to a stop, degrees', 0, 180)),
    },
    required: [],
  },
  timedRuns: {
    type: 'objects',
    doc: 'Runs that somebody timed; three or more settle acceleration, lift and start',
    fields: RUN_FIELDS,
    required: ['name', 'on', 'by', 'speedCmS', 'lifts', 'stretches', 'travels', 'seconds'],
  },
};

const SETTING_FIELDS: Fields = {
  tool: text('Name of a tool'),
  machine: text('Name of its machine, where two have a tool of that name'),
  speedCmS: entered(number('Speed, cm/s', 0.001, 1000)),
  pressureGf: force('Pressure'),
  strokes: entered(number('How often the tool runs over the same line', 1, 100)),
  offsetMm: length('How far the tool trails behind its axis', 100),
  cutMm: length('Stretches between ties', 1000),
  tieMm: length('Ties', 1000),
  tiePressureGf: force('Pressure on the ties; left out: the tool is lifted over them'),
  secondsPerSheet: seconds('One sheet, for tools that cover areas'),
};

const MATERIAL_FIELDS: Fields = {
  name: text('Name of the material'),
  batch: text('Batch that lies at the machine now'),
  caliperMm: length('Thickness', 100),
  grammageGsm: entered(number('Mass, g/m²', 1, 10_000)),
  grain: entered({ type: 'word', doc: 'Direction of the grain', words: ['along-width', 'along-height'] }),
  spareSheets: entered(number('Sheets that setting up one pass takes', 0, 10_000)),
  settings: { type: 'objects', doc: 'Settings per tool', fields: SETTING_FIELDS, required: ['tool'] },
};

const ORDER_FIELDS: Fields = {
  name: text('Name of the order'),
  reason: text('Why the shop runs it so'),
  passes: {
    type: 'objects',
    doc: 'The passes, first to last',
    fields: {
      role: { type: 'word', doc: 'What the pass does', words: ROLES },
      registersTo: {
        type: 'word',
        doc: 'What the machine finds the sheet by',
        words: ['pins', 'edge', 'printed-marks'],
      },
      reason: text('Why this pass stands here'),
    },
    required: ['role'],
  },
};

/** The keys of a shop profile, version 1. */
export const PROFILE_FIELDS: Fields = {
  pinbar: { type: 'number', doc: 'Version of the profile', least: 1, most: 1 },
  document: { type: 'word', doc: 'What this file is', words: ['profile'] },
  $schema: text('Address of the schema, for editors'),
  shop: text('Name of the shop'),
  machines: { type: 'objects', doc: 'Machines', fields: MACHINE_FIELDS, required: ['name', 'tools'] },
  materials: { type: 'objects', doc: 'Materials', fields: MATERIAL_FIELDS, required: ['name', 'settings'] },
  orders: { type: 'objects', doc: 'Orders of passes', fields: ORDER_FIELDS, required: ['name', 'reason', 'passes'] },
};

/** Keys that a profile must have. */
export const PROFILE_REQUIRED: readonly string[] = ['pinbar', 'shop', 'machines', 'materials'];
