// Asks the renderer in its own process, which is killed when it takes too long.
import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** What is rendered and compared. */
export interface RenderJob {
  readonly source: string;
  /** In any order: the renderer finds the one that looks most like the source. */
  readonly sheets: readonly string[];
  /** Device pixels to the px. */
  readonly zooms: readonly number[];
  /** Larger pictures are rendered smaller. */
  readonly mostPixels: number;
  /** Greatest difference of a channel, of 255, that counts as equal. */
  readonly tolerance: number;
}

/** What came of one resolution. */
export interface RenderResult {
  readonly zoom: number;
  readonly size: readonly [number, number];
  /** A sheet came out in another size than the source. */
  readonly oddSize?: readonly [number, number];
  /** Pixels of the source that are not empty. */
  readonly inked: number;
  readonly differing: number;
  /** Blocks of two by two pixels that all differ. */
  readonly blocks: number;
  readonly greatest: number;
  /** The first pixel that differs. */
  readonly at: readonly [number, number] | null;
  /** Places of the sheets, the lowest first. */
  readonly order: readonly number[];
}

/** Pictures, or why there are none. */
export type RenderAnswer = { readonly results: readonly RenderResult[] } | { readonly refused: string };

/** A renderer that starts again after each death. */
export interface Renderer {
  readonly ask: (job: RenderJob) => Promise<RenderAnswer>;
  readonly stop: () => void;
}

const CHILD = fileURLToPath(new URL('renderer.js', import.meta.url));

/** Starts a renderer. */
export function startRenderer(limitMs = 20_000): Renderer {
  let child: ChildProcess | null = null;
  const stop = (): void => {
    child?.kill('SIGKILL');
    child = null;
  };
  const ask = (job: RenderJob): Promise<RenderAnswer> =>
    new Promise((resolve) => {
      child ??= fork(CHILD, [], { stdio: ['ignore', 'ignore', 'ignore', 'ipc'] });
      const asked = child;
      const finish = (answer: RenderAnswer, ends: boolean): void => {
        clearTimeout(timer);
        asked.removeAllListeners();
        if (ends) stop();
        resolve(answer);
      };
      const timer = setTimeout(() => finish({ refused: `no answer within ${limitMs / 1000} s` }, true), limitMs);
      asked.once('message', (answer) => finish(answer as RenderAnswer, false));
      asked.once('exit', (code, signal) => finish({ refused: `the renderer ended (${signal ?? code})` }, true));
      asked.send(job);
    });
  return { ask, stop };
}
