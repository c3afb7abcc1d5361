// The worker process: takes one job at a time from the watcher, answers, and ends with it.
import { answerJob } from './answer-job.js';
import { FileTrouble } from './file-trouble.js';
import type { JobAsked, WorkerReply } from './job-message.js';

async function reply(asked: JobAsked): Promise<WorkerReply> {
  try {
    return { answer: await answerJob(asked) };
  } catch (error) {
    if (error instanceof FileTrouble) return { unread: error.code };
    return { fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}

/**
 * Serves jobs until the watcher is gone.
 *
 * @returns When the channel to the watcher is closed.
 */
export async function serveJobs(): Promise<void> {
  // The watcher decides when its workers end; a signal to the whole group must not cut off what it wants finished.
  process.on('SIGINT', () => undefined);
  process.on('SIGTERM', () => undefined);
  await new Promise<void>((resolve) => {
    process.on('message', (message) => {
      void reply(message as JobAsked).then((said) => {
        if (process.connected) process.send!(said);
      });
    });
    process.once('disconnect', resolve);
    process.send?.({ ready: true });
  });
}
