// The measured process: splits files of growing size, and tells what processor time each took at best.
import { appendFileSync, readFileSync } from 'node:fs';
import { PinbarError, readTicket, split } from '../../dist/index.js';

const ROUNDS = 3;

/** How a split ends: an outcome, or the code of an error. */
async function run(bytes, ticket) {
  try {
    return (await split(bytes, readTicket(ticket ?? { pinbar: 1 }), { fileName: 'art.svg' })).outcome;
  } catch (error) {
    if (error instanceof PinbarError) return error.code;
    throw error;
  }
}

/** A time as long as this is no longer noise, and one round of it is enough; seconds. */
const ENOUGH_SECONDS = 0.5;

/** Processor seconds of a split at best, this process as a whole, and how it ends. */
async function measure(bytes, ticket) {
  let seconds = Number.POSITIVE_INFINITY;
  let end = '';
  for (let round = 0, spent = 0; round < ROUNDS && spent < ENOUGH_SECONDS; round += 1) {
    globalThis.gc?.();
    const before = process.cpuUsage();
    end = await run(bytes, ticket);
    const { user, system } = process.cpuUsage(before);
    seconds = Math.min(seconds, (user + system) / 1e6);
    spent += seconds;
  }
  return { seconds, end };
}

const [listPath, reportPath] = process.argv.slice(2);
for (const { name, paths, ticket } of JSON.parse(readFileSync(listPath, 'utf8'))) {
  const files = paths.map((path) => new Uint8Array(readFileSync(path)));
  // What is compiled while it runs must not be counted as the smallest file's.
  for (let i = 1; i < ROUNDS; i += 1) await run(files[0], ticket);
  const measured = [];
  for (const bytes of files) measured.push(await measure(bytes, ticket));
  const [ends, seconds] = [measured.map(({ end }) => end), measured.map(({ seconds }) => seconds)];
  appendFileSync(reportPath, `${JSON.stringify({ name, ends, seconds })}\n`);
}
