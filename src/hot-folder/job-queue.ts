// Hands jobs to workers on other machines, through BullMQ on Redis. A job holds a path and a hash alone; the folder is the truth.
import { createHash } from 'node:crypto';
import type { ConnectionOptions } from 'bullmq';
import { PinbarError } from '../index.js';
import type { JobFeed, QueuedJob } from './job-feed.js';
import type { Delivery } from './scan-in.js';

/** How long after a lost connection it is tried again, ms: unasked the library waits up to 20 s. */
const RECONNECT_MS = 1000;

/** Name of the queue. */
const QUEUE = 'pinbar';

interface QueuedData {
  /** Names below `in/`, base64. */
  readonly from: readonly string[];
  readonly sha256: string;
}

type Library = typeof import('bullmq');

/** A connection that outlasts Redis: what waits for it waits until it is back. */
function connectTo(url: string): ConnectionOptions {
  return { url, maxRetriesPerRequest: null, retryStrategy: () => RECONNECT_MS };
}

/** Loaded only where a queue is asked for: who needs none installs none. */
async function loadLibrary(): Promise<Library> {
  try {
    return await import('bullmq');
  } catch (error) {
    const message = 'A queue needs the packages bullmq and ioredis, which are not installed.';
    throw new PinbarError(
      'use/wrong',
      { message, remedy: 'Install them beside pinbar, or leave --queue out.' },
      [],
      error,
    );
  }
}

/** The same delivery with the same bytes is one job, however often it is offered. */
function nameJob(data: QueuedData): string {
  return createHash('sha256').update(JSON.stringify(data)).digest('hex');
}

/** The side of the watcher: what it finds is put into the queue. */
export async function openOffers(url: string, onError: (error: Error) => void): Promise<JobFeed> {
  const { Queue } = await loadLibrary();
  const queue = new Queue<QueuedData>(QUEUE, { connection: connectTo(url) });
  queue.on('error', onError);
  let offering: Promise<unknown> | null = null;
  const offer = (found: readonly { readonly delivery: Delivery; readonly sha256: string }[]): void => {
    // Redis may be away: offers are kept by the folder, and made again at the next scan.
    if (offering !== null || found.length === 0) return;
    const jobs = found.map(({ delivery, sha256 }) => {
      const data = { from: delivery.from.map((name) => name.toString('base64')), sha256 };
      return { name: 'split', data, opts: { jobId: nameJob(data), removeOnComplete: true, removeOnFail: true } };
    });
    offering = queue
      .addBulk(jobs)
      .catch(onError)
      .finally(() => {
        offering = null;
      });
  };
  const close = async (): Promise<void> => {
    await Promise.race([queue.close(), new Promise((next) => setTimeout(next, 1000))]);
    await queue.disconnect().catch(() => undefined);
  };
  return { offer, take: null, close };
}

/** The side of a worker: what comes out of the queue is done. */
export async function openOrders(
  url: string,
  jobs: number,
  hooks: { readonly onOrder: () => void; readonly onError: (error: Error) => void },
): Promise<JobFeed> {
  const { Worker } = await loadLibrary();
  const orders: QueuedJob[] = [];
  const open = new Set<() => void>();
  const worker = new Worker<QueuedData>(
    QUEUE,
    ({ data }) =>
      new Promise<void>((resolve) => {
        const settle = (): void => {
          open.delete(settle);
          resolve();
        };
        open.add(settle);
        orders.push({ from: data.from.map((name) => Buffer.from(name, 'base64')), settle });
        hooks.onOrder();
      }),
    { connection: connectTo(url), concurrency: jobs },
  );
  worker.on('error', hooks.onError);
  return {
    offer: null,
    take: () => orders.splice(0),
    close: async () => {
      for (const settle of [...open]) settle();
      await Promise.race([worker.close(), new Promise((next) => setTimeout(next, 1000))]);
      await worker.disconnect().catch(() => undefined);
    },
  };
}
