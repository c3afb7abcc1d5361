// The artwork that the corpora runs go over.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

function listSvgs(folder: string): readonly string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.svgz?$/.test(name))
    .map((name) => join(folder, name))
    .sort();
}

/** Paths of all drawings of openmoji. */
export function listOpenmoji(): readonly string[] {
  const manifest = createRequire(import.meta.url).resolve('openmoji/package.json');
  return listSvgs(join(dirname(manifest), 'src'));
}

/** Paths of the first 500 files of openclipart that hold layers; none where it is not installed. */
export function listLayeredOpenclipart(): readonly string[] {
  return listSvgs('/usr/share/openclipart/svg')
    .filter((path) => !path.includes('signs_and_symbols'))
    .filter((path) => /groupmode="layer"/.test(readFileSync(path, 'latin1')))
    .slice(0, 500);
}
