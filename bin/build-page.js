// Builds the page twice: with files of its own to be served, and as one file that works from the disk.
import { createHash } from 'node:crypto';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { findPackageFolder, tellLicences } from './tell-licences.js';

const root = new URL('../', import.meta.url);
const source = new URL('src/page/', root);
const target = new URL('dist/page/', root);
const folders = new Set();

/** Notes which packages went in, so that their licences go along. */
const noteFolders = {
  name: 'note-folders',
  generateBundle(_, bundle) {
    for (const chunk of Object.values(bundle)) {
      const found = Object.keys(chunk.modules ?? {}).map(findPackageFolder);
      for (const folder of found) if (folder !== null) folders.add(folder);
    }
  },
};

const NEEDLESS = '\0needless';
/** Packages that others bring for work that is never asked of them: printing of pages, maps of sources. */
const leaveOut = {
  name: 'leave-out-needless',
  enforce: 'pre',
  resolveId: (id) =>
    id === 'dom-serializer' || id.startsWith('source-map-js/') ? { id: NEEDLESS, moduleSideEffects: false } : null,
  load: (id) => (id === NEEDLESS ? 'export default function needless() {}\nexport class SourceMapGenerator {}' : null),
};

const SHARED = {
  configFile: false,
  logLevel: 'error',
  root: fileURLToPath(source),
  base: './',
  plugins: [leaveOut, noteFolders],
  worker: { format: 'es', plugins: () => [leaveOut, noteFolders] },
};

const LIMITS = { target: 'es2023', modulePreload: { polyfill: false }, chunkSizeWarningLimit: 4000 };

/** The page as it is served. */
async function buildServed() {
  const outDir = fileURLToPath(target);
  await build({
    ...SHARED,
    build: { ...LIMITS, outDir, emptyOutDir: true, assetsDir: 'parts', assetsInlineLimit: 0 },
  });
}

/** An entry and all it needs as one script, and its styles. */
async function joinScript(entry, plugins = []) {
  const result = await build({
    ...SHARED,
    plugins: [...SHARED.plugins, ...plugins],
    build: {
      ...LIMITS,
      write: false,
      cssCodeSplit: false,
      rolldownOptions: {
        input: fileURLToPath(new URL(entry, source)),
        output: { format: 'iife', codeSplitting: false },
      },
    },
  });
  const { output } = Array.isArray(result) ? result[0] : result;
  const script = output.find(({ type }) => type === 'chunk').code;
  const style = output.find(({ fileName }) => fileName.endsWith('.css'))?.source ?? '';
  return { script, style: String(style) };
}

/** A text as a string of a script that stands in a page. */
function quoteScript(text) {
  return JSON.stringify(text).replaceAll('<', '\\u003c');
}

/** Starts a worker from a text that stands before the script; put there last, since a minifier would undo the quoting. */
function startFromText(name, key) {
  return `export function ${name}() {
  const address = URL.createObjectURL(new Blob([WORKER_CODE.${key}], { type: 'text/javascript' }));
  const worker = new Worker(address);
  URL.revokeObjectURL(address);
  return worker;
}`;
}

function hashOf(text) {
  return `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
}

/** The page in one file: the workers' code as texts, and a policy that lets nothing in or out. */
async function buildSingle() {
  const job = await joinScript('job-worker.ts');
  const paint = await joinScript('paint-worker.ts');
  const inPlace = {
    name: 'workers-in-place',
    load: (id) =>
      id.endsWith('/src/page/start-workers.ts')
        ? `${startFromText('startJobWorker', 'job')}\n${startFromText('startPaintWorker', 'paint')}`
        : null,
  };
  const { script: main, style } = await joinScript('main.ts', [inPlace]);
  const script = `const WORKER_CODE={job:${quoteScript(job.script)},paint:${quoteScript(paint.script)}};${main}`;
  if (/<\/script|<!--/i.test(script)) throw new Error('the script of the page would end too early');
  const policy = [
    "default-src 'none'",
    `script-src ${hashOf(script)}`,
    `style-src ${hashOf(style)}`,
    'img-src blob: data:',
    'worker-src blob:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  const page = readFileSync(new URL('index.html', source), 'utf8')
    .replace(
      '<meta charset="utf-8">',
      () => `<meta charset="utf-8">\n    <meta http-equiv="Content-Security-Policy" content="${policy}">`,
    )
    .replace('</head>', () => `  <style>${style}</style>\n  </head>`)
    .replace('<script type="module" src="./main.ts"></script>', () => `<script>${script}</script>`);
  writeFileSync(new URL('pinbar.html', target), page);
}

rmSync(target, { recursive: true, force: true });
await buildServed();
await buildSingle();
writeFileSync(new URL('third-party.txt', target), tellLicences(folders));
