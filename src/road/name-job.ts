// The name that the files of a job will have in common.
import { stemOf } from '../write/name-files.js';

/** A name that every file system takes, from the name of a delivered file. */
export function nameJob(fileName: string): string {
  return stemOf(fileName);
}
