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

/** Processor seconds of one split, this process as a whole. */
async function measure(bytes, ticket) {
  globalThis.gc?.();
  const before = process.cpuUsage();
  await run(bytes, ticket);
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

const [listPath, reportPath] = process.argv.slice(2);
for (const { name, paths, ticket } of JSON.parse(readFileSync(listPath, 'utf8'))) {
  const files = paths.map((path) => new Uint8Array(readFileSync(path)));
  // What is compiled while it runs must not be counted as the smallest file's.
  for (let i = 1; i < ROUNDS; i += 1) await run(files[0], ticket);
  const ends = [];
  for (const bytes of files) ends.push(await run(bytes, ticket));
  const seconds = [];
  for (const bytes of files) {
    let best = Number.POSITIVE_INFINITY;
    for (let round = 0; round < ROUNDS; round += 1) best = Math.min(best, await measure(bytes, ticket));
    seconds.push(best);
  }
  appendFileSync(reportPath, `${JSON.stringify({ name, ends, seconds })}\n`);
}
