#!/usr/bin/env node
// The command. Answers --version by itself, since loading the rest takes longer than that answer should.
import { readFileSync } from 'node:fs';

const args = process.argv.slice(2);

if (args.length === 1 && (args[0] === '--version' || args[0] === '-V')) {
  const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));
  process.stdout.write(`${version}\n`);
} else {
  const { main } = await import('../dist/cli/main.js');
  // Not process.exit: what is still in the pipe of standard output would be cut off.
  process.exitCode = await main(args);
}
