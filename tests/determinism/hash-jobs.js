// Does a fixed set of jobs with what is built and prints one hash over everything that comes out, whatever the order of the jobs.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { inspect, joinPieces, readTicket, split, verify } from '../../dist/index.js';
import { seedChance } from '../bench/draw-layered.js';
import { drawTurned } from './draw-turned.js';

const EMOJI = 50;
const TURNED = 24;
/** Changes one number of one drawing, to show that the hash notices. */
const spoil = process.env.PINBAR_SPOIL === '1';
const samples = join(import.meta.dirname, '..', '..', 'samples');
const emoji = join(dirname(createRequire(import.meta.url).resolve('openmoji/package.json')), 'src');

const EMOJI_TICKET = {
  pinbar: 1,
  marginMm: 25.37,
  userUnitsPerInch: 72,
  rules: [
    { pass: 'ignore', layer: 'grid' },
    { pass: 'cutting', layer: 'line*' },
    { pass: 'print', rest: true },
  ],
};

/** A sort by code units, which no locale changes. */
function byCodeUnit(a, b) {
  return a < b ? -1 : a > b ? 1 : 0;
}

function listSamples() {
  const names = readdirSync(samples);
  return names
    .filter((name) => name.endsWith('.svg'))
    .map((name) => {
      const ticket = name.replace('.svg', '.ticket.json');
      const text = names.includes(ticket) ? readFileSync(join(samples, ticket), 'utf8') : '{"pinbar":1}';
      return { name, bytes: () => readFileSync(join(samples, name)), ticket: JSON.parse(text) };
    });
}

function listEmoji() {
  const paths = readdirSync(emoji, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.svg'))
    .map((name) => name.replaceAll('\\', '/'))
    .sort(byCodeUnit);
  return Array.from({ length: EMOJI }, (_, i) => paths[Math.floor((i * paths.length) / EMOJI)]).map((name) => ({
    name,
    bytes: () => readFileSync(join(emoji, name)),
    ticket: EMOJI_TICKET,
  }));
}

function listTurned() {
  return Array.from({ length: TURNED }, (_, seed) => ({
    name: `turned-${seed}.svg`,
    bytes: () => {
      const text = drawTurned(seed);
      return Buffer.from(spoil && seed === 0 ? text.replace('stroke-width="0.3"', 'stroke-width="0.4"') : text);
    },
    ticket: { pinbar: 1, marginMm: seed % 3 === 0 ? 7.1 : 0, compact: seed % 8 === 0 },
  }));
}

/** Everything that a job gives, as lines of a name and a hash. */
async function doJob({ name, bytes, ticket }) {
  const lines = [];
  const note = (what, data) => lines.push(`${name} ${what} ${createHash('sha256').update(data).digest('hex')}`);
  const text = bytes();
  const job = await split(text, readTicket(ticket), { fileName: name.split('/').at(-1) });
  for (const file of [...job.files, job.manifest, job.proofPicture]) {
    if (file !== null) note(file.name, joinPieces(file.pieces));
  }
  note('findings', JSON.stringify(job.findings));
  note('inspection', JSON.stringify(await inspect(text, { fileName: name })));
  const files = job.files.map((file) => ({ name: file.name, bytes: joinPieces(file.pieces) }));
  if (files.length > 0) note('comparison', JSON.stringify(await verify(files, { name, bytes: text })));
  return { lines, outcome: job.outcome };
}

/** The jobs in the order of a seed; 0 keeps it. */
function shuffle(jobs, seed) {
  if (seed === 0) return jobs;
  const next = seedChance(seed);
  const keyed = jobs.map((job) => ({ job, key: next() }));
  return keyed.sort((a, b) => a.key - b.key).map(({ job }) => job);
}

const order = Number(process.env.PINBAR_ORDER ?? '0');
const atOnce = Number(process.env.PINBAR_AT_ONCE ?? '1');
const jobs = shuffle([...listSamples(), ...listEmoji(), ...listTurned()], order);
const results = [];
for (let i = 0; i < jobs.length; i += atOnce) {
  results.push(...(await Promise.all(jobs.slice(i, i + atOnce).map(doJob))));
}
const lines = results.flatMap((result) => result.lines).sort(byCodeUnit);
const outcomes = {};
for (const { outcome } of results) outcomes[outcome] = (outcomes[outcome] ?? 0) + 1;
const { timeZone, locale } = Intl.DateTimeFormat().resolvedOptions();
const hash = createHash('sha256').update(lines.join('\n')).digest('hex');
process.stdout.write(
  `${JSON.stringify({ hash, jobs: jobs.length, lines: lines.length, outcomes, node: process.versions.node, timeZone, locale })}\n`,
);
