// Does a written file hold anything that runs, moves or loads?
import { type Finding, finding } from '../model/finding.js';
import { placeOf } from '../source/locate.js';
import { readAttribute, readText } from '../source/read-attribute.js';
import { type Source, SVG_NAMESPACE } from '../source/source.js';

const ACTIVE =
  /^(?:script|handler|listener|foreignObject|animate|animateColor|animateMotion|animateTransform|set|discard|iframe|object|embed|audio|video|link)$/;
/** After unescaping and dropping comments: an import, or an address that is neither a fragment nor an embedded picture or font. */
const LOADING_CSS =
  /@import|expression\(|(?:(?:url|src)\(\s*["']?|(?:image|image-set|cross-fade)\([^()]*?["'])(?!\s*(?:["']?\s*)?(?:#|data:image\/(?:png|jpe?g|gif|webp)|data:font|data:application\/(?:x-)?font|\)|["']))/i;

function plainCss(css: string): string {
  return css
    .replace(/\/\*[\s\S]*?(?:\*\/|$)/g, '')
    .replace(/\\([0-9a-fA-F]{1,6})[ \t\r\n\f]?/g, (_, hex: string) => {
      const code = Number.parseInt(hex, 16);
      return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : '\ufffd';
    })
    .replace(/\\(.)/g, '$1')
    .replace(/@namespace\s+(?:[-\w]+\s+)?(?:url\([^()"';]*\)|url\(\s*"[^"\n]*"\s*\)|"[^"\n]*"|'[^'\n]*')\s*;/gi, '');
}

function judgeAttribute(qualified: string, local: string, value: string): string | null {
  if (/^on/i.test(local) && !qualified.includes(':')) return `handler ${qualified}`;
  if (local === 'href' && !/^\s*(?:#|data:image\/(?:png|jpe?g|gif|webp)[;,]|$)/i.test(value))
    return `reference to "${value.slice(0, 60)}"`;
  if (qualified === 'xml:base' || /^(?:src|srcdoc|formaction|ping)$/.test(qualified)) return `attribute ${qualified}`;
  if (!/[(\\]/.test(value) || /^(?:d|points|transform|id|class)$/.test(local)) return null;
  return LOADING_CSS.test(plainCss(value)) ? `${qualified}="${value.slice(0, 60)}"` : null;
}

function tell(sheet: Source, row: number, file: string, what: string): Finding {
  return finding('verify/active-content', {
    message: `${file} holds a ${what}; no sheet may run, move or load anything.`,
    remedy: 'This is a fault of pinbar, or the file was changed after it was made. Do not use it.',
    place: { ...placeOf(sheet, row), file },
    data: { what },
  });
}

/** Names whose values cannot load; their bytes need no second look. */
const QUIET = new Set('d points transform id class x y width height cx cy r rx ry x1 y1 x2 y2 viewBox'.split(' '));

/** Everything in a file that runs, moves or loads; empty for a sheet as it should be. */
export function findActiveContent(sheet: Source, file: string): readonly Finding[] {
  const { elements } = sheet;
  const { attributes } = elements;
  const findings: Finding[] = [];
  const active = elements.names.map((name) => ACTIVE.test(name.local));
  const isStyle = elements.names.map((name) => name.namespace === SVG_NAMESPACE && name.local === 'style');
  const quiet = attributes.names.map((name) => name.namespace === '' && QUIET.has(name.local));
  for (let row = 0; row < elements.count; row += 1) {
    const name = elements.name[row]!;
    if (active[name]) findings.push(tell(sheet, row, file, `${elements.names[name]!.local} element`));
    if (isStyle[name] && LOADING_CSS.test(plainCss(readText(sheet, row)))) {
      findings.push(tell(sheet, row, file, 'style sheet that loads from outside'));
    }
    for (let a = elements.attributeStart[row]!; a < elements.attributeStart[row + 1]!; a += 1) {
      const attribute = attributes.names[attributes.name[a]!]!;
      if (quiet[attributes.name[a]!] || attribute.qualified.startsWith('xmlns')) continue;
      const what = judgeAttribute(attribute.qualified, attribute.local, readAttribute(sheet, a));
      if (what !== null) findings.push(tell(sheet, row, file, what));
    }
  }
  return findings;
}
