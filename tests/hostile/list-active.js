// Another reader's list of what a written file may not hold: what runs, moves, loads or embeds.
import { tokenize } from 'css-tree';
import { SaxesParser } from 'saxes';

const SVG = 'http://www.w3.org/2000/svg';
const XLINK = 'http://www.w3.org/1999/xlink';
const XML = 'http://www.w3.org/XML/1998/namespace';
const XMLNS = 'http://www.w3.org/2000/xmlns/';

/** Elements of SVG 1.1 and 2 that neither run, move, load nor embed (their element indices, read one by one). */
const HARMLESS = new Set(
  (
    'svg g defs symbol use a switch title desc style path rect circle ellipse line polyline polygon text tspan textPath tref ' +
    'image marker clipPath mask pattern linearGradient radialGradient stop filter feBlend feColorMatrix feComponentTransfer ' +
    'feComposite feConvolveMatrix feDiffuseLighting feDisplacementMap feDistantLight feDropShadow feFlood feFuncA feFuncB ' +
    'feFuncG feFuncR feGaussianBlur feImage feMerge feMergeNode feMorphology feOffset fePointLight feSpecularLighting ' +
    'feSpotLight feTile feTurbulence font font-face font-face-src font-face-name glyph missing-glyph hkern vkern altGlyph ' +
    'altGlyphDef altGlyphItem glyphRef meshgradient meshrow meshpatch hatch hatchpath solidcolor solidColor'
  ).split(' '),
);

/** Attributes of HTML and SVG whose value is loaded, sent or run. */
const LOADING_ATTRIBUTES = new Set(
  (
    'src srcset srcdoc action formaction ping poster data background manifest archive code codebase classid cite longdesc ' +
    'profile usemap dynsrc lowsrc icon'
  ).split(' '),
);

const EMBEDDED = /^data:(?:image\/(?:png|jpe?g|gif|webp)[;,]|font\/|font[;,]|application\/(?:x-)?font)/i;
const RUNS = /(?:javascript|vbscript|livescript|mocha):|data:(?:text|image\/svg|application\/x?html)/i;

/** A browser drops white space and control characters from the front of an address, and tabs and line ends from anywhere. */
function bare(address) {
  return address.replace(/[\t\n\r]/g, '').replace(/^[\u0000-\u0020\u00a0]+/, '');
}

function staysInside(address) {
  const plain = bare(address);
  return plain === '' || plain.startsWith('#') || EMBEDDED.test(plain);
}

function unescapeCss(text) {
  return text.replace(/\\(?:([0-9a-f]{1,6})\s?|([\s\S]))/gi, (_, hex, sign) =>
    hex === undefined ? sign : String.fromCodePoint(Math.min(Number.parseInt(hex, 16) || 0xfffd, 0x10ffff)),
  );
}

const LOADING_CALLS =
  /^(?:url|src|image|image-set|-webkit-image-set|cross-fade|-webkit-cross-fade|paint|element|expression)\($/;

/** What a style sheet or a declaration list loads or runs, by the tokens of CSS Syntax 3. */
function listInCss(css) {
  const found = [];
  /** Names of the open brackets. */
  const open = [];
  let namespaceRule = false;
  tokenize(css, (type, start, end) => {
    const token = css.slice(start, end);
    const plain = unescapeCss(token).toLowerCase();
    if (type === 3 && plain === '@import') found.push(token);
    if (type === 3) namespaceRule = plain === '@namespace';
    if (token === ';' || token === '{') namespaceRule = false;
    if (namespaceRule) return;
    if (type === 7) {
      const address = unescapeCss(token.slice(token.indexOf('(') + 1).replace(/\)$/, ''));
      if (!staysInside(address)) found.push(token);
    }
    if (type === 2 || token === '(') open.push(plain);
    else if (token === ')') open.pop();
    else if (type === 5 && open.some((name) => LOADING_CALLS.test(name))) {
      if (!staysInside(unescapeCss(token.slice(1, -1)))) found.push(`${open.at(-1)}${token}`);
    }
    if (plain === 'expression(') found.push(token);
  });
  return found;
}

function judgeAttribute({ local, prefix, uri, name, value }) {
  if (uri === XMLNS || name === 'xmlns') return [];
  const tell = `${name}="${value.slice(0, 60)}"`;
  if (/^on/i.test(local)) return [tell];
  if (uri === XML && local === 'base') return [tell];
  if (uri === 'http://www.w3.org/2001/xml-events') return [tell];
  if (local.toLowerCase() === 'href') return staysInside(value) || (uri !== '' && uri !== XLINK) ? [] : [tell];
  if (uri !== '' && prefix !== '') return [];
  if (LOADING_ATTRIBUTES.has(local.toLowerCase())) return [tell];
  if (local !== 'id' && local !== 'class' && local !== 'data-name' && RUNS.test(bare(value))) return [tell];
  return /[(\\@]/.test(value) || local === 'style' ? listInCss(value).map((token) => `${name}: ${token}`) : [];
}

const PASS = 'data:image/svg+xml;base64,';

/** The picture of the proof shows each pass as a picture, which runs nothing; what is in it is judged all the same. */
function judgePass(tag) {
  const { href } = tag.attributes;
  if (tag.name !== 'image' || !href?.value.startsWith(PASS)) return null;
  return listActive(Buffer.from(href.value.slice(PASS.length), 'base64').toString());
}

/** Everything in a file that runs, moves, loads or embeds; empty for a file as it should be. */
export function listActive(text, showsPasses = false) {
  const found = [];
  const parser = new SaxesParser({ xmlns: true });
  let sheet = null;
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('doctype', () => found.push('document type'));
  parser.on('processinginstruction', ({ target }) => found.push(`instruction ${target}`));
  parser.on('opentag', (tag) => {
    if (tag.uri !== SVG || !HARMLESS.has(tag.local)) found.push(`element ${tag.name} of ${tag.uri}`);
    const pass = showsPasses ? judgePass(tag) : null;
    if (pass !== null) found.push(...pass);
    for (const attribute of Object.values(tag.attributes)) {
      if (pass === null || attribute.name !== 'href') found.push(...judgeAttribute(attribute));
    }
    if (tag.local === 'style') sheet = '';
  });
  const addText = (chunk) => {
    if (sheet !== null) sheet += chunk;
  };
  parser.on('text', addText);
  parser.on('cdata', addText);
  parser.on('closetag', (tag) => {
    if (tag.local !== 'style' || sheet === null) return;
    found.push(...listInCss(sheet));
    sheet = null;
  });
  parser.write(text).close();
  return found;
}
