// The run sheet as one page to print: no script, nothing from outside.

import { escapeXml } from '../model/escape-xml.js';
import { type RunSheet, stepNumber } from '../model/run-sheet.js';
import { sayCount } from '../model/say-count.js';
import { drawPass } from './draw-pass.js';
import { drawSign } from './draw-signs.js';
import { printPassCard, sayRegister } from './print-pass-card.js';
import type { PassFacts } from './run-facts.js';
import { RUN_SHEET_STYLE } from './run-sheet-style.js';
import { MISSING, sayNumber, sayOrigin, sayTime } from './say-figure.js';

/** What the pictures are drawn from. */
export interface PageFacts {
  readonly passes: readonly PassFacts[];
  readonly mmPerPx: number;
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
}

function printHead({ job, shop, machine, material, totals, need }: RunSheet): string {
  const copies = need.copiesPerSheet === 1 ? '' : `, ${need.copiesPerSheet} copies on each: ${need.copies}`;
  const batch =
    material.batch === null ? '; batch <span class="write"></span>' : `; batch ${escapeXml(material.batch)}`;
  return `<header class="head"><div><h1>Run sheet of ${escapeXml(job.name)}</h1>
<div>${sayCount(totals.sheets, 'sheet')}${copies}. Files ${sayNumber(job.widthMm)} x ${sayNumber(job.heightMm)} mm.</div>
<div class="hash">drawing SHA-256 ${escapeXml(job.sha256)}</div></div>
<dl><dt>Shop</dt><dd>${escapeXml(shop)}</dd><dt>Machine</dt><dd>${escapeXml(machine.name)}</dd><dt>Material</dt><dd>${escapeXml(material.name)}${batch}</dd><dt>Day</dt><dd><span class="write"></span></dd><dt>By</dt><dd><span class="write"></span></dd></dl></header>`;
}

/** `table: width` and `table: height` as `table: width, height`. */
function groupItems(items: readonly string[]): readonly string[] {
  const groups = new Map<string, string[]>();
  for (const item of items) {
    const at = item.indexOf(': ');
    const key = at < 0 ? item : item.slice(0, at);
    groups.set(key, [...(groups.get(key) ?? []), ...(at < 0 ? [] : [item.slice(at + 2)])]);
  }
  return [...groups].map(([key, rest]) => (rest.length === 0 ? key : `${key}: ${rest.join(', ')}`));
}

function printList(title: string, words: string, items: readonly string[]): string {
  if (items.length === 0) return '';
  return `<div class="box"><h3>${title}</h3><p>${words}</p><div class="small">${groupItems(items).map(escapeXml).join('<br>')}</div></div>`;
}

/** What must be known before the machine starts. */
function printWarnings({ missing, untested, oldNews, notes }: RunSheet): string {
  return [
    printList('Missing', 'Nobody entered these figures, and none was made up:', missing),
    printList(
      'Run a test strip first',
      `${untested.length} ${untested.length === 1 ? 'figure is an' : 'figures are'} untested starting ${untested.length === 1 ? 'point' : 'points'} that nobody tried on this material:`,
      untested,
    ),
    printList('Old news', 'Found on another batch than the one at the machine; try them again:', oldNews),
    printList('Look to this', 'The figures of the shop and the files do not say it all:', notes),
  ].join('\n');
}

function printOrder({ passes, order, totals }: RunSheet): string {
  const why =
    order.reason === null
      ? `Reason for the order: ${MISSING}`
      : `<b>${escapeXml(order.name!)}.</b> ${escapeXml(order.reason)}`;
  const rows = passes.map((pass) => {
    const { name, tool, tiesOf, register, time } = pass;
    return `<tr><td class="n">${stepNumber(pass)}</td><td><b>${escapeXml(name)}</b></td><td>${tool === null ? 'not on this machine' : escapeXml(tool.name)}</td><td>${register.side === 'front' ? 'front' : 'reverse'}</td><td>${tiesOf === null ? sayRegister(register.to) : 'stays as it lies'}</td><td class="n">${tool === null ? '' : sayTime(time.perSheetS)}</td><td class="n">${tool === null ? '' : sayTime(time.perRunS)}</td></tr>`;
  });
  return `<h2>Passes in order</h2><p>${why}</p>
<table><tr><th class="n" scope="col">&#8470;</th><th scope="col">Pass</th><th scope="col">Tool</th><th scope="col">Side up</th><th scope="col">Registers to</th><th class="n" scope="col">A sheet</th><th class="n" scope="col">${sayCount(totals.sheets, 'sheet')}</th></tr>
${rows.join('\n')}</table>`;
}

function printCautions({ cautions }: RunSheet): string {
  const items = cautions.map(
    ({ level, sign, text }) =>
      `<div class="caution">${drawSign(sign)}<div><b>${level}.</b> ${escapeXml(text)}</div></div>`,
  );
  return `<h2>Before you touch the machine</h2>\n${items.join('\n')}`;
}

function printTotals({ totals, motion, passes }: RunSheet): string {
  const tools = passes.filter(({ tool, lines }) => tool !== null && lines !== null).map(({ name }) => escapeXml(name));
  const source = motion.fitted
    ? `Acceleration, lift and start are fitted to ${motion.runs} timed runs${motion.residualS === null ? '' : `, which they miss by ${sayNumber(motion.residualS)} s in the mean`}.`
    : `Acceleration, lift and start are as entered; ${motion.runs} timed ${motion.runs === 1 ? 'run is' : 'runs are'} in the profile, three or more settle them.`;
  return `<h2>Time for ${sayCount(totals.sheets, 'sheet')} on this machine</h2>
<table><tr><th scope="col">Way of working</th><th scope="col">What it takes</th><th class="n" scope="col">Time</th></tr>
<tr><td><b>Pass by pass</b></td><td>All sheets through one pass, then the tool is changed: one mounting per pass, every sheet laid anew for every pass; ties while it lies.</td><td class="n">${sayTime(totals.passByPassS)}</td></tr>
<tr><td><b>Tool changes per sheet</b></td><td>Each sheet stays lying through passes that follow each other on this machine on one side: laid once, a tool change for every pass and sheet.</td><td class="n">${sayTime(totals.toolChangesPerSheetS)}</td></tr></table>
<p class="small">Counted: ${tools.join(', ') || 'no tool pass'}. ${source}</p>`;
}

function printBudgets({ budgets, figures }: RunSheet): string {
  const cell = (pair: string, way: string): string => {
    const found = budgets.find((budget) => budget.pair === pair && budget.way === way)!;
    return `<td class="n">${found.totalMm === null ? MISSING : `${sayNumber(found.totalMm, 3)} mm`}</td><td class="small">${found.formula}</td>`;
  };
  const row = (pair: string): string =>
    `<tr><th scope="row">${pair}</th>${cell(pair, 'lay')}${cell(pair, 'marks')}</tr>`;
  const named = (['layMm', 'marksMm', 'headMm'] as const).map((key) => {
    const figure = figures[key];
    return `${key.replace('Mm', '')} ${figure === null ? MISSING : `<b>${sayNumber(figure.value, 3)} mm</b> ${sayOrigin(figure)}`}`;
  });
  return `<h2>Register: two ways to run it</h2>
<table><tr><th></th><th colspan="2" scope="col">Crease, print, cut, each by lay</th><th colspan="2" scope="col">Print first, every tool reads its marks</th></tr>
${row('print to tool')}
${row('tool to tool')}</table>
<p class="small">Root of the squares of the shop&#39;s own figures, one standard deviation each, taken as independent. By lay, no tool runs over the printed face; by marks, it does not matter where on the sheet the print lies.</p>
<table><tr>${named.map((text) => `<td>${text}</td>`).join('')}</tr></table>`;
}

function printMaterial({ material, need, machine }: RunSheet): string {
  const { caliperMm, grammageGsm, grain } = material;
  const grainWords = grain === null ? MISSING : grain.value === 'along-width' ? 'along the width' : 'along the height';
  const fits = machine.fits === null ? MISSING : machine.fits ? 'yes' : '<b>no</b>';
  const show = (text: string | null, figure: Parameters<typeof sayOrigin>[0] | null): string =>
    `<td>${text ?? MISSING}${figure === null ? '' : sayOrigin(figure)}</td>`;
  return `<h2>Material needed</h2>
<table><tr><th scope="col">Sheets</th><th scope="col">Sheet</th><th scope="col">Area, mass</th><th scope="col">Caliper</th><th scope="col">Grammage</th><th scope="col">Grain</th><th scope="col">Fits the machine</th></tr>
<tr><td>${need.sheets} + ${need.spareSheets === null ? MISSING : need.spareSheets} spare</td><td>${sayNumber(need.sheetWidthMm)} x ${sayNumber(need.sheetHeightMm)} mm</td><td>${sayNumber(need.areaM2, 2)} m&#178;, ${need.massKg === null ? MISSING : `${sayNumber(need.massKg, 2)} kg`}</td>${show(caliperMm === null ? null : `${sayNumber(caliperMm.value, 3)} mm`, caliperMm)}${show(grammageGsm === null ? null : `${sayNumber(grammageGsm.value)} g/m&#178;`, grammageGsm)}${show(grainWords, grain)}<td>${fits}</td></tr></table>`;
}

const SIGN_OFF = `<div class="sign-off"><div>Sheets good</div><div>Sheets spoilt, and by what</div><div>Day and signature</div></div>`;

/** The page. */
export function printRunSheet(sheet: RunSheet, page: PageFacts): string {
  const cards = sheet.passes.map((pass, i) => {
    const facts = page.passes[i]!;
    const bytes = page.files.find(({ name }) => name === pass.file.name)?.bytes ?? new Uint8Array();
    const picture = drawPass({
      job: sheet.job,
      role: pass.role,
      origin: pass.tool === null ? null : (sheet.machine.origin?.value ?? null),
      mmPerPx: page.mmPerPx,
      turn: facts.turnedFile === null ? null : facts.turn,
      lines: facts.lines,
      around: pass.tiesOf === null ? null : (page.passes.find(({ name }) => name === pass.tiesOf)?.lines ?? []),
      bytes,
    });
    return printPassCard(pass, sheet, picture);
  });
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Run sheet of ${escapeXml(sheet.job.name)}</title>
<meta name="viewport" content="width=device-width"><style>${RUN_SHEET_STYLE}</style></head><body>
${printHead(sheet)}
${printCautions(sheet)}
${printWarnings(sheet)}
${printOrder(sheet)}
${printMaterial(sheet)}
${printTotals(sheet)}
${printBudgets(sheet)}
<h2>Pass by pass</h2>
${cards.join('\n')}
${SIGN_OFF}
</body></html>
`;
}
