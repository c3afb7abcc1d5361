// The run sheet of a job: passes in order, settings, times, budgets, what is needed and what is not known.
import type { Role } from '../model/pass.js';
import type { Machine, ShopOrder } from '../model/profile.js';
import type { Figure, RunBudget, RunPass, RunSheet } from '../model/run-sheet.js';
import { fitTimes, LEAST_RUNS } from './fit-times.js';
import { listCautions, listHazards } from './list-cautions.js';
import { planPass } from './plan-pass.js';
import { listBudgets } from './register-budget.js';
import type { RunFacts } from './run-facts.js';
import { createFigureLog, type FigureScope, showFigure } from './show-figure.js';

/** Whether a job runs its passes in a shop's order; roles that the order does not name do not count. */
function follows(roles: readonly Role[], order: ShopOrder): boolean {
  const known = order.passes.map(({ role }) => role);
  const places = roles.filter((role) => known.includes(role)).map((role) => known.indexOf(role));
  return places.length > 1 && places.every((place, i) => i === 0 || place >= places[i - 1]!);
}

/** Without the steps that are the ties of a pass. */
function listPasses(passes: RunFacts['passes']): RunFacts['passes'] {
  return passes.filter(({ tiesOf }) => tiesOf === null);
}

/** The shop's order that names most of the job's passes as they run. */
function findOrder({ passes, profile }: RunFacts): ShopOrder | null {
  const roles = listPasses(passes).map(({ role }) => role);
  const named = (order: ShopOrder): number => roles.filter((role) => order.passes.some((p) => p.role === role)).length;
  const fitting = profile.orders.filter((order) => follows(roles, order));
  return fitting.reduce<ShopOrder | null>(
    (best, order) => (best === null || named(order) > named(best) ? order : best),
    null,
  );
}

/** Acceleration, lift and start: fitted where three runs were timed, else as entered. */
function findMotion(machine: Machine, scope: FigureScope): RunSheet['motion'] {
  const { times = {}, timedRuns = [], name } = machine;
  const travelCmS = showFigure(scope, times.travelCmS, `${name}: speed with the tool up`)?.value ?? null;
  const stopDegrees = showFigure(scope, times.stopDegrees, `${name}: turn that is a stop`)?.value ?? null;
  const fit = travelCmS === null ? null : fitTimes(timedRuns, travelCmS * 10);
  const common = { runs: timedRuns.length, travelCmS, stopDegrees };
  if (fit !== null) {
    const { accelerationMmS2, liftS, startS, residualS } = fit;
    return { ...common, fitted: true, residualS, accelerationCmS2: accelerationMmS2 / 10, liftS, startS };
  }
  return {
    ...common,
    fitted: false,
    residualS: null,
    accelerationCmS2: showFigure(scope, times.accelerationCmS2, `${name}: acceleration`)?.value ?? null,
    liftS: showFigure(scope, times.liftS, `${name}: time of a lift`)?.value ?? null,
    startS: showFigure(scope, times.startS, `${name}: time to start`)?.value ?? null,
  };
}

function describeBudgets(figures: RunSheet['figures']): readonly RunBudget[] {
  const value = (figure: Figure | null): number | null => figure?.value ?? null;
  const numbers = { layMm: value(figures.layMm), marksMm: value(figures.marksMm), headMm: value(figures.headMm) };
  return listBudgets(numbers).map(({ pair, way, parts, totalMm }) => {
    const terms = parts.map(({ figure, times }) => `${times === 1 ? '' : `${times} × `}${figure}²`);
    return { pair, way, formula: `√(${terms.join(' + ')})`, totalMm };
  });
}

/** Stretches of passes that run one after the other on this machine without the sheet being turned over between them. */
function listStretches(passes: readonly RunPass[]): readonly (readonly RunPass[])[] {
  const stretches: RunPass[][] = [];
  let open = false;
  for (const pass of passes) {
    const here = pass.tool !== null && pass.lines !== null;
    if (here && open && pass.register.turn === null) stretches.at(-1)!.push(pass);
    else if (here) stretches.push([pass]);
    open = here;
  }
  return stretches;
}

function addAll(parts: readonly (number | null)[]): number | null {
  return parts.reduce<number | null>((sum, part) => (sum === null || part === null ? null : sum + part), 0);
}

/** One stretch of passes with the sheet left lying: laid once, marks read once, a tool change for every pass. */
function timeStretch(passes: readonly RunPass[], sheets: number, changeS: number | null): number | null {
  const [first] = passes;
  // Ties are run with the tool of their pass.
  const tools = passes.filter(({ tiesOf }) => tiesOf === null).length;
  const changes = tools > 1 ? sheets * tools : 1;
  const marks = passes
    .map(({ time }) => time.marksS)
    .reduce((most, s) => (most === null || s === null ? null : Math.max(most, s)), 0);
  const moving = addAll(passes.flatMap(({ time }) => [time.startS, time.motionS]));
  const perSheet = addAll([first!.time.loadS, marks, moving]);
  return perSheet === null || changeS === null ? null : sheets * perSheet + changes * changeS;
}

function addTimes(passes: readonly RunPass[], facts: RunFacts): RunSheet['totals'] {
  const timed = passes.filter(({ time }) => time.perRunS !== null);
  const untimed = passes.filter(({ time }) => time.perRunS === null);
  const changeS = facts.machine.times?.toolChangeS?.value ?? null;
  const stretches = listStretches(passes);
  const tools = stretches.flat();
  const complete = tools.length > 0;
  return {
    sheets: facts.sheets,
    timed: timed.map(({ name }) => name),
    untimed: untimed.map(({ name }) => name),
    passByPassS: complete ? addAll(tools.map(({ time }) => time.perRunS)) : null,
    toolChangesPerSheetS: complete ? addAll(stretches.map((s) => timeStretch(s, facts.sheets, changeS))) : null,
  };
}

function describeNeed(facts: RunFacts, scope: FigureScope, grammage: Figure | null): RunSheet['need'] {
  const spare = showFigure(scope, facts.material.spareSheets, `${facts.material.name}: spare sheets per pass`);
  const spareSheets = spare === null ? null : spare.value * listPasses(facts.passes).length;
  const all = facts.sheets + (spareSheets ?? 0);
  const areaM2 = (all * facts.sheetWidthMm * facts.sheetHeightMm) / 1e6;
  return {
    copiesPerSheet: facts.copiesPerSheet,
    copies: facts.copiesPerSheet * facts.sheets,
    sheets: facts.sheets,
    spareSheets,
    sheetWidthMm: facts.sheetWidthMm,
    sheetHeightMm: facts.sheetHeightMm,
    areaM2,
    massKg: grammage === null ? null : (areaM2 * grammage.value) / 1000,
  };
}

function describeMachine({ machine, job, drawnMm }: RunFacts, scope: FigureScope): RunSheet['machine'] {
  const { name, margins = {} } = machine;
  const widthMm = showFigure(scope, machine.widthMm, `${name}: width`);
  const heightMm = showFigure(scope, machine.heightMm, `${name}: height`);
  const [left, right, top, bottom] = (['leftMm', 'rightMm', 'topMm', 'bottomMm'] as const).map((key) =>
    showFigure(scope, margins[key], `${name}: margin ${key.replace('Mm', '')}`),
  );
  const known = [widthMm, heightMm, left, right, top, bottom].every((figure) => figure);
  const drawn = drawnMm ?? { width: job.widthMm, height: job.heightMm };
  // The strips that the machine holds may be part of the sheet, but nothing may be drawn there.
  const fits = known
    ? job.widthMm <= widthMm!.value &&
      job.heightMm <= heightMm!.value &&
      drawn.width <= widthMm!.value - left!.value - right!.value &&
      drawn.height <= heightMm!.value - top!.value - bottom!.value
    : null;
  return { name, origin: showFigure(scope, machine.origin, `${name}: origin`), widthMm, heightMm, fits };
}

function listNotes(
  facts: RunFacts,
  sheet: Pick<RunSheet, 'machine' | 'motion' | 'order' | 'passes'>,
): readonly string[] {
  const notes: string[] = [];
  const { machine, motion, order, passes } = sheet;
  if (machine.fits === false) notes.push(`The files are larger than ${machine.name} reaches inside its margins.`);
  const { length } = facts.machine.timedRuns ?? [];
  if (length > 0 && length < LEAST_RUNS)
    notes.push(
      `${length} timed ${length === 1 ? 'run does' : 'runs do'} not settle acceleration, lift and start; three do.`,
    );
  if (motion.fitted && motion.residualS === null)
    notes.push('Three timed runs are met exactly and leave nothing to judge the fit by; time a fourth.');
  if (order.reason === null)
    notes.push('No order of the shop fits these passes, so nobody says why they run in this order.');
  for (const { name, register, turnedFile } of passes) {
    if (register.turn === 'not-said') notes.push(`Nothing says over which axis the sheet is turned before ${name}.`);
    if (register.side === 'reverse' && turnedFile === null) notes.push(`The file of ${name} is not mirrored.`);
  }
  return notes;
}

/** Plans the run of a job. */
export function planRun(facts: RunFacts): RunSheet {
  const log = createFigureLog();
  const ofMachine: FigureScope = { log, batch: null };
  const ofMaterial: FigureScope = { log, batch: facts.material.batch ?? null };
  const { machine, material } = facts;
  const figures = {
    layMm: showFigure(ofMachine, machine.register?.layMm, `${machine.name}: register by lay`),
    marksMm: showFigure(ofMachine, machine.register?.marksMm, `${machine.name}: register by marks`),
    headMm: showFigure(ofMachine, machine.register?.headMm, `${machine.name}: register of the head`),
  };
  const motion = findMotion(machine, ofMachine);
  const order = findOrder(facts);
  const scope = { facts, material: ofMaterial, machine: ofMachine, motion, order };
  const passes = facts.passes.map((pass, i) => planPass(pass, facts.passes[i - 1] ?? null, scope));
  const grammageGsm = showFigure(ofMaterial, material.grammageGsm, `${material.name}: grammage`);
  const described = describeMachine(facts, ofMachine);
  const ordered = { name: order?.name ?? null, reason: order?.reason ?? null };
  const hazards = facts.passes.flatMap(({ role }, i) => passes[i]!.tool?.hazards ?? listHazards(role, null));
  const need = describeNeed(facts, ofMaterial, grammageGsm);
  const shown = {
    caliperMm: showFigure(ofMaterial, material.caliperMm, `${material.name}: caliper`),
    grammageGsm,
    grain: showFigure(ofMaterial, material.grain, `${material.name}: grain`),
  };
  return {
    job: facts.job,
    shop: facts.profile.shop,
    machine: described,
    material: { name: material.name, batch: material.batch ?? null, ...shown },
    order: ordered,
    passes,
    budgets: describeBudgets(figures),
    figures,
    motion,
    totals: addTimes(passes, facts),
    need,
    cautions: listCautions(hazards),
    missing: [...log.missing],
    untested: [...log.untested],
    oldNews: [...log.oldNews],
    notes: listNotes(facts, { machine: described, motion, order: ordered, passes }),
  };
}
