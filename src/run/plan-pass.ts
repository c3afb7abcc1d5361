// One pass of the run sheet: tool, settings, lines, times.

import { toNewton } from '../geometry/force.js';
import type { LikeStretches, ProfileTool, ShopOrder, ToolSettings } from '../model/profile.js';
import type { Figure, RunLines, RunPass, RunRegister, RunSettings, RunSheet, RunTime } from '../model/run-sheet.js';
import { listHazards } from './list-cautions.js';
import { type LineFigures, measureLines } from './measure-lines.js';
import { motionTime } from './motion-time.js';
import type { PassFacts, RunFacts } from './run-facts.js';
import { type FigureScope, showFigure } from './show-figure.js';

/** Rows that a timing record holds at most, so that the profile takes it. */
const MOST_RECORDS = 1000;

/** What all passes of a run share. */
export interface PassScope {
  readonly facts: RunFacts;
  /** Figures of the material hang on its batch, those of the machine do not. */
  readonly material: FigureScope;
  readonly machine: FigureScope;
  readonly motion: RunSheet['motion'];
  readonly order: ShopOrder | null;
}

function round(value: number, digits: number): number {
  const scale = Number(`1e${digits}`);
  return Math.round(value * scale) / scale + 0;
}

/** Stretches as like ones, at 0.01 mm, or coarser where there are too many kinds. */
function gatherLike(lengths: readonly number[]): readonly LikeStretches[] {
  for (const digits of [2, 1, 0]) {
    const counts = new Map<number, number>();
    for (const length of lengths) {
      const rounded = round(length, digits);
      counts.set(rounded, (counts.get(rounded) ?? 0) + 1);
    }
    if (counts.size > MOST_RECORDS && digits > 0) continue;
    return [...counts]
      .sort(([a], [b]) => a - b)
      .slice(0, MOST_RECORDS)
      .map(([lengthMm, count]) => ({ lengthMm, count }));
  }
  return [];
}

function describeLines(figures: LineFigures, pass: PassFacts): RunLines {
  const { lines, lengthMm, stretchesMm, travelsMm, lifts, ties, tieLengthMm, greatestStretch } = figures;
  return {
    lines,
    lengthMm,
    stretches: stretchesMm.length,
    lifts,
    travelMm: travelsMm.reduce((sum, length) => sum + length, 0),
    ties: pass.ties?.ties ?? ties,
    tieLengthMm: pass.ties?.tieLengthMm ?? tieLengthMm,
    tiesAreDrawn: pass.ties !== null,
    greatestStretch: pass.ties === null ? greatestStretch : Math.abs(pass.ties.stretch),
    record: { stretches: gatherLike(stretchesMm), travels: gatherLike(travelsMm) },
  };
}

function findTool(pass: PassFacts, scope: PassScope): ProfileTool | null {
  return scope.facts.machine.tools.find(({ roles }) => roles.includes(pass.role)) ?? null;
}

function findSettings(tool: ProfileTool | null, { facts }: PassScope): ToolSettings | null {
  if (tool === null) return null;
  const own = facts.material.settings.filter((item) => item.tool === tool.name);
  return (
    own.find((item) => item.machine === facts.machine.name) ?? own.find((item) => item.machine === undefined) ?? null
  );
}

function showSettings(pass: PassFacts, tool: ProfileTool | null, scope: PassScope): RunSettings {
  const found = findSettings(tool, scope);
  const runs = tool !== null && pass.lines !== null;
  // Ties that stand in the file are not to be made once more by the machine.
  const inFile = pass.ties !== null || pass.tiesOf !== null;
  const ties = runs && pass.role === 'perforating';
  const show = (key: Exclude<keyof ToolSettings, 'tool' | 'machine'>, word: string, wanted: boolean): Figure | null =>
    showFigure(
      scope.material,
      found?.[key],
      `${tool?.name ?? pass.name}, ${scope.facts.material.name}: ${word}`,
      wanted,
    );
  const pressureGf =
    pass.tiesOf === null ? show('pressureGf', 'pressure', runs) : show('tiePressureGf', 'tie pressure', runs);
  const tiePressureGf = inFile ? null : show('tiePressureGf', 'tie pressure', false);
  return {
    speedCmS: show('speedCmS', 'speed', runs),
    pressureGf,
    pressureN: pressureGf === null ? null : toNewton(pressureGf.value),
    strokes: show('strokes', 'strokes', runs),
    offsetMm: show('offsetMm', 'offset', runs),
    cutMm: inFile ? null : show('cutMm', 'cut length between ties', ties),
    tieMm: inFile ? null : show('tieMm', 'tie length', ties),
    tiePressureGf,
    tiePressureN: tiePressureGf === null ? null : toNewton(tiePressureGf.value),
    secondsPerSheet: show('secondsPerSheet', 'time per sheet', tool !== null && pass.lines === null),
  };
}

/** Seconds of all strokes over the lines; nulls where figures are missing. */
function timeMotion(
  figures: LineFigures,
  settings: RunSettings,
  motion: RunSheet['motion'],
): Pick<RunTime, 'lengthOverSpeedS' | 'motionS' | 'factor'> {
  const speed = settings.speedCmS?.value ?? null;
  const strokes = settings.strokes?.value ?? null;
  if (speed === null || strokes === null) return { lengthOverSpeedS: null, motionS: null, factor: null };
  const lengthOverSpeedS = (strokes * figures.lengthMm) / (speed * 10);
  const { accelerationCmS2, liftS, travelCmS, stopDegrees } = motion;
  if (accelerationCmS2 === null || liftS === null || travelCmS === null || stopDegrees === null)
    return { lengthOverSpeedS, motionS: null, factor: null };
  const once = motionTime(figures, {
    speedMmS: speed * 10,
    travelMmS: travelCmS * 10,
    accelerationMmS2: accelerationCmS2 * 10,
    liftS,
  });
  const motionS = strokes * once;
  return { lengthOverSpeedS, motionS, factor: lengthOverSpeedS > 0 ? motionS / lengthOverSpeedS : null };
}

function addAll(parts: readonly (number | null)[]): number | null {
  return parts.reduce<number | null>((sum, part) => (sum === null || part === null ? null : sum + part), 0);
}

/** Times of a pass; its ties are run while the sheet still lies and the tool is mounted, so they are neither laid nor mounted for. */
function timePass(
  pass: PassFacts,
  figures: LineFigures | null,
  settings: RunSettings,
  register: RunRegister,
  scope: PassScope,
): RunTime {
  const { facts, motion, machine } = scope;
  const { times = {} } = facts.machine;
  const name = facts.machine.name;
  const stays = pass.tiesOf !== null;
  const loadS = stays ? 0 : (showFigure(machine, times.loadS, `${name}: time to load a sheet`)?.value ?? null);
  const readsMarks = !stays && register.to !== null && register.to !== 'edge' && register.to !== 'pins';
  const marksS = readsMarks ? (showFigure(machine, times.marksS, `${name}: time to read marks`)?.value ?? null) : 0;
  const changeS = stays ? 0 : (showFigure(machine, times.toolChangeS, `${name}: time to change a tool`)?.value ?? null);
  const moving =
    figures === null
      ? { lengthOverSpeedS: null, motionS: settings.secondsPerSheet?.value ?? null, factor: null }
      : timeMotion(figures, settings, motion);
  const startS = figures === null ? 0 : motion.startS;
  const perSheetS = addAll([loadS, marksS, startS, moving.motionS]);
  const perRunS = perSheetS === null || changeS === null ? null : changeS + facts.sheets * perSheetS;
  return { ...moving, startS, marksS, loadS, perSheetS, perRunS };
}

const NO_TIME: RunTime = {
  lengthOverSpeedS: null,
  motionS: null,
  factor: null,
  startS: null,
  marksS: null,
  loadS: null,
  perSheetS: null,
  perRunS: null,
};

function findRegister(pass: PassFacts, before: PassFacts | null, { order }: PassScope): RunRegister {
  const byShop = order?.passes.find(({ role }) => role === pass.role)?.registersTo ?? null;
  // A sheet lies front up until somebody turns it; on the way back it is turned over the same axis.
  const turned = (before?.side ?? 'front') !== pass.side;
  const reverse = pass.side === 'reverse' ? pass : before;
  return {
    to: pass.registersTo ?? byShop,
    saidBy: pass.registersTo !== null ? 'ticket' : byShop !== null ? 'order' : 'nobody',
    side: pass.side,
    turn: turned ? (reverse?.turn ?? 'not-said') : null,
  };
}

function measure(pass: PassFacts, settings: RunSettings, { facts, motion }: PassScope): LineFigures | null {
  if (pass.lines === null) return null;
  const { cutMm, tieMm, tiePressureGf } = settings;
  const tied = cutMm !== null && tieMm !== null && cutMm.value > 0 && tieMm.value > 0 && pass.ties === null;
  return measureLines(pass.lines, {
    mmPerPx: facts.mmPerPx,
    stopDegrees: motion.stopDegrees,
    ties: tied ? { cutMm: cutMm.value, tieMm: tieMm.value, lifted: tiePressureGf === null } : null,
  });
}

/** Plans one pass; `before` is the one that runs before it. */
export function planPass(pass: PassFacts, before: PassFacts | null, scope: PassScope): RunPass {
  const tool = findTool(pass, scope);
  const settings = showSettings(pass, tool, scope);
  const register = findRegister(pass, before, scope);
  const figures = measure(pass, settings, scope);
  const { order, name, tiesOf, role, file } = pass;
  return {
    order,
    name,
    tiesOf,
    role,
    reason: tiesOf === null ? (scope.order?.passes.find((item) => item.role === role)?.reason ?? null) : null,
    register,
    tool:
      tool === null
        ? null
        : {
            name: tool.name,
            mount: tool.mount ?? null,
            takeOff: tool.takeOff ?? null,
            hazards: listHazards(role, tool),
          },
    settings,
    file,
    turnedFile: pass.turnedFile,
    tieFile: pass.ties?.file ?? null,
    lines: figures === null ? null : describeLines(figures, pass),
    time: tool === null ? NO_TIME : timePass(pass, figures, settings, register, scope),
  };
}
