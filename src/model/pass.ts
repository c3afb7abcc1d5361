// Passes of the machine, what they do, and which shape goes to which.

/** What a pass does, in the words of ISO 19593-1, plus `print`; `ignore` is for guides and notes. */
const ROLE_WORDS = [
  'creasing',
  'reverse-creasing',
  'embossing',
  'debossing',
  'white',
  'print',
  'varnish',
  'foil-stamping',
  'cold-foil-stamping',
  'perforating',
  'partial-cutting',
  'reverse-partial-cutting',
  'drilling',
  'punching',
  'cutting',
  'gluing',
  'ignore',
] as const;

/** The roles, in the default order of their passes. */
export const ROLES: typeof ROLE_WORDS = ROLE_WORDS;

/** A role; see `ROLES`. The order of `ROLES` is the default order of the passes: tools first, so that no tool runs over print, and the blank cut loose last. */
export type Role = (typeof ROLES)[number];

/** Whether a role moves a tool along lines (true) or covers areas (false). */
export function isToolpath(role: Role): boolean {
  return role === 'creasing' || role === 'reverse-creasing' || role === 'perforating' || role.endsWith('cutting');
}

/** The name of a role's pass where the ticket gives none: the verb. */
export function namePass(role: Role): string {
  const names: Readonly<Partial<Record<Role, string>>> = {
    creasing: 'crease',
    'reverse-creasing': 'reverse-crease',
    embossing: 'emboss',
    debossing: 'deboss',
    'foil-stamping': 'foil-stamp',
    'cold-foil-stamping': 'cold-foil-stamp',
    perforating: 'perforate',
    'partial-cutting': 'partial-cut',
    'reverse-partial-cutting': 'reverse-partial-cut',
    drilling: 'drill',
    punching: 'punch',
    cutting: 'cut',
    gluing: 'glue',
  };
  return names[role] ?? role;
}

/** One run of the machine over the sheet. */
export interface Pass {
  /** From 1, in the order of the runs. */
  readonly order: number;
  readonly name: string;
  readonly role: Role;
}

/** The side of the sheet that faces the tool: as asked, else the reverse for the reverse roles. */
export function sideOf(role: Role, asked: 'front' | 'reverse' | undefined): 'front' | 'reverse' {
  return asked ?? (role.startsWith('reverse-') ? 'reverse' : 'front');
}

/** Whether a list of passes names a pass, by its name or role; an empty list names all. */
export function namesPass(names: readonly string[], pass: Pass): boolean {
  return names.length === 0 || names.includes(pass.name) || names.includes(pass.role);
}

/** Which part of a shape a pass takes; `fill` and `stroke` when its paint is parted. */
export type Part = 'whole' | 'fill' | 'stroke';

/** Why a shape is where it is. Shared between shapes. */
export interface Reason {
  /** Position of the rule in the ticket, or -1 where a layer name suggested it. */
  readonly rule: number;
  readonly text: string;
}

/** A shape in a pass. */
export interface Placement {
  /** Index into `Artwork.shapes`. */
  readonly shape: number;
  /** Index into `Assignment.passes`. */
  readonly pass: number;
  readonly part: Part;
  readonly reason: Reason;
}

/** A shape that is in no pass, and why. */
export interface Exclusion {
  readonly shape: number;
  readonly cause: 'ignored' | 'hidden' | 'draws-nothing' | 'open';
}

/** Which shape goes to which pass. Every shape is in `placements` or in `exclusions`; `open` ones have a finding. */
export interface Assignment {
  readonly passes: readonly Pass[];
  /** By shape, then by pass. */
  readonly placements: readonly Placement[];
  readonly exclusions: readonly Exclusion[];
  /** Hidden shapes that the ticket wants shown: the carriers and layers to be shown on their sheets. */
  readonly shownElements: readonly number[];
}

/** A role that a layer or a stroke suggests, with the reason. */
export interface Suggestion {
  readonly role: Role;
  readonly reason: string;
  /** Whether the shapes look like it, so that it is taken without asking. */
  readonly sure: boolean;
}

/** Placements of each pass, by its index, in paint order. */
export function placementsByPass(assignment: Assignment): readonly (readonly Placement[])[] {
  const lists: Placement[][] = assignment.passes.map(() => []);
  for (const placement of assignment.placements) lists[placement.pass]!.push(placement);
  return lists;
}
