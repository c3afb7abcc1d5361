// Bytes to source to artwork, with the caller's limits.
import type { Artwork } from '../model/artwork.js';
import type { RoadOptions } from '../model/job.js';
import { resolve } from '../resolve/resolve.js';
import { readSource } from '../source/read-source.js';
import type { Source } from '../source/source.js';

/** Scans bytes under the caller's limits. */
export function scanBytes(bytes: Uint8Array, options: RoadOptions): Source {
  return readSource(bytes, options.limits === undefined ? {} : { limits: options.limits });
}

/** Resolves a source under the caller's limits. */
export function resolveSource(source: Source, options: RoadOptions, userUnitsPerInch: number | null): Artwork {
  return resolve(source, { userUnitsPerInch, ...(options.limits === undefined ? {} : { limits: options.limits }) });
}
