// Joins the program and what it uses into few files: two hundred small ones take five times as long to load.
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';
import { findPackageFolder, tellLicences } from './tell-licences.js';

const root = new URL('../', import.meta.url);
const dist = new URL('dist/', root);
const { dependencies, peerDependencies } = JSON.parse(readFileSync(new URL('package.json', root), 'utf8'));
const outside = Object.keys({ ...dependencies, ...peerDependencies });

/** What is installed beside the package and loaded from there. */
function staysOutside(id) {
  return id.startsWith('node:') || outside.some((name) => id === name || id.startsWith(`${name}/`));
}

for (const name of existsSync(dist) ? readdirSync(dist, { recursive: true, encoding: 'utf8' }) : []) {
  if (name.endsWith('.js')) rmSync(new URL(name.replaceAll('\\', '/'), dist));
}

const bundle = await rolldown({
  cwd: fileURLToPath(root),
  input: {
    index: 'src/index.ts',
    'cli/main': 'src/cli/main.ts',
    'ticket/ticket-schema': 'src/ticket/ticket-schema.ts',
  },
  external: staysOutside,
  platform: 'neutral',
  resolve: {
    conditionNames: ['import', 'default'],
    mainFields: ['module', 'main'],
    extensionAlias: { '.js': ['.ts', '.js'] },
    symlinks: true,
  },
});
const { output } = await bundle.write({
  dir: fileURLToPath(dist),
  format: 'esm',
  chunkFileNames: 'parts/[name]-[hash].js',
  minify: false,
});
await bundle.close();

const modules = output.flatMap((chunk) => Object.keys(chunk.modules ?? {}));
const folders = new Set(modules.map(findPackageFolder).filter((folder) => folder !== null));
writeFileSync(new URL('third-party.txt', dist), tellLicences(folders));
