// A small server that says how a watcher does: /healthz and /metrics.
import { createServer } from 'node:http';
import { PinbarError } from '../index.js';
import type { Tally } from './tally.js';

/** Where to listen. */
export interface ListenAt {
  readonly host: string;
  readonly port: number;
}

/**
 * Starts the server.
 *
 * @returns What ends it, and the port it got.
 * @throws PinbarError `use/wrong` where it cannot listen there.
 */
export function serveTally(tally: Tally, at: ListenAt): Promise<{ readonly port: number; readonly close: () => void }> {
  const server = createServer((request, response) => {
    const say = (status: number, text: string): void => {
      response.writeHead(status, { 'content-type': 'text/plain; version=0.0.4; charset=utf-8' }).end(text);
    };
    if (request.method !== 'GET' && request.method !== 'HEAD') return say(405, 'Only GET.\n');
    const trouble = tally.trouble();
    if (request.url === '/healthz') return trouble === null ? say(200, 'ok\n') : say(503, `${trouble}\n`);
    return request.url === '/metrics' ? say(200, tally.print()) : say(404, 'There are /healthz and /metrics.\n');
  });
  return new Promise((resolve, reject) => {
    server.once('error', (error) => {
      const message = `The watcher cannot listen at ${at.host}:${at.port}: ${error.message}.`;
      reject(new PinbarError('use/wrong', { message, remedy: 'Name another port with --listen.' }, [], error));
    });
    server.listen(at.port, at.host, () => {
      const address = server.address();
      const port = typeof address === 'object' && address !== null ? address.port : at.port;
      resolve({
        port,
        close: () => {
          server.close();
          server.closeAllConnections();
        },
      });
    });
  });
}
