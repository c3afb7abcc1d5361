// The attacked process: splits the files of a list in turn, and tells how each ended, what it cost, and what its sheets hold.
import { appendFileSync, readFileSync } from 'node:fs';
import { joinPieces, PinbarError, readTicket, split } from '../../dist/index.js';
import { listActive } from './list-active.js';

const decoder = new TextDecoder();

/** How a call ended: an outcome, an error of pinbar's own, or one that is not. */
async function endOf(call) {
  try {
    const job = await call();
    return { kind: job.outcome, codes: [...new Set(job.findings.map((item) => item.code))], job };
  } catch (error) {
    if (error instanceof PinbarError) return { kind: 'error', codes: [error.code], says: error.message.slice(0, 300) };
    return { kind: 'untyped', codes: [], says: String(error?.stack ?? error).slice(0, 600) };
  }
}

/** Each sheet split again must give that sheet. */
async function listUnsteady(job) {
  const unsteady = [];
  for (const [index, file] of job.files.entries()) {
    const rule = { pass: job.assignment.passes[index].role, rest: true };
    const again = await endOf(() =>
      split(joinPieces(file.pieces), readTicket({ pinbar: 1, rules: [rule] }), { fileName: file.name }),
    );
    const same = again.job?.files.length === 1 && again.job.files[0].sha256 === file.sha256;
    if (!same) unsteady.push(`${file.name}: ${again.kind} ${again.codes.join(' ')} ${again.says ?? ''}`);
  }
  return unsteady;
}

async function attack({ name, path, ticket }) {
  const bytes = new Uint8Array(readFileSync(path));
  const cpu = process.cpuUsage();
  const start = performance.now();
  const { job, ...end } = await endOf(() => split(bytes, readTicket(ticket ?? { pinbar: 1 }), { fileName: 'art.svg' }));
  const wall = (performance.now() - start) / 1000;
  const used = process.cpuUsage(cpu);
  const cost = {
    wallSeconds: wall,
    cpuSeconds: (used.user + used.system) / 1e6,
    // Kilobytes on every platform of Node.
    peakMegabytes: process.resourceUsage().maxRSS / 1024,
  };
  const report = {
    name,
    bytes: bytes.length,
    ...end,
    ...cost,
    files: job?.files.length ?? 0,
    active: [],
    unsteady: [],
  };
  if (job === undefined) return report;
  const judge = (file, isProof) =>
    listActive(decoder.decode(joinPieces(file.pieces)), isProof).map((what) => `${file.name}: ${what}`);
  const proof = job.proofPicture === null ? [] : judge(job.proofPicture, true);
  const active = [...job.files.flatMap((file) => judge(file, false)), ...proof];
  const unsteady = await listUnsteady(job);
  const says = job.findings
    .filter((item) => item.severity === 'error')
    .slice(0, 3)
    .map((item) => `${item.code}: ${item.message}`)
    .join('\n');
  return { ...report, says, active: active.slice(0, 20), unsteady };
}

const [listPath, reportPath] = process.argv.slice(2);
for (const item of JSON.parse(readFileSync(listPath, 'utf8'))) {
  const report = await attack(item);
  appendFileSync(reportPath, `${JSON.stringify(report)}\n`);
}
