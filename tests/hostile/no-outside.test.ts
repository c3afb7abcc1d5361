// CWE-918 and CWE-73: the command opens no connection and no file but its input, whatever the input says.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { describeWith, witnessPath } from '../house/witnesses.js';
import { drawText } from './hostile-case.js';

const root = resolve(import.meta.dirname, '../..');
const scratch = mkdtempSync(join(tmpdir(), 'pinbar-outside-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

interface Trace {
  readonly status: number | null;
  readonly out: string;
  /** Paths that were opened, in order. */
  readonly opened: readonly string[];
  readonly connected: readonly string[];
}

function trace(args: readonly string[]): Trace {
  const log = join(scratch, 'trace.txt');
  const flags = ['-f', '-e', 'trace=connect,open,openat', '-s', '4096', '-o', log];
  const ran = spawnSync(witnessPath('strace'), [...flags, process.execPath, ...args], {
    cwd: scratch,
    encoding: 'utf8',
  });
  const lines = readFileSync(log, 'utf8').split('\n');
  const opened = lines
    .map((line) => /\bopen(?:at)?\((?:[^",]*, )?"([^"]*)".*\) = \d/.exec(line)?.[1])
    .filter((path) => path !== undefined);
  return {
    status: ran.status,
    out: ran.stdout + ran.stderr,
    opened,
    connected: lines.filter((line) => line.includes('connect(')),
  };
}

function split(folder: string, text: string, more: readonly string[] = []): Trace {
  const home = join(scratch, folder, 'in');
  mkdirSync(home, { recursive: true });
  writeFileSync(join(home, 'art.svg'), text);
  writeFileSync(join(scratch, folder, 'secret.png'), 'not for the drawing');
  writeFileSync(join(home, 'beside.css'), 'a{}');
  return trace([
    join(root, 'bin/pinbar.js'),
    'split',
    join(home, 'art.svg'),
    '--out',
    join(scratch, folder, 'out'),
    ...more,
  ]);
}

/** Paths of a run that are neither part of the program, nor its input or output, nor opened when the input is harmless. */
function listStrange(run: Trace, folder: string, harmless: Trace, allowed: readonly string[] = []): readonly string[] {
  // The allocator and the engine look at the machine when they feel like it.
  const known = new Set([...harmless.opened, '/proc/sys/vm/overcommit_memory', '/sys/devices/system/cpu/online']);
  const packages = realpathSync(join(root, 'node_modules'));
  const own = [`${root}/`, `${packages}/`, join(scratch, folder, 'out'), join(scratch, folder, '.out-')];
  const parent = join(scratch, folder);
  const input = join(scratch, folder, 'in/art.svg');
  return run.opened.filter(
    (path) =>
      !known.has(path) &&
      path !== input &&
      path !== parent &&
      !allowed.includes(path) &&
      !own.some((start) => path.startsWith(start)),
  );
}

const NET = 'http://127.0.0.1:9/x';
const OUTSIDE = [
  '/etc/passwd',
  'file:///etc/passwd',
  NET,
  '//127.0.0.1:9/x',
  '../secret.png',
  'beside.css',
  'file://localhost/etc/hosts',
];

/** Every way out that a file that is accepted can have. */
const ACCEPTED = drawText({
  head: `<?xml-stylesheet href="beside.css"?><!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "${NET}">`,
  first: OUTSIDE.map(
    (to) => `<style>@import "${to}";@import url(${to});@font-face{font-family:a;src:url(${to})}</style>`,
  ).join(''),
  art: OUTSIDE.map(
    (to) =>
      `<use href="${to}#a"/><a href="${to}"/><linearGradient href="${to}#a"/><filter id="f"><feImage href="${to}"/></filter>` +
      `<g xml:base="${to}"/><rect style="fill:url(${to}#a)" filter="url(${to}#f)" x="40" y="35" width="1" height="1"/><script href="${to}"/>`,
  ).join(''),
});

const PICTURES = drawText({
  art: [
    '../secret.png',
    '/etc/passwd',
    '%2e%2e/secret.png',
    '..\\secret.png',
    './/..//secret.png',
    'file:///etc/passwd',
    NET,
  ]
    .map((to) => `<image href="${to}" x="40" y="35" width="1" height="1"/>`)
    .join(''),
});

describeWith('strace', 'the command, traced', () => {
  const harmless = split('harmless', drawText({}));

  it('is seen opening its input, and a connection would be seen', () => {
    expect(harmless.status, harmless.out).toBe(0);
    expect(harmless.opened).toContain(join(scratch, 'harmless/in/art.svg'));
    const dialled = trace(['-e', "require('net').connect(9, '127.0.0.1').on('error', () => {})"]);
    expect(dialled.connected.length).toBeGreaterThan(0);
    const stray = trace(['-e', "require('fs').readFileSync('/etc/hosts')"]);
    expect(listStrange(stray, 'harmless', harmless)).toContain('/etc/hosts');
  });

  it('connects to nothing', () => {
    expect(harmless.connected).toEqual([]);
  });

  it.each([
    ['style, links and scripts', ACCEPTED, 0, []],
    [
      'an entity of the machine',
      drawText({ head: '<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/passwd">]>', art: '<desc>&a;</desc>' }),
      3,
      [],
    ],
    [
      'a parameter entity on the network',
      drawText({ head: `<!DOCTYPE svg [<!ENTITY % a SYSTEM "${NET}"> %a;]>` }),
      3,
      [],
    ],
    ['a document type beside the file', drawText({ head: '<!DOCTYPE svg SYSTEM "beside.css">' }), 0, []],
    ['pictures out of its folder, left out', PICTURES, 0, ['--linked-pictures', 'leave-out']],
    ['pictures out of its folder, to be embedded', PICTURES, 1, ['--embed']],
  ] as const)('opens nothing else for %s', (name, text, status, more) => {
    const folder = name.replace(/\W+/g, '-');
    const run = split(folder, text, more);
    expect(run.status, run.out).toBe(status);
    expect(run.connected).toEqual([]);
    expect(listStrange(run, folder, harmless)).toEqual([]);
  });
});
