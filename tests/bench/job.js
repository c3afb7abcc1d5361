// One measured job in a process of its own: node job.js WAY FILE FOLDER. It says time and memory as JSON.
import { closeSync, openSync, readFileSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';

const [way, file, folder] = process.argv.slice(2);

/** The floor: the same bytes in and out. */
function copyBytes() {
  const bytes = readFileSync(file);
  const third = Math.ceil(bytes.length / 3);
  for (let i = 0; i < 3; i += 1) writeFileSync(join(folder, `part-${i}`), bytes.subarray(i * third, (i + 1) * third));
}

/** The script that most people would write. */
async function runNaive() {
  const { DOMParser, XMLSerializer } = await import('@xmldom/xmldom');
  const layers = ['Artwork', 'Crease', 'Cut'];
  for (const kept of layers) {
    const svg = new DOMParser().parseFromString(readFileSync(file, 'utf8'), 'image/svg+xml');
    for (const group of Array.from(svg.documentElement.childNodes)) {
      const id = group.nodeType === 1 ? group.getAttribute('id') : kept;
      if (layers.includes(id) && id !== kept) svg.documentElement.removeChild(group);
    }
    writeFileSync(join(folder, `${kept}.svg`), new XMLSerializer().serializeToString(svg));
  }
}

async function runPinbar(options, witness) {
  const { DEFAULT_TICKET, split } = await import('../../dist/index.js');
  const job = await split(readFileSync(file), { ...DEFAULT_TICKET, witness }, { fileName: 'bench.svg', ...options });
  const outcome = options.verify === false ? 'not-verified' : 'in-register';
  if (job.outcome !== outcome)
    throw new Error(`${job.outcome}: ${job.findings.map((item) => item.message).join('\n')}`);
  for (const made of [...job.files, job.manifest, job.proofPicture]) {
    const file = openSync(join(folder, made.name), 'w');
    for (const piece of made.pieces) writeSync(file, piece);
    closeSync(file);
  }
}

const WAYS = {
  floor: copyBytes,
  naive: runNaive,
  split: () => runPinbar({ verify: false }, 'never'),
  'read-back': () => runPinbar({}, 'never'),
  both: () => runPinbar({}, 'always'),
};

const begin = performance.now();
await WAYS[way]();
const ms = performance.now() - begin;
const { user, system } = process.cpuUsage();
const cpuMs = (user + system) / 1000;
const peakMb = process.resourceUsage().maxRSS / 1024;
process.stdout.write(`${JSON.stringify({ ms, cpuMs, peakMb })}\n`);
