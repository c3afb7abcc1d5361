// Cautions of a run: which sign goes with which tool.
import type { Role } from '../model/pass.js';
import type { Hazard, ProfileTool } from '../model/profile.js';
import type { Caution } from '../model/run-sheet.js';

const BLADE: Caution = {
  level: 'WARNING',
  sign: 'W022',
  text: 'A blade stays sharp when the machine is off. Before changing it: stop the machine, cut its power, let it come to rest. Hold the blade by its body, in cut-resistant gloves, and put the old one straight into a closed, labelled box.',
};
const ULTRAVIOLET: Caution = {
  level: 'WARNING',
  sign: 'W027',
  text: 'The lamp gives off ultraviolet light that can injure eyes and skin within seconds, also by reflection. Keep the shutter and covers shut; do not run with an interlock bridged.',
};
const HOT: Caution = {
  level: 'WARNING',
  sign: 'W017',
  text: 'Lamp and housing stay hot after switch-off. Let them cool before you reach in.',
};
const NOTICE: Caution = {
  level: 'NOTICE',
  sign: 'M002',
  text: "A file that passes every check here says nothing about guards, blade depth or lamp state. The machine's own manual comes first.",
};

/** What a tool of a role can do to people where the profile does not say: rather one caution too many. */
function guessHazards(role: Role): readonly Hazard[] {
  if (role === 'print' || role === 'white' || role === 'varnish') return ['ultraviolet', 'hot'];
  if (role === 'foil-stamping' || role === 'cold-foil-stamping') return ['hot'];
  return role.endsWith('cutting') || role === 'perforating' || role === 'drilling' || role === 'punching'
    ? ['blade']
    : [];
}

/** Hazards of a pass: those the tool states, else those of its role. */
export function listHazards(role: Role, tool: ProfileTool | null): readonly Hazard[] {
  return tool?.hazards ?? guessHazards(role);
}

/** The cautions for some hazards, each once, and the notice that always stands. */
export function listCautions(hazards: readonly Hazard[]): readonly Caution[] {
  const known: readonly (readonly [Hazard, Caution])[] = [
    ['blade', BLADE],
    ['ultraviolet', ULTRAVIOLET],
    ['hot', HOT],
  ];
  return [...known.filter(([hazard]) => hazards.includes(hazard)).map(([, caution]) => caution), NOTICE];
}
