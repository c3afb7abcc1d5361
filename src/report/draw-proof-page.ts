// The proof as a page: one file that shows the passes over each other and what was proved, without script; with script it measures.

import { escapeXml } from '../model/escape-xml.js';
import { isToolpath } from '../model/pass.js';
import { encodeBase64, encodeUtf8, sha256Hex } from '../model/platform.js';
import type { ExtentMm } from '../model/proof.js';
import { sayCount } from '../model/say-count.js';
import { joinPieces } from '../model/sheet.js';
import { PINBAR_VERSION } from '../model/version.js';
import { listPanels, summariseSolid } from './describe-solid.js';
import { describeJudges, type ProofFacts } from './draw-proof.js';
import { drawSolid } from './draw-solid.js';
import { writeProofScript } from './proof-page-script.js';
import { styleProofPage } from './proof-page-style.js';

/** Together larger files are not drawn into the page, bytes: browsers would no longer open it at once. */
const LARGEST_BYTES = 32 * 1024 * 1024;
const MOST_FINDINGS = 200;

/** The hash of a text as a content security policy names it. */
async function sourceHash(text: string): Promise<string> {
  const hex = await sha256Hex([encodeUtf8(text)]);
  const bytes = Uint8Array.from(hex.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
  return `'sha256-${encodeBase64(bytes)}'`;
}

/** The order in which sheets lie: print below, lines of the tools above, so that the lines are seen. */
function stackPasses({ assignment }: ProofFacts): readonly number[] {
  const passes = assignment.passes.map((_, index) => index);
  const lies = (index: number) => (isToolpath(assignment.passes[index]!.role) ? 1 : 0);
  return passes.sort((a, b) => lies(a) - lies(b) || a - b);
}

/** The passes as images, each a document of its own: ids and style sheets stay apart, and nothing in an image can run. */
function drawSheet(facts: ProofFacts): string {
  const total = facts.files.reduce((sum, file) => sum + file.byteLength, 0);
  const { widthMm, heightMm } = facts;
  const ratio = `style="aspect-ratio:${widthMm}/${heightMm}"`;
  if (total > LARGEST_BYTES) {
    return `<div class="sheet" ${ratio}><p>The files are too large to be shown in a page; what is said below holds.</p>${drawMeasure(facts)}</div>`;
  }
  const images = stackPasses(facts).map((index) => {
    const { name } = facts.assignment.passes[index]!;
    const data = encodeBase64(joinPieces(facts.files[index]!.pieces));
    return `<img class="pass-${index + 1}" alt="Pass ${index + 1}, ${escapeXml(name)}" src="data:image/svg+xml;base64,${data}">`;
  });
  return `<div class="sheet" ${ratio}>${images.join('\n')}${drawMeasure(facts)}</div>`;
}

/** Where the measured line is drawn, over art of any colour: dark on a light rim. */
function drawMeasure({ widthMm, heightMm }: ProofFacts): string {
  const line = (colour: string, width: number) =>
    `<path fill="none" stroke="${colour}" stroke-width="${width}" vector-effect="non-scaling-stroke"/>`;
  return `<svg viewBox="0 0 ${widthMm} ${heightMm}" data-height="${heightMm}" aria-hidden="true">${line('#fff', 5)}${line('#111', 2)}</svg>`;
}

/** The boxes that show and hide passes, and the sizes; siblings of the board, so that the style sheet alone can heed them. */
function drawControls({ assignment }: ProofFacts): string {
  const passes = assignment.passes.map(
    ({ order, name }, i) =>
      `<input type="checkbox" id="show-${i + 1}" checked><label for="show-${i + 1}">${order} ${escapeXml(name)}</label>`,
  );
  const size = (id: string, words: string, checked = '') =>
    `<input type="radio" name="size" id="size-${id}"${checked}><label for="size-${id}">${words}</label>`;
  const sizes = [size('fit', 'whole sheet', ' checked'), size('true', 'true size'), size('large', 'four times')];
  return `${passes.join('\n')}<span class="break"></span>\n${sizes.join('\n')}`;
}

function sayExtent(extent: ExtentMm | null): string {
  if (extent === null) return 'nothing';
  return `${extent.width.toFixed(2)} x ${extent.height.toFixed(2)} mm from ${extent.x.toFixed(2)}, ${extent.y.toFixed(2)}`;
}

function listPasses({ assignment, files, proof }: ProofFacts): string {
  const rows = assignment.passes.map((pass, i) => {
    const shapes = sayCount(proof.passes[i]?.shapes ?? 0, 'shape');
    const extent = sayExtent(proof.passes[i]?.drawnExtentMm ?? null);
    const file = files[i]!;
    return `<tr><td>${pass.order}</td><th scope="row">${escapeXml(pass.name)}</th><td>${escapeXml(pass.role)}</td><td>${shapes}</td><td>${extent}</td><td class="code">${escapeXml(file.name)}</td><td class="code">${file.sha256}</td></tr>`;
  });
  const head = ['Run', 'Pass', 'What it does', 'Art', 'Draws', 'File', 'SHA-256'].map(
    (word) => `<th scope="col">${word}</th>`,
  );
  return `<div class="wide" tabindex="0" role="region" aria-label="The passes"><table><thead><tr>${head.join('')}</tr></thead><tbody>${rows.join('\n')}</tbody></table></div>`;
}

function listFindings({ findings }: ProofFacts): string {
  if (findings.length === 0) return '<p>Nothing.</p>';
  const items = findings
    .slice(0, MOST_FINDINGS)
    .map(
      ({ severity, message, remedy }) =>
        `<li><b>${severity}</b>: ${escapeXml(message)}${remedy === undefined || remedy === '' ? '' : `<br><span class="quiet">${escapeXml(remedy)}</span>`}</li>`,
    );
  const more = findings.length - items.length;
  return `<ol>${items.join('\n')}</ol>${more > 0 ? `<p>and ${more} more; see manifest.json</p>` : ''}`;
}

function drawBlank({ solid }: ProofFacts): string {
  if (solid === null) return '';
  const [x, y, width, height] = solid.extentMm;
  const scale = Math.min(540 / width, 540 / height);
  const edge = 4 / scale;
  const box = [x - edge, y - edge, width + 2 * edge, height + 2 * edge].map((value) => Math.round(value * 1000) / 1000);
  const panels = listPanels(solid).map(
    ({ depth, words }) => `<li style="padding-left:${Math.min(depth, 8)}em">${escapeXml(words)}</li>`,
  );
  return `<h2>The blank, seen from the side that is drawn</h2><p>${escapeXml(summariseSolid(solid))}</p>
<div class="blank"><svg viewBox="${box.join(' ')}" width="540" role="img" aria-label="The blank with its panels, numbered">${drawSolid(solid, scale)}</svg><ul>${panels.join('\n')}</ul></div>`;
}

/**
 * The page as HTML text. Nothing in it is loaded from outside, and its own policy forbids it.
 *
 * Passes are shown and hidden, and the size is changed, without script; the script only measures.
 */
export async function drawProofPage(facts: ProofFacts): Promise<string> {
  const { stem, widthMm, heightMm, assignment, proof } = facts;
  const script = writeProofScript(widthMm);
  const policy = `default-src 'none'; img-src data:; style-src 'unsafe-inline'; script-src ${await sourceHash(script)}`;
  const verdict = proof.inRegister
    ? '<p class="good">In register.</p>'
    : '<p class="bad">NOT proved to be in register.</p>';
  const judges = describeJudges(proof).map((words) => `<li>${escapeXml(words)}</li>`);
  const extents = proof.equalExtents ? 'All files draw the same extent.' : 'The files draw different extents.';
  return `<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width,initial-scale=1"><title>Proof of ${escapeXml(stem)}</title>
<style>${styleProofPage(assignment.passes.length, widthMm, heightMm)}</style></head>
<body><header><h1>${escapeXml(stem)}</h1>${verdict}
<p class="quiet">${widthMm.toFixed(2)} x ${heightMm.toFixed(2)} mm, ${sayCount(assignment.passes.length, 'pass', 'passes')}; pinbar ${PINBAR_VERSION}</p></header>
<main><section class="sheets" aria-label="The passes over each other">
${drawControls(facts)}
<div class="board" tabindex="0" role="group" aria-label="The sheet">
${drawSheet(facts)}</div>
<output class="measure"></output></section>
<h2>What the judges saw</h2><ul>${judges.join('\n')}<li>${extents}</li></ul>
<h2>The passes, in the order of the runs</h2>${listPasses(facts)}
<h2>What was found</h2>${listFindings(facts)}
${drawBlank(facts)}</main>
<script>${script}</script></body></html>
`;
}
