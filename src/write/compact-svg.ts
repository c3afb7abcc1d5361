// Makes a sheet smaller with svgo, by plugins that keep ids, names, layers and coordinates.
import { type Finding, finding } from '../model/finding.js';
import { decodeUtf8 } from '../model/platform.js';

/** svgo takes some 36 times the input in memory; above this it is not asked, bytes. */
const LARGEST_BYTES = 50 * 1024 * 1024;

/** Plugins that drop nothing a person named and move nothing. */
const PLUGINS = [
  'removeComments',
  'removeXMLProcInst',
  'cleanupAttrs',
  'mergeStyles',
  'removeEmptyAttrs',
  'sortAttrs',
] as const;

/** A compacted sheet, or null where it was not made. */
export interface Compaction {
  readonly text: string | null;
  readonly findings: readonly Finding[];
}

function keepAsIs(file: string, why: string): Compaction {
  const tooLarge = finding('compact/too-large', {
    message: `${file} is not compacted: ${why}.`,
    remedy: 'Nothing to do; the file is written as it is.',
    place: { file },
  });
  return { text: null, findings: [tooLarge] };
}

/** Compacts one sheet. The result must still be judged against the uncompacted one. */
export async function compactSvg(bytes: Uint8Array, file: string): Promise<Compaction> {
  if (bytes.length > LARGEST_BYTES) return keepAsIs(file, 'it is larger than 50 MiB');
  const { optimize } = await import('svgo/browser');
  try {
    const result = optimize(decodeUtf8(bytes), {
      multipass: false,
      plugins: [
        ...PLUGINS,
        { name: 'convertPathData', params: { floatPrecision: 5, removeUseless: false, makeArcs: false } },
      ] as never,
    });
    return { text: result.data, findings: [] };
  } catch (error) {
    return keepAsIs(
      file,
      `the compactor stopped (${error instanceof Error ? error.message.split('\n')[0] : 'unknown'})`,
    );
  }
}
