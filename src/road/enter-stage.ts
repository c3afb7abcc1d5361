// Announces a stage and notices a stop.
import type { RoadOptions, Stage } from '../model/job.js';
import { pause } from '../model/platform.js';
import { PinbarError } from '../model/trouble.js';

/**
 * Announces a stage to the caller.
 *
 * @throws PinbarError `cancelled` when the caller wants to stop.
 */
export async function enterStage(stage: Stage, options: RoadOptions): Promise<void> {
  options.onProgress?.(stage);
  if (options.signal === undefined) return;
  await pause();
  if (options.signal.aborted)
    throw new PinbarError('cancelled', {
      message: 'The run was stopped before it was done; no file was made.',
      remedy: 'Start it again when you want the files.',
    });
}
