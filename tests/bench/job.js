// One measured job in a process of its own: node job.js WAY FILE FOLDER. It says time and memory as JSON.
import { closeSync, openSync, readdirSync, readFileSync, writeFileSync, writeSync } from 'node:fs';
import { basename, join } from 'node:path';
import { lookAtBytes } from './look-at-bytes.js';

const [way, file, folder] = process.argv.slice(2);
const LAYERS = ['Artwork', 'Crease', 'Cut'];

/** The floor: the same bytes in and out. */
function copyBytes() {
  const bytes = readFileSync(file);
  const third = Math.ceil(bytes.length / 3);
  for (let i = 0; i < 3; i += 1) writeFileSync(join(folder, `part-${i}`), bytes.subarray(i * third, (i + 1) * third));
}

/** The script that most people would write. */
async function runNaive(path = file) {
  const { DOMParser, XMLSerializer } = await import('@xmldom/xmldom');
  for (const kept of LAYERS) {
    const svg = new DOMParser().parseFromString(readFileSync(path, 'utf8'), 'image/svg+xml');
    for (const group of Array.from(svg.documentElement.childNodes)) {
      const id = group.nodeType === 1 ? group.getAttribute('id') : kept;
      if (LAYERS.includes(id) && id !== kept) svg.documentElement.removeChild(group);
    }
    writeFileSync(join(folder, `${basename(path)}.${kept}.svg`), new XMLSerializer().serializeToString(svg));
  }
}

/** The same with one parse and a tree made for speed. */
async function runCheerio() {
  const { load } = await import('cheerio/slim');
  const text = readFileSync(file, 'utf8');
  for (const kept of LAYERS) {
    const $ = load(text, { xml: true });
    for (const layer of LAYERS) if (layer !== kept) $(`svg > #${layer}`).remove();
    writeFileSync(join(folder, `${kept}.svg`), $.xml());
  }
}

/** The same with the smallest tree there is; it loses spaces in text. */
async function runTxml() {
  const { parse, stringify } = await import('txml');
  const tree = parse(readFileSync(file, 'utf8'));
  for (const kept of LAYERS) {
    const parted = tree.map((node) =>
      node.tagName !== 'svg'
        ? node
        : {
            ...node,
            children: node.children.filter(
              ({ attributes }) => !LAYERS.includes(attributes?.id) || attributes.id === kept,
            ),
          },
    );
    writeFileSync(join(folder, `${kept}.svg`), stringify(parted));
  }
}

async function runPinbar(options, witness, path = file) {
  const { DEFAULT_TICKET, split } = await import('../../dist/index.js');
  const fileName = basename(path);
  const job = await split(readFileSync(path), { ...DEFAULT_TICKET, witness }, { fileName, ...options });
  const outcome = options.verify === false ? 'not-verified' : 'in-register';
  if (job.outcome !== outcome)
    throw new Error(`${job.outcome}: ${job.findings.map((item) => item.message).join('\n')}`);
  for (const made of [...job.files, job.manifest, job.proofPicture]) {
    const open = openSync(join(folder, path === file ? made.name : `${fileName}.${made.name}`), 'w');
    for (const piece of made.pieces) writeSync(open, piece);
    closeSync(open);
  }
}

/** Many files one after the other in one process. */
async function runMany(runOne) {
  for (const name of readdirSync(file)) await runOne(join(file, name));
}

const PLAIN = { verify: false, skipChecks: true };
const WAYS = {
  floor: copyBytes,
  least: () => lookAtBytes(file, folder),
  naive: runNaive,
  cheerio: runCheerio,
  txml: runTxml,
  split: () => runPinbar(PLAIN, 'never'),
  checked: () => runPinbar({ verify: false }, 'never'),
  'read-back': () => runPinbar({ skipChecks: true }, 'never'),
  both: () => runPinbar({ skipChecks: true }, 'always'),
  'many-naive': () => runMany(runNaive),
  'many-split': () => runMany((path) => runPinbar(PLAIN, 'never', path)),
  'many-both': () => runMany((path) => runPinbar({}, 'always', path)),
};

const begin = performance.now();
await WAYS[way]();
const ms = performance.now() - begin;
const { user, system } = process.cpuUsage();
const cpuMs = (user + system) / 1000;
const peakMb = process.resourceUsage().maxRSS / 1024;
process.stdout.write(`${JSON.stringify({ ms, cpuMs, peakMb })}\n`);
