// Serves the page to this machine alone: to nobody who does not know its address, and to no page of another site.
import { randomBytes } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Input } from '../disk/read-input.js';
import { escapeXml } from '../model/escape-xml.js';

/** The page as it is served. */
export interface PageServer {
  readonly address: string;
  readonly close: () => void;
}

const HOST = '127.0.0.1';

const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  'img-src blob: data:',
  "worker-src 'self'",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cache-Control': 'no-store',
};

const TYPES: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
};

/** Where the page was built to: beside the program. */
const PAGE = new URL('../page/', import.meta.url);
/** Files of the page, by the form of their names: nothing leads out of its folder. */
const PART = /^parts\/[\w.-]+\.(?:js|css)$/;

/** Asked by the page itself, under the very name it was given: no other site's page, no other name for this machine. */
function isOurs({ method, headers }: IncomingMessage, authority: string): boolean {
  const { host, origin } = headers;
  const site = headers['sec-fetch-site'];
  if (method !== 'GET' && method !== 'HEAD') return false;
  if (host !== authority) return false;
  if (origin !== undefined && origin !== `http://${authority}`) return false;
  return site === undefined || site === 'same-origin' || site === 'none';
}

function send(response: ServerResponse, status: number, type: string, body: string | Uint8Array): void {
  response.writeHead(status, { ...HEADERS, 'Content-Type': type });
  response.end(body);
}

async function readPage(input: Input | null): Promise<string> {
  const page = await readFile(new URL('index.html', PAGE), 'utf8');
  if (input === null) return page;
  return page.replace('</head>', () => `<meta name="pinbar-file" content="${escapeXml(input.name)}"></head>`);
}

async function answer(path: string, input: Input | null, response: ServerResponse): Promise<void> {
  if (path === '') send(response, 200, TYPES.html!, await readPage(input));
  else if (path === 'given' && input !== null) send(response, 200, 'application/octet-stream', input.bytes);
  else if (PART.test(path)) {
    send(response, 200, TYPES[path.split('.').at(-1)!]!, await readFile(new URL(path, PAGE)));
  } else send(response, 404, 'text/plain', 'There is nothing here.');
}

function listen(server: Server): Promise<AddressInfo> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, HOST, () => resolve(server.address() as AddressInfo));
  });
}

/**
 * Serves the page on a port of its own, under a path that cannot be guessed.
 *
 * @param input - The drawing that the page opens first; null for none.
 */
export async function servePage(input: Input | null): Promise<PageServer> {
  const secret = `/${randomBytes(16).toString('hex')}/`;
  let authority = '';
  const server = createServer((request, response) => {
    const path = (request.url ?? '').split(/[?#]/)[0]!;
    if (!isOurs(request, authority)) send(response, 403, 'text/plain', 'This page is for its own machine.');
    else if (!path.startsWith(secret)) send(response, 404, 'text/plain', 'There is nothing here.');
    else {
      answer(path.slice(secret.length), input, response).catch(() => {
        send(response, 404, 'text/plain', 'There is nothing here.');
      });
    }
  });
  const { port } = await listen(server);
  authority = `${HOST}:${port}`;
  const close = (): void => {
    server.close();
    server.closeAllConnections();
  };
  return { address: `http://${authority}${secret}`, close };
}
