// Makes a fresh clone ready: installs what the lock file says and builds, each only where it is out of date.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** Time of the last change of a file, or 0 where there is none. */
function changedAt(path) {
  return existsSync(path) ? statSync(path).mtimeMs : 0;
}

/** Time of the last change of anything in a folder. */
function newestIn(folder) {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  return names.reduce((newest, name) => Math.max(newest, changedAt(join(folder, name))), 0);
}

function run(command, args) {
  process.stderr.write(`> ${command} ${args.join(' ')}\n`);
  const shell = process.platform === 'win32';
  const { status } = spawnSync(command, args, { cwd: root, stdio: ['ignore', 2, 2], shell });
  if (status !== 0) process.exit(status ?? 1);
}

const installed = changedAt(join(root, 'node_modules', '.package-lock.json'));
if (installed < changedAt(join(root, 'package-lock.json'))) run('npm', ['ci', '--ignore-scripts']);

const sources = Math.max(
  newestIn(join(root, 'src')),
  newestIn(join(root, 'bin')),
  changedAt(join(root, 'tsconfig.json')),
  changedAt(join(root, 'package.json')),
);
if (changedAt(join(root, 'dist', 'built')) < sources) run('npm', ['run', '--silent', 'build']);
