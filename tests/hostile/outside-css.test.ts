// CWE-829 and CWE-918: style that would load from the machine or the network, in every place CSS can stand.
import { attackEach } from './attack-each.js';
import { drawCarton, type HostileCase } from './hostile-case.js';

const GONE = 'in-register split/outside-reference-removed';
const FILE = 'file:///etc/passwd';
const NET = 'http://127.0.0.1:9/x';

function escapeXml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
}

function sheet(css: string): Uint8Array {
  return drawCarton({ first: `<style>${escapeXml(css)}</style>` });
}

function attribute(css: string): Uint8Array {
  return drawCarton({ art: `<rect style="${escapeXml(css)}" x="40" y="35" width="1" height="1"/>` });
}

const SHEETS: readonly (readonly [string, string])[] = [
  ['@import of an address', `@import "${NET}";`],
  ['@import of url()', `@import url(${FILE});`],
  ['@import with media and layer', `@import url("${NET}") layer(a) supports(display:grid) print;`],
  ['@import in capitals', `@IMPORT '${NET}';`],
  ['@import with an escape', `@\\69mport '${NET}';`],
  ['@import with an escape of six digits', `@im\\000070ort '${NET}';`],
  ['@import after a comment', `/* a */@import/**/"${NET}";`],
  ['@import without an end', `@import "${NET}"`],
  ['@import with a string that is not closed', `@import "${NET}`],
  ['@import after rules, where it does not count', `a{}@import "${NET}";`],
  ['@import in @media', `@media print{@import "${NET}";}`],
  ['@import of a data address', '@import "data:text/css,a{}";'],
  ['@font-face', `@font-face{font-family:a;src:url(${NET}) format("woff")}`],
  ['@font-face by the machine', `@font-face{font-family:a;src:local("a"),url('${FILE}')}`],
  ['@namespace and then url()', `@namespace "${NET}";a{fill:url(${NET})}`],
  ['@namespace without an end and a block', `@namespace url(${NET}) x{a{fill:url(${NET})}}`],
  ['@color-profile', `@color-profile a{src:url(${NET})}`],
  ['@document', `@document url(${NET}){a{fill:url(${NET})}}`],
  ['@counter-style with a picture', `@counter-style a{symbols:url(${NET})}`],
  ['@page with a picture', `@page{background:url(${NET})}`],
  ['@keyframes', `@keyframes a{from{fill:url(${NET})}}`],
  ['@supports', `@supports (fill:url(${NET})){a{fill:url(${NET})}}`],
  ['a sheet between signs of a comment of old pages', `<!-- a{fill:url(${NET})} -->`],
  ['a nested rule', `a{b{fill:url(${NET})}}`],
  ['a custom property', `a{--a:url(${NET})}`],
  ['a string that ends at a line', `a{x:"\n;fill:url(${NET})}`],
  ['a string that goes on after a line', `a{x:"\\\n";fill:url(${NET})}`],
  ['an apostrophe in a comment', `/* it's */a{fill:url(${NET})}`],
  ['a quote in an address', `a{b:url(a"b);fill:url(${NET})}`],
  ['a bracket that is not closed', `a{fill:url(${NET}`],
  ['a bracket closed by an escape', `a{fill:url(${NET}\\)`],
  ['a filter', `a{filter:url(${FILE}#f)}`],
  ['a cursor', `a{cursor:url(${NET}),auto}`],
  ['content', `a::before{content:url(${NET})}`],
  ['a binding', `a{-moz-binding:url(${NET}#x)}`],
  ['a behaviour', `a{behavior:url(${NET})}`],
];

const VALUES: readonly (readonly [string, string])[] = [
  ['url() in a fill', `fill:url(${FILE})`],
  ['url() in quotes', `fill:url("${NET}")`],
  ['url() with blanks', `fill:url( \t${NET} )`],
  ['url() in capitals', `fill:URL(${NET})`],
  ['url() by escapes', `fill:\\75 \\72\\6c(${NET})`],
  ['url() by an escape in the address', `fill:url(\\68ttp://127.0.0.1:9/x)`],
  ['url() with an escaped number sign, which is none', `fill:url(x\\#a)`],
  ['url() of another scheme', 'fill:url(//127.0.0.1:9/x)'],
  ['url() of a script', 'fill:url(javascript:alert(1))'],
  ['url() of a page', 'fill:url(data:text/html;base64,PHNjcmlwdD4=)'],
  ['url() of a drawing', 'fill:url(data:image/svg+xml;base64,PHN2Zy8+)'],
  ['url() of a file beside', 'fill:url(other.svg#a)'],
  ['url() with a comment that is none', `fill:url(/**/${NET})`],
  ['url() after a good one', `fill:url(#ground) url(${NET})`],
  ['src()', `fill:src("${NET}")`],
  ['image()', `mask:image("${NET}")`],
  ['image-set()', `mask-image:image-set("${NET}" 1x, "${NET}2" 2x)`],
  ['-webkit-image-set()', `mask-image:-webkit-image-set(url(${NET}) 1x)`],
  ['cross-fade()', `mask-image:cross-fade("${NET}", #fff)`],
  ['a fallback of var()', `fill:var(--none,url(${NET}))`],
  ['expression()', 'fill:expression(alert(1))'],
  ['a shape outside', `shape-outside:url(${NET})`],
  ['a list of pictures', `background:url(${NET}),url(${FILE})`],
  ['the declaration after a broken one', `x:};fill:url(${NET})`],
];

const PROPERTIES = [
  'fill',
  'stroke',
  'clip-path',
  'mask',
  'filter',
  'marker-start',
  'marker-mid',
  'marker-end',
  'marker',
  'cursor',
  'color-profile',
  'font',
];

/** `expression()` loads nothing by itself: no address leads out, but it may not stay either. */
const CASES: readonly HostileCase[] = [
  ...SHEETS.map(([name, css]): HostileCase => ({ name: `sheet: ${name}`, make: () => sheet(css), ends: GONE })),
  ...VALUES.map(([name, css]): HostileCase => ({ name: `attribute: ${name}`, make: () => attribute(css), ends: GONE })),
  ...VALUES.map(
    ([name, css]): HostileCase => ({ name: `rule: ${name}`, make: () => sheet(`#ground{${css}}`), ends: GONE }),
  ),
  ...PROPERTIES.map(
    (property): HostileCase => ({
      name: `attribute of its own: ${property}`,
      make: () => drawCarton({ art: `<rect ${property}="url('${NET}#a')" x="40" y="35" width="1" height="1"/>` }),
      ends: GONE,
    }),
  ),
  {
    name: 'a sheet in CDATA, in pieces',
    make: () => drawCarton({ first: `<style><![CDATA[a{fill:ur]]><!-- x --><![CDATA[l(${NET})}]]></style>` }),
    ends: GONE,
  },
  {
    name: 'a sheet in numbers',
    make: () => drawCarton({ first: `<style>a{fill:u&#114;l&#40;${NET})}</style>` }),
    ends: GONE,
  },
  {
    name: 'a sheet of the pages namespace',
    make: () => drawCarton({ first: `<style xmlns="http://www.w3.org/1999/xhtml">@import "${NET}";</style>` }),
    ends: 'in-register split/foreign-left-out',
  },
  {
    name: 'a sheet of another type',
    make: () => drawCarton({ first: `<style type="text/less">@import "${NET}";</style>` }),
    ends: GONE,
  },
  {
    name: 'a sheet inside a pattern',
    make: () => drawCarton({ first: `<pattern id="p"><style>@import "${NET}";</style></pattern>` }),
    ends: GONE,
  },
  {
    name: 'a link to a sheet',
    make: () => drawCarton({ first: `<link xmlns="http://www.w3.org/1999/xhtml" rel="stylesheet" href="${NET}"/>` }),
    ends: 'in-register split/foreign-left-out',
  },
  {
    name: 'an instruction that names a sheet',
    make: () => drawCarton({ head: `<?xml-stylesheet href="${NET}" type="text/css"?>` }),
    ends: GONE,
  },
  {
    name: 'an instruction that names a transformation',
    make: () => drawCarton({ head: `<?xml-stylesheet href="#x" type="text/xsl"?>` }),
    ends: GONE,
  },
];

attackEach('style from outside', CASES);
