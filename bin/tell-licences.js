// Name, version and licence of packages that are joined into what is built, as their licences ask.
import { readdirSync, readFileSync } from 'node:fs';

/** Folder of the package that a module comes from, or null for one of our own. */
export function findPackageFolder(path) {
  return /^.*\/node_modules\/(?:@[^/]+\/)?[^/]+\//.exec(path.replaceAll('\\', '/'))?.[0] ?? null;
}

/** The texts of some packages, one after the other. */
export function tellLicences(folders) {
  const texts = [...folders].sort().map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(`${folder}package.json`, 'utf8'));
    const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
    if (file === undefined) throw new Error(`${name} brings no licence text`);
    return `${name} ${version} (${license})\n\n${readFileSync(folder + file, 'utf8').trim()}\n`;
  });
  return texts.join(`\n${'-'.repeat(80)}\n\n`);
}
