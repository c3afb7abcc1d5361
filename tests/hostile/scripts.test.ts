// CWE-79 and CWE-829: whatever runs, moves, embeds or loads, in every place that the public lists of sanitisers know.
// Places after the lists of the OWASP cheat sheet on cross-site scripting and of the HTML and SVG standards; from memory.
import { attackEach } from './attack-each.js';
import { drawCarton, type HostileCase } from './hostile-case.js';

const XHTML = 'xmlns="http://www.w3.org/1999/xhtml"';
const NET = 'http://127.0.0.1:9/x';
const PLACE = 'x="40" y="35" width="1" height="1"';

type Row = readonly [name: string, art: string, code?: string];

const SCRIPTS: readonly Row[] = [
  ['script', '<script>alert(1)</script>'],
  ['script with an address', `<script href="${NET}"/>`],
  ['script in CDATA', '<script><![CDATA[alert(1)]]></script>'],
  ['script of another type', '<script type="text/ecmascript">alert(1)</script>'],
  ['script of the pages namespace', `<script ${XHTML}>alert(1)</script>`],
  ['script under a prefix', '<s:script xmlns:s="http://www.w3.org/2000/svg">alert(1)</s:script>'],
  ['script of no namespace', '<script xmlns="">alert(1)</script>'],
  ['script in a title', '<title><script>alert(1)</script></title>'],
  ['script in a description of pages', `<desc><script ${XHTML}>alert(1)</script></desc>`],
  ['script in a definition', '<defs><script>alert(1)</script></defs>'],
  ['script in a switch', '<switch><script>alert(1)</script></switch>'],
  ['script in a text', '<text x="40" y="40">a<script>alert(1)</script></text>'],
  ['script in a style', '<style><script>alert(1)</script></style>'],
  ['script in a filter', '<filter id="f"><script>alert(1)</script></filter>'],
  ['handler element', '<handler xmlns:ev="http://www.w3.org/2001/xml-events" ev:event="load">alert(1)</handler>'],
  ['listener element', '<listener event="load" handler="#a"/>'],
].map(([name, art]) => [name!, art!, 'split/script-removed'] as const);

const ANIMATIONS: readonly Row[] = [
  ['set of an address', '<a><set attributeName="href" to="javascript:alert(1)"/><text x="40" y="40">a</text></a>'],
  ['animate of an address', '<a><animate attributeName="xlink:href" values="javascript:alert(1)"/></a>'],
  ['animate from and to', '<a><animate attributeName="href" from="javascript:alert(1)" to="#"/></a>'],
  ['set of a handler', '<rect><set attributeName="onclick" to="alert(1)"/></rect>'],
  ['handler on an animation', '<animate onbegin="alert(1)" attributeName="x" dur="1s"/>'],
  ['animateTransform', '<animateTransform attributeName="transform" type="rotate" onend="alert(1)"/>'],
  ['animateMotion along a path', '<animateMotion><mpath href="#a"/></animateMotion>'],
  ['animateColor', '<animateColor attributeName="fill" values="red"/>'],
  ['discard', '<discard begin="1s"/>'],
  ['animate that names its target', `<animate href="#ground" attributeName="fill" to="url(${NET})"/>`],
].map(([name, art]) => [name!, art!, 'split/animation-removed'] as const);

const EVENTS =
  'onload onerror onclick onmouseover onfocus onfocusin onbegin onend onrepeat onabort onresize onscroll onunload onzoom onactivate ontoggle onpointerdown onanimationstart onwheel onbeforeinput ONLOAD onLoad on onx';
const HANDLERS: readonly Row[] = [
  ...EVENTS.split(' ').map((event): Row => [`handler ${event}`, `<rect ${event}="alert(1)" ${PLACE}/>`]),
  ['handler on a group', '<g onclick="alert(1)"/>'],
  ['handler on a description', '<desc onclick="alert(1)">a</desc>'],
  ['handler on a definition', '<linearGradient id="q" onload="alert(1)"/>'],
  ['handler on a stop', '<linearGradient id="q"><stop onload="alert(1)"/></linearGradient>'],
  ['handler on a picture that does not load', '<image href="#x" onerror="alert(1)"/>'],
  ['handler of the events namespace', `<rect xmlns:ev="http://www.w3.org/2001/xml-events" ev:handler="#a" ${PLACE}/>`],
  ['handler in numbers', `<rect onclick="&#97;lert(1)" ${PLACE}/>`],
].map(([name, art]) => [name!, art!, 'split/handler-removed'] as const);

const SCHEMES: readonly Row[] = [
  ['javascript:', 'javascript:alert(1)'],
  ['javascript: in mixed case', 'JaVaScRiPt:alert(1)'],
  ['javascript: after blanks', '  javascript:alert(1)'],
  ['javascript: after a tab in numbers', '&#9;javascript:alert(1)'],
  ['javascript: with a tab inside', 'java&#9;script:alert(1)'],
  ['javascript: with line ends inside', 'java&#10;scr&#13;ipt:alert(1)'],
  ['javascript: in numbers', '&#106;&#97;&#118;&#97;&#115;&#99;&#114;&#105;&#112;&#116;&#58;alert(1)'],
  ['javascript: in hexadecimal numbers with zeros', '&#x00006A;avascript&#x3a;alert(1)'],
  ['javascript: after a blank that is not one', '\u00a0javascript:alert(1)'],
  ['javascript: after a mark', '\ufeffjavascript:alert(1)'],
  ['javascript: after a soft hyphen', '\u00adjavascript:alert(1)'],
  ['javascript: with a comment', 'javascript://%0aalert(1)'],
  ['vbscript:', 'vbscript:msgbox(1)'],
  ['data: of a page', 'data:text/html,&lt;script&gt;alert(1)&lt;/script&gt;'],
  ['data: of a page in base64', 'data:text/html;base64,PHNjcmlwdD4='],
  ['data: of a drawing', 'data:image/svg+xml,&lt;svg onload=alert(1)&gt;'],
  ['data: of a page of XML', 'data:application/xhtml+xml,a'],
  ['data: with a false picture type', 'data:image/png+xml,a'],
  ['data: without a type', 'data:,alert(1)'],
  ['blob:', 'blob:http://127.0.0.1/a'],
  ['file:', 'file:///etc/passwd'],
  ['another host', '//127.0.0.1:9/x'],
  ['a backslash as slash', '\\\\127.0.0.1\\x'],
  ['a file beside', 'other.svg#a'],
  ['a query', '?a#b'],
];

const CARRIERS: readonly (readonly [string, (address: string) => string])[] = [
  ['a', (address) => `<a href="${address}"><rect ${PLACE}/></a>`],
  ['use', (address) => `<use xlink:href="${address}"/>`],
];

const ADDRESSES: readonly Row[] = CARRIERS.flatMap(([element, draw]) =>
  SCHEMES.map(([name, address]): Row => [`${element}: ${name}`, draw(address), 'split/outside-reference-removed']),
);

const LOADS: readonly Row[] = [
  ['feImage', `<filter id="f"><feImage href="${NET}"/></filter>`],
  ['feImage by the older name', `<filter id="f"><feImage xlink:href="file:///etc/passwd"/></filter>`],
  ['image on the network', `<image href="${NET}" ${PLACE}/>`],
  ['image that is a drawing', `<image href="data:image/svg+xml;base64,PHN2Zy8+" ${PLACE}/>`],
  ['gradient of another file', `<linearGradient id="q" href="${NET}#a"/>`],
  ['pattern of another file', `<pattern id="q" href="x.svg#a"/>`],
  ['type on a path of another file', `<text x="40" y="40"><textPath href="${NET}#a">a</textPath></text>`],
  ['tref', `<text x="40" y="40"><tref xlink:href="${NET}#a"/></text>`],
  [
    'font by its file',
    `<font-face font-family="a"><font-face-src><font-face-uri href="${NET}"/></font-face-src></font-face>`,
  ],
  ['a base for all addresses', `<g xml:base="${NET}"/>`],
  ['ping', `<a href="#a" ping="${NET}"/>`],
  ['src', `<image src="${NET}" ${PLACE}/>`],
  ['srcset', `<image srcset="${NET} 2x" ${PLACE}/>`],
  ['an address under a prefix of its own', `<use xmlns:q="http://www.w3.org/1999/xlink" q:href="${NET}"/>`],
].map(([name, art]) => [name!, art!, 'split/'] as const);

const EMBEDS: readonly Row[] = [
  ['script in metadata', '<metadata><script>alert(1)</script></metadata>'],
  [
    'foreignObject',
    `<foreignObject ${PLACE}><body ${XHTML}><script>alert(1)</script></body></foreignObject>`,
    'split/foreign-object-removed',
  ],
  [
    'foreignObject with a frame',
    `<foreignObject ${PLACE}><iframe ${XHTML} src="${NET}"/></foreignObject>`,
    'split/foreign-object-removed',
  ],
  ['foreignObject in a definition', `<defs><foreignObject/></defs>`, 'split/foreign-object-removed'],
  ['frame', `<iframe ${XHTML} src="javascript:alert(1)"/>`],
  ['frame with its document', `<iframe ${XHTML} srcdoc="&lt;script&gt;"/>`],
  ['frame that poses as SVG', `<iframe src="${NET}"/>`],
  ['embed', `<embed ${XHTML} src="${NET}"/>`],
  ['object', `<object ${XHTML} data="${NET}"/>`],
  ['applet', `<applet ${XHTML} code="x"/>`],
  ['picture of pages', `<img ${XHTML} src="x" onerror="alert(1)"/>`],
  ['video', `<video ${XHTML} poster="${NET}"><source src="${NET}"/></video>`],
  ['audio that poses as SVG', `<audio src="${NET}"/>`],
  ['canvas', `<canvas ${XHTML}/>`],
  ['form', `<form ${XHTML} action="javascript:alert(1)"><input formaction="javascript:alert(1)"/></form>`],
  ['meta', `<meta ${XHTML} http-equiv="refresh" content="0;url=javascript:alert(1)"/>`],
  ['base', `<base ${XHTML} href="${NET}"/>`],
  ['link', `<link ${XHTML} rel="import" href="${NET}"/>`],
  ['template', `<template ${XHTML}><script>alert(1)</script></template>`],
  ['mathematics', `<math xmlns="http://www.w3.org/1998/Math/MathML"><maction href="javascript:alert(1)"/></math>`],
  ['mathematics with a note', `<annotation-xml xmlns="http://www.w3.org/1998/Math/MathML" encoding="text/html"/>`],
  ['bindings of an old browser', `<x:xbl xmlns:x="http://www.mozilla.org/xbl"/>`],
  ['XInclude', `<xi:include xmlns:xi="http://www.w3.org/2001/XInclude" href="file:///etc/passwd"/>`],
  ['transformation', `<xsl:stylesheet xmlns:xsl="http://www.w3.org/1999/XSL/Transform"/>`],
  ['forms of XML', `<f:submission xmlns:f="http://www.w3.org/2002/xforms" resource="${NET}"/>`],
  ['sheet by instruction within', `<?xml-stylesheet href="${NET}"?>`],
  ['server instruction', '<?php system("x") ?>'],
  ['a view', '<view id="v" viewBox="0 0 1 1"/>'],
  ['unknown element', '<unknown onclick="alert(1)"/>'],
  ['solidcolor', '<solidcolor id="q"/>'],
].map(([name, art, code]) => [name!, art!, code ?? 'split/'] as const);

const IN_ROOT: readonly Row[] = [
  ['onload', 'onload="alert(1)"', 'split/handler-removed'],
  ['handlers of old documents', 'onunload="a()" onzoom="b()"', 'split/handler-removed'],
  ['type of its scripts', 'contentScriptType="text/vbscript" baseProfile="full"', ''],
  ['base', `xml:base="${NET}"`, 'split/outside-reference-removed'],
  ['where its schema is', `xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="a ${NET}"`, ''],
];

function toCase([name, art, code = '']: Row, make: (text: string) => Uint8Array): HostileCase {
  // Where no code is named exactly it is enough that nothing active comes out.
  const needed = code === '' || code === 'split/' ? '' : ` ${code}`;
  return { name, make: () => make(art), ends: `in-register${needed}` };
}

const inArt = (art: string): Uint8Array => drawCarton({ art });

attackEach(
  'scripts',
  SCRIPTS.map((row) => toCase(row, inArt)),
);
attackEach(
  'animation',
  ANIMATIONS.map((row) => toCase(row, inArt)),
);
attackEach(
  'handlers',
  HANDLERS.map((row) => toCase(row, inArt)),
);
attackEach(
  'addresses',
  ADDRESSES.map((row) => toCase(row, inArt)),
);
attackEach(
  'loading',
  LOADS.map((row) => toCase(row, inArt)),
);
attackEach(
  'embedding',
  EMBEDS.map((row) => toCase(row, inArt)),
);
attackEach(
  'on the root',
  IN_ROOT.map((row) => toCase(row, (root) => drawCarton({ root }))),
);
