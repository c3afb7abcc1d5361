// JSON to a shop profile, or every fault at once.
import { ROLES } from '../model/pass.js';
import type { ShopProfile } from '../model/profile.js';
import { checkShape, type Shape, type ShapeFault } from './check-shape.js';
import { nearestWord } from './nearest-word.js';
import { parseJson } from './parse-json.js';
import { PROFILE_FIELDS, PROFILE_REQUIRED } from './profile-shape.js';
import { throwFaults } from './throw-faults.js';

const PROFILE_SHAPE: Shape = { noun: 'profile', fields: PROFILE_FIELDS, required: PROFILE_REQUIRED };

const HAZARDS = ['blade', 'ultraviolet', 'hot'];

const DAY = /^(\d{4})-(\d\d)-(\d\d)$/;

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Whether the Gregorian calendar has a day. */
function isDay(text: string): boolean {
  const [year = 0, month = 0, day = 0] = DAY.exec(text)?.slice(1).map(Number) ?? [];
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = month === 2 && isLeap ? 29 : (MONTH_DAYS[month - 1] ?? 0);
  return day >= 1 && day <= days;
}

/** A word that must be one of a few. */
function checkWord(word: string, path: string, known: readonly string[], what: string): readonly ShapeFault[] {
  if (known.includes(word)) return [];
  const near = nearestWord(word, known);
  return [
    {
      path,
      message: `${path} is "${word}", which is no ${what}.`,
      remedy:
        near !== null
          ? `Did you mean "${near}"?`
          : known.length === 0
            ? `The profile has no ${what}.`
            : `Allowed are: ${known.join(', ')}.`,
    },
  ];
}

/** Items of the same name. */
function checkNames(items: readonly { readonly name: string }[], path: string): readonly ShapeFault[] {
  const names = items.map(({ name }) => name);
  return items.flatMap(({ name }, at) =>
    names.indexOf(name) === at
      ? []
      : [
          {
            path: `${path}[${at}].name`,
            message: `Two of the ${path} are called "${name}".`,
            remedy: 'Give each a name of its own.',
          },
        ],
  );
}

/** Days that are none, wherever a figure or a run says one. */
function checkDays(value: unknown, path: string): readonly ShapeFault[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]): readonly ShapeFault[] => {
    const at = Array.isArray(value) ? `${path}[${key}]` : path === '' ? key : `${path}.${key}`;
    if (key !== 'on' || typeof inner !== 'string') return checkDays(inner, at);
    if (isDay(inner)) return [];
    return [{ path: at, message: `${at} is "${inner}", which is no day.`, remedy: 'Write it as 2026-03-31.' }];
  });
}

function checkTools({ machines }: ShopProfile): readonly ShapeFault[] {
  return machines.flatMap(({ tools }, m) => [
    ...checkNames(tools, `machines[${m}].tools`),
    ...tools.flatMap(({ roles, hazards = [] }, t) => {
      const path = `machines[${m}].tools[${t}]`;
      return [
        ...roles.flatMap((role, i) => checkWord(role, `${path}.roles[${i}]`, ROLES, 'role')),
        ...hazards.flatMap((hazard, i) => checkWord(hazard, `${path}.hazards[${i}]`, HAZARDS, 'hazard')),
      ];
    }),
  ]);
}

function checkSettings({ machines, materials }: ShopProfile): readonly ShapeFault[] {
  const names = machines.map(({ name }) => name);
  return materials.flatMap(({ settings }, m) =>
    settings.flatMap(({ tool, machine }, s) => {
      const path = `materials[${m}].settings[${s}]`;
      if (machine !== undefined && !names.includes(machine)) {
        return checkWord(machine, `${path}.machine`, names, 'machine');
      }
      const own = machines.filter(({ name }) => machine === undefined || name === machine);
      const tools = [...new Set(own.flatMap((item) => item.tools.map(({ name }) => name)))];
      return checkWord(tool, `${path}.tool`, tools, 'tool');
    }),
  );
}

/** What the shape cannot say; asked only of a profile that is right in shape. */
function checkMeaning(profile: ShopProfile): readonly ShapeFault[] {
  return [
    ...checkNames(profile.machines, 'machines'),
    ...checkNames(profile.materials, 'materials'),
    ...checkTools(profile),
    ...checkSettings(profile),
    ...checkDays(profile, ''),
  ];
}

/**
 * Reads a shop profile.
 *
 * @param value - JSON text, or the parsed object.
 * @returns The profile; a figure that nobody entered stays left out. Nothing in it is shared with `value`.
 * @throws PinbarError `profile/not-json`, or `profile/wrong` with one finding per fault.
 */
export function readProfile(value: unknown): ShopProfile {
  const parsed = typeof value === 'string' ? parseJson(value, { noun: 'profile', code: 'profile/not-json' }) : value;
  const shape = checkShape(parsed, PROFILE_SHAPE);
  if (shape.length > 0) throwFaults('profile/wrong', shape);
  const copy = JSON.parse(JSON.stringify(parsed)) as ShopProfile;
  const profile: ShopProfile = {
    shop: copy.shop,
    machines: copy.machines,
    materials: copy.materials,
    orders: copy.orders ?? [],
  };
  const faults = checkMeaning(profile);
  if (faults.length > 0) throwFaults('profile/wrong', faults);
  return profile;
}
