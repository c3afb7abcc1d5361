// Starts the workers; the build of the single file puts their code in its place.

/** The worker that does the job. */
export function startJobWorker(): Worker {
  return new Worker(new URL('./job-worker.ts', import.meta.url), { type: 'module' });
}

/** The worker that paints. */
export function startPaintWorker(): Worker {
  return new Worker(new URL('./paint-worker.ts', import.meta.url), { type: 'module' });
}
