// pinbar open, spawned: whom it serves, and whom it does not.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { type IncomingHttpHeaders, request } from 'node:http';
import { resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

let command: ChildProcess;
let address: URL;

/** Asks for a path under given headers and method. */
function ask(path: string, headers: Readonly<Record<string, string>> = {}, method = 'GET'): Promise<Answer> {
  return new Promise((done, fail) => {
    const { port, host } = address;
    const asked = request({ host: '127.0.0.1', port, path, method, headers: { host, ...headers } }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('end', () =>
        done({ status: answer.statusCode!, headers: answer.headers, body: Buffer.concat(parts).toString('utf8') }),
      );
    });
    asked.on('error', fail);
    asked.end();
  });
}

beforeAll(async () => {
  command = spawn(process.execPath, [resolve('bin/pinbar.js'), 'open', 'samples/sleeve.svg', '--no-browser'], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const [line] = (await once(createInterface(command.stdout!), 'line')) as [string];
  address = new URL(line);
});

afterAll(() => command?.kill());

describe('pinbar open', () => {
  it('is at a port of this machine, under a path that nobody guesses', () => {
    expect(address.hostname).toBe('127.0.0.1');
    expect(Number(address.port)).toBeGreaterThan(1023);
    expect(address.pathname).toMatch(/^\/[0-9a-f]{32}\/$/);
  });

  it('serves the page, its parts and the drawing, under a policy that lets nothing out', async () => {
    const page = await ask(address.pathname);
    expect(page.status).toBe(200);
    const policy = page.headers['content-security-policy'];
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("connect-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
    expect(page.headers['x-content-type-options']).toBe('nosniff');
    expect(page.body).toContain('<meta name="pinbar-file" content="sleeve.svg">');
    const [part] = /parts\/[\w.-]+\.js/.exec(page.body)!;
    const script = await ask(address.pathname + part);
    expect(script.status).toBe(200);
    expect(script.headers['content-type']).toMatch(/^text\/javascript/);
    expect(script.headers['content-security-policy']).toBe(policy);
    const given = await ask(`${address.pathname}given`);
    expect(given.body).toBe(readFileSync('samples/sleeve.svg', 'utf8'));
  });

  it.each([
    ['another name for this machine', { host: 'localhost.example' }],
    ['another port', { host: '127.0.0.1:1' }],
    ['a page of another site', { origin: 'https://example.org' }],
    ['a page from the disk', { origin: 'null' }],
    ['a picture on another site', { 'sec-fetch-site': 'cross-site' }],
    ['another port of this machine', { 'sec-fetch-site': 'same-site' }],
  ])('refuses %s', async (_, headers: Readonly<Record<string, string>>) => {
    for (const path of ['', 'given']) {
      const { status, body } = await ask(address.pathname + path, headers);
      expect(status).toBe(403);
      expect(body).not.toContain('<');
    }
  });

  it('lets its own page ask', async () => {
    const headers = { origin: address.origin, 'sec-fetch-site': 'same-origin' };
    expect((await ask(`${address.pathname}given`, headers)).status).toBe(200);
  });

  it('takes nothing', async () => {
    expect((await ask(address.pathname, {}, 'POST')).status).toBe(403);
  });

  it.each(['/', '/given', '/00000000000000000000000000000000/given'])('has nothing at %s', async (path) => {
    expect((await ask(path)).status).toBe(404);
  });

  it.each([
    'parts/../pinbar.html',
    'parts/..%2f..%2fcli/main.js',
    '../package.json',
    'parts/%00.js',
    'third-party.txt',
  ])('gives no other file: %s', async (path) => {
    expect((await ask(address.pathname + path)).status).toBe(404);
  });

  it('ends when it is asked to', async () => {
    command.kill('SIGINT');
    const [code] = (await once(command, 'exit')) as [number];
    expect(code).toBe(0);
  });
});
