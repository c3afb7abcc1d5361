// pinbar open: the page, served to this machine alone.
import { spawn } from 'node:child_process';
import { readInput } from '../disk/read-input.js';
import { writeMessage, writeResult } from './console.js';
import { EXIT } from './exit-code.js';
import { servePage } from './page-server.js';

/** Options as the command line gives them. */
export interface OpenFlags {
  readonly browser: boolean;
}

/** The program that opens an address, by system. */
function openerFor(platform: string): readonly [command: string, ...before: string[]] {
  if (platform === 'darwin') return ['open'];
  return platform === 'win32' ? ['cmd', '/c', 'start', ''] : ['xdg-open'];
}

/** Opens an address in the browser; where there is none, the printed address serves as well. */
function openBrowser(address: string): void {
  const [command, ...before] = openerFor(process.platform);
  const child = spawn(command, [...before, address], { stdio: 'ignore', detached: true });
  child.once('error', () => writeMessage('No browser could be opened; open the address yourself.'));
  child.unref();
}

/** Serves the page until it is stopped; returns the exit code. */
export async function runOpen(path: string | undefined, flags: OpenFlags, signal: AbortSignal): Promise<number> {
  const input = path === undefined ? null : await readInput(path);
  const server = await servePage(input);
  writeResult(`${server.address}\n`);
  writeMessage('The page is served to this machine alone. Stop it with Ctrl+C.');
  if (flags.browser) openBrowser(server.address);
  await new Promise<void>((stop) => {
    if (signal.aborted) stop();
    signal.addEventListener('abort', () => stop(), { once: true });
  });
  server.close();
  return EXIT.inRegister;
}
