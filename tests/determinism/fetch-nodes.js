// Fetches the versions of Node that the hash of all files is compared over into out/nodes, by npm; the current one needs no fetching.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';

const VERSIONS = ['20', '22', '24'];
const root = join(import.meta.dirname, '..', '..');
const platform = process.platform === 'win32' ? 'win' : process.platform;
const name = `node-${platform}-${process.arch}`;

for (const version of VERSIONS) {
  const folder = join(root, 'out', 'nodes', version);
  if (process.versions.node.startsWith(`${version}.`) || existsSync(join(folder, 'node_modules', name))) continue;
  mkdirSync(folder, { recursive: true });
  const options = ['--no-save', '--no-package-lock', '--ignore-scripts', '--no-audit', '--no-fund'];
  const { status } = spawnSync('npm', ['install', '--prefix', folder, ...options, `${name}@${version}`], {
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  });
  if (status !== 0) process.exitCode = 1;
}
