// The script that people write for this job; README's table of hazards says what it does to each file.
// node tests/stages/forty-lines.js FILE OUT-FOLDER LAYER...
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DOMParser, XMLSerializer } from '@xmldom/xmldom';

const [file, folder, ...layers] = process.argv.slice(2);
const text = readFileSync(file, 'utf8');

/** The group with this id. */
function findLayer(svg, name) {
  for (const group of Array.from(svg.getElementsByTagName('g'))) {
    if (group.getAttribute('id') === name) return group;
  }
  return null;
}

/** The drawing with one layer left in it. */
function keepLayer(name) {
  const svg = new DOMParser().parseFromString(text, 'image/svg+xml');
  for (const other of layers) {
    if (other === name) continue;
    const group = findLayer(svg, other);
    group.parentNode.removeChild(group);
  }
  return new XMLSerializer().serializeToString(svg);
}

for (const name of layers) {
  writeFileSync(join(folder, `${name}.svg`), keepLayer(name));
}
