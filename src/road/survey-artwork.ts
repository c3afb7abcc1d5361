// The road from bytes to what is in them: read, resolved, described.
import { explainLayers, suggestRoles } from '../classify/suggest.js';
import { MM_PER_INCH, PT_PER_INCH, PX_PER_INCH } from '../geometry/units.js';
import type { Artwork } from '../model/artwork.js';
import type { Inspection } from '../model/inspection.js';
import type { RoadOptions } from '../model/job.js';
import { sha256Hex } from '../model/platform.js';
import { describeArtwork } from '../report/describe-artwork.js';
import { shapeLength } from '../resolve/resolve.js';
import type { Source } from '../source/source.js';
import { enterStage } from './enter-stage.js';
import { resolveSource, scanBytes } from './read-artwork.js';

/** What is in a file, and the drawing itself. */
export interface Survey {
  readonly source: Source;
  readonly artwork: Artwork;
  readonly inspection: Inspection;
}

/**
 * Reads, resolves and describes a drawing.
 *
 * @param userUnitsPerInch - For a root whose size is not sure; null for the default.
 * @throws PinbarError when the file cannot be read, breaks a limit, or the caller stops the run.
 */
export async function surveyArtwork(
  bytes: Uint8Array,
  options: RoadOptions,
  userUnitsPerInch: number | null,
): Promise<Survey> {
  await enterStage('read', options);
  const source = scanBytes(bytes, options);
  await enterStage('resolve', options);
  const artwork = resolveSource(source, options, userUnitsPerInch);
  await enterStage('classify', options);
  const suggestions = suggestRoles(artwork);
  const facts = {
    artwork,
    measureLength: (shape: (typeof artwork.shapes)[number]) => shapeLength(source, artwork, shape),
    layerSuggestions: explainLayers(artwork, suggestions),
    strokeSuggestions: suggestions.strokes,
  };
  const file = {
    name: options.fileName ?? 'art.svg',
    bytes: bytes.length,
    sha256: await sha256Hex([bytes]),
    encoding: source.encoding,
    gzipped: source.gzipped,
    elements: source.elements.count,
  };
  const inspection = describeArtwork(facts, file, { 96: MM_PER_INCH / PX_PER_INCH, 72: MM_PER_INCH / PT_PER_INCH });
  return {
    source,
    artwork,
    inspection: { ...inspection, findings: [...source.findings, ...inspection.findings] },
  };
}
