// One pass on the printed run sheet: what to mount, set, lay, run and take off, with a box to tick per step.

import { escapeXml } from '../model/escape-xml.js';
import { isToolpath, type Role } from '../model/pass.js';
import { type Figure, type RunPass, type RunSheet, stepNumber } from '../model/run-sheet.js';
import { sayCount } from '../model/say-count.js';
import { isShownDark } from './draw-pass.js';
import { drawSign } from './draw-signs.js';
import { MISSING, sayNumber, sayOrigin, sayTime } from './say-figure.js';

/** How lines of a role are drawn in the picture. */
const LINE_WORDS: Readonly<Partial<Record<Role, string>>> = {
  creasing: 'Dashes: crease.',
  'reverse-creasing': 'Dashes and dots: crease from the reverse.',
  perforating: 'Dots: perforation.',
  'partial-cutting': 'Dashes and dots: partial cut.',
  'reverse-partial-cutting': 'Dashes and dots: partial cut from the reverse.',
  cutting: 'Solid: cut.',
};

const CORNER_WORDS = {
  'top-left': 'top left',
  'top-right': 'top right',
  'bottom-left': 'bottom left',
  'bottom-right': 'bottom right',
} as const;

function step(words: string): string {
  return `<li><span class="tick"></span><div>${words}</div></li>`;
}

function settingRow(word: string, text: string | null, figure: Figure | null): string {
  return `<tr><th scope="row">${word}</th><td class="n">${text ?? MISSING}</td><td>${figure === null ? '' : sayOrigin(figure)}</td></tr>`;
}

function sayForce(gf: Figure | null, newton: number | null): string | null {
  return gf === null || newton === null ? null : `${sayNumber(gf.value)} gf (${sayNumber(newton)} N)`;
}

function measured(figure: Figure | null, unit: string): string | null {
  return figure === null ? null : `${sayNumber(figure.value)} ${unit}`;
}

/** Settings of a tool pass; ties only where the pass has any. */
function printSettings({ settings, role, lines, tiesOf }: RunPass): string {
  const { speedCmS, pressureGf, pressureN, strokes, offsetMm, cutMm, tieMm, tiePressureGf, tiePressureN } = settings;
  const inFile = tiesOf !== null || lines?.tiesAreDrawn === true;
  const tied = !inFile && (role === 'perforating' || cutMm !== null || tieMm !== null);
  const rows = [
    settingRow('Speed', measured(speedCmS, 'cm/s'), speedCmS),
    settingRow('Pressure', sayForce(pressureGf, pressureN), pressureGf),
    settingRow('Strokes', strokes === null ? null : sayNumber(strokes.value), strokes),
    settingRow('Offset', measured(offsetMm, 'mm'), offsetMm),
    ...(tied
      ? [
          settingRow('Stretches', measured(cutMm, 'mm'), cutMm),
          settingRow('Ties', measured(tieMm, 'mm'), tieMm),
          settingRow(
            'On ties',
            tiePressureGf === null ? 'tool up' : sayForce(tiePressureGf, tiePressureN),
            tiePressureGf,
          ),
        ]
      : []),
  ];
  return `<table class="settings">${rows.join('')}</table>`;
}

/** What the sheet is found by, in words. */
export function sayRegister(to: string | null): string {
  if (to === null) return MISSING;
  if (to === 'edge') return 'the lay edge';
  if (to === 'pins') return 'the pins';
  return to === 'printed-marks' ? 'the printed marks' : `the marks of pass ${escapeXml(to)}`;
}

function sayTurn({ register }: RunPass): string {
  const { turn } = register;
  if (turn === null) return '';
  if (turn === 'not-said') return ` <b>Turn the sheet over; axis: ${MISSING}.</b>`;
  const way = turn.way === null ? '' : ` (${turn.way.replaceAll('-', ' ')})`;
  const at = `axis ${sayNumber(turn.axisMm)} mm from the ${turn.axis === 'vertical' ? 'left' : 'top'}`;
  return turn.axis === 'vertical'
    ? ` <b>Turn the sheet over like the page of a book${way}: left and right change places, ${at}.</b>`
    : ` <b>Turn the sheet over head to foot${way}: top and bottom change places, ${at}.</b>`;
}

function sayLaying(pass: RunPass, sheet: RunSheet): string {
  const { register } = pass;
  const up = register.side === 'front' ? 'Front up.' : 'Reverse up.';
  const by =
    register.to === 'edge' || register.to === 'pins'
      ? `Lay the sheet against ${sayRegister(register.to)}.`
      : `Lay the sheet; it is found by ${sayRegister(register.to)}.`;
  if (pass.tool === null) return `<b>${up}</b>${sayTurn(pass)} ${by}`;
  const { origin } = sheet.machine;
  const zero = origin === null ? MISSING : `${CORNER_WORDS[origin.value]} corner of the file`;
  return `<b>${up}</b>${sayTurn(pass)} ${by} Origin: ${zero}.`;
}

/** A table to write what the first sheet shows into. */
function printMarks({ job }: RunSheet): string {
  const discs = job.marks.filter(({ shape, name }) => shape === 'disc' && name !== 'odd');
  if (discs.length === 0) return ' Out by, right <span class="write"></span> down <span class="write"></span> mm';
  const cells = (text: string): string => discs.map(() => `<td class="small">${text}</td>`).join('');
  const names = discs.map(({ name }) => `<th scope="col">${escapeXml(name)}</th>`).join('');
  return `<table class="marks"><tr><th scope="col">mm</th>${names}</tr><tr><th scope="row">right</th>${cells('')}</tr><tr><th scope="row">down</th>${cells('')}</tr></table>`;
}

function sayFile({ file, turnedFile }: RunPass): string {
  const { name, bytes, sha256 } = turnedFile ?? file;
  const mirrored = turnedFile === null ? '' : ', mirrored: what is seen from the reverse';
  return `<b>${escapeXml(name)}</b>${mirrored}<br><span class="hash">${bytes} bytes, SHA-256 ${sha256}</span>`;
}

function sayTool(words: string, { tool }: RunPass, more: string | null): string {
  const sharp = tool!.hazards.includes('blade') ? `<span class="beside">${drawSign('W022')}</span>` : '';
  return `${sharp}${words}.${more === null ? '' : ` ${escapeXml(more)}`}`;
}

function nameTool({ tool }: RunPass): string {
  return `<b>${escapeXml(tool!.name)}</b>`;
}

/** The rest of the sheets; where ties follow, each with them. */
function sayOthers({ totals }: RunSheet, more: string): string {
  return totals.sheets > 1
    ? `Run the other ${totals.sheets === 2 ? 'sheet' : `${totals.sheets - 1} sheets`}${more}.`
    : `Take the sheet off${more === '' ? '' : ' when that is done'}.`;
}

/** Steps of the ties of a pass: tool and sheet stay as they are. */
function listTieSteps(pass: RunPass, sheet: RunSheet): readonly string[] {
  const { tool, tiesOf } = pass;
  const before = `<b>${escapeXml(tiesOf!)}</b>`;
  return [
    ...(tool === null
      ? [`No tool of ${escapeXml(sheet.machine.name)} does this: run it where ${before} is run.`]
      : [`Leave ${nameTool(pass)} mounted, and set for the ties:${printSettings(pass)}`]),
    `Load ${sayFile(pass)}`,
    `Leave each sheet as it lies after ${before}: the ties stand exactly where that pass left them. Set back for ${before} before the next sheet.`,
    `Run the ties of the first sheet. Every piece must still be held.`,
    ...(tool === null ? [] : [sayTool(`After the last sheet: take ${nameTool(pass)} off`, pass, tool.takeOff)]),
  ];
}

function listSteps(pass: RunPass, sheet: RunSheet): readonly string[] {
  const { tool, tieFile, lines } = pass;
  if (pass.tiesOf !== null) return listTieSteps(pass, sheet);
  const ties = `<b>${stepNumber({ order: pass.order, tiesOf: pass.name })}</b>`;
  return [
    tool === null
      ? `No tool of ${escapeXml(sheet.machine.name)} does this pass: run it elsewhere.`
      : sayTool(`Mount ${nameTool(pass)}`, pass, tool.mount),
    ...(tool !== null && isToolpath(pass.role)
      ? [
          `Set:${printSettings(pass)}${lines?.tiesAreDrawn === true ? 'The ties are gaps in the file: set no perforation at the machine.' : ''}`,
        ]
      : []),
    `Load ${sayFile(pass)}`,
    sayLaying(pass, sheet),
    `Run the first sheet and measure how far it is out:${printMarks(sheet)}`,
    ...(tieFile === null ? [] : [`Before any sheet is moved: run its ties, step ${ties}.`]),
    sayOthers(sheet, tieFile === null ? '' : `, each with its ties (${ties})`),
    ...(tool === null || tieFile !== null ? [] : [sayTool(`Take ${nameTool(pass)} off`, pass, tool.takeOff)]),
  ];
}

function sayLines({ lines }: RunPass): string {
  if (lines === null) return '';
  const ties = lines.ties === 0 ? '' : ` ${sayCount(lines.ties, 'tie')}, ${sayNumber(lines.tieLengthMm)} mm together.`;
  return `${sayCount(lines.lines, 'line')}, ${sayNumber(lines.lengthMm, 1)} mm. ${lines.stretches} ${lines.stretches === 1 ? 'stretch' : 'stretches'} between stops, ${sayCount(lines.lifts, 'lift')}, ${sayNumber(lines.travelMm, 1)} mm with the tool up.${ties}`;
}

function sayTimes({ time, lines, tool, tiesOf }: RunPass, sheets: number): string {
  if (tool === null) return 'Time: not on this machine.';
  const sum = [
    ...(tiesOf === null ? [`load ${sayTime(time.loadS)}`] : []),
    ...(time.marksS === 0 ? [] : [`read marks ${sayTime(time.marksS)}`]),
    ...(lines === null ? [] : [`start ${sayTime(time.startS)}`]),
    `${lines === null ? 'cover' : 'tool'} ${sayTime(time.motionS)}`,
  ].join(' + ');
  const plain =
    lines === null
      ? ''
      : `<br>Length over speed alone: ${sayTime(time.lengthOverSpeedS)}.${time.factor === null ? '' : ` The tool takes ${sayNumber(time.factor, 1)} times that.`}`;
  return `<b>${sayTime(time.perSheetS)}</b> a sheet (${sum}); <b>${sayTime(time.perRunS)}</b> for ${sayCount(sheets, 'sheet')}${tiesOf === null ? ' with one mounting' : ', without the time to set the pressure to and fro'}.${plain}`;
}

/** A pass as a card. */
export function printPassCard(pass: RunPass, sheet: RunSheet, picture: string): string {
  const origin = pass.tool === null || sheet.machine.origin === null ? '' : 'Ring with arrows: origin.';
  const marks = sheet.job.marks.length === 0 ? '' : 'Dots and crosses: register marks.';
  const lines =
    pass.tiesOf === null ? LINE_WORDS[pass.role] : `Diamonds: ties, on the thin lines of ${escapeXml(pass.tiesOf)}.`;
  const dark = isShownDark(pass.role) ? `Shown dark: ${pass.role}.` : '';
  const caption = [lines, dark, origin, marks, sayLines(pass)];
  return `<section class="pass">
<header><span class="num">${stepNumber(pass)}</span><div><div class="name">${escapeXml(pass.name)}</div>${pass.reason === null ? '' : `<div class="small">${escapeXml(pass.reason)}</div>`}</div><div class="small">${pass.role}<br>${pass.tiesOf === null ? `registers to ${sayRegister(pass.register.to)}` : 'the sheet stays as it lies'}</div></header>
<div class="body"><ol class="steps">
${listSteps(pass, sheet).map(step).join('\n')}
</ol><figure>${picture}<figcaption>${caption.filter((line) => line !== undefined && line !== '').join(' ')}</figcaption></figure></div>
<div class="times">${sayTimes(pass, sheet.totals.sheets)}</div>
</section>`;
}
