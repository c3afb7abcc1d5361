// Linked pictures: embedded, left out, or asked about.
import { type Finding, finding } from '../model/finding.js';
import { PICTURE_STARTS } from '../model/picture-starts.js';
import { encodeBase64 } from '../model/platform.js';
import type { Picture } from '../model/sheet.js';
import type { Ticket } from '../model/ticket.js';
import { placeOf } from '../source/locate.js';
import type { Source } from '../source/source.js';
import { attributeSpan } from './attribute-span.js';
import type { Edit } from './edit.js';
import type { Sanitised } from './sanitise.js';

/** Media type by the first bytes, or null where it is no picture that a sheet may carry. */
export function sniffPicture(bytes: Uint8Array): string | null {
  const head = String.fromCharCode(...bytes.subarray(0, 16));
  return Object.entries(PICTURE_STARTS).find(([, starts]) => starts.test(head))?.[0] ?? null;
}

const REMEDIES = {
  ask: 'Say --embed to put it into the sheets, or --linked-pictures leave-out.',
  'leave-out': 'Nothing to do if it is to be left out, as asked; else say --embed.',
} as const;

type Link = Sanitised['linkedPictures'][number];

function embed(source: Source, link: Link, picture: Picture | undefined): { edits: Edit[]; finding: Finding } {
  const place = placeOf(source, link.row);
  const mediaType = picture === undefined ? null : sniffPicture(picture.bytes);
  if (picture === undefined || mediaType === null) {
    return {
      edits: [],
      finding: finding('split/picture-refused', {
        message:
          picture === undefined
            ? `The picture "${link.address}" (line ${place.line}) was not found in the folder of the file.`
            : `The picture "${link.address}" (line ${place.line}) is not a PNG, JPEG, GIF or WebP picture.`,
        remedy: 'Put the picture beside the file (no way out of its folder is followed), or leave it out.',
        place,
        data: { address: link.address },
      }),
    };
  }
  const { valueStart, valueEnd } = source.elements.attributes;
  const replacement = `data:${mediaType};base64,${encodeBase64(picture.bytes)}`;
  return {
    edits: [{ start: valueStart[link.attribute]!, end: valueEnd[link.attribute]!, replacement }],
    finding: finding('split/picture-embedded', {
      message: `The picture "${link.address}" (${picture.bytes.length} bytes, line ${place.line}) is embedded.`,
      place,
      data: { address: link.address, bytes: picture.bytes.length, mediaType },
    }),
  };
}

/** What becomes of every linked picture under the ticket. */
export function treatPictures(
  source: Source,
  links: readonly Link[],
  wish: Ticket['linkedPictures'],
  pictures: ReadonlyMap<string, Picture>,
): { readonly edits: readonly Edit[]; readonly findings: readonly Finding[] } {
  const edits: Edit[] = [];
  const findings: Finding[] = [];
  for (const link of links) {
    if (wish === 'embed') {
      const result = embed(source, link, pictures.get(link.address));
      edits.push(...result.edits);
      findings.push(result.finding);
      continue;
    }
    const place = placeOf(source, link.row);
    const [start, end] = attributeSpan(source, link.attribute);
    edits.push({ start, end, replacement: '' });
    findings.push(
      finding(wish === 'ask' ? 'split/picture-linked' : 'split/picture-left-out', {
        message: `The picture "${link.address}" (line ${place.line}) is a file of its own, and a sheet may not refer to one.`,
        remedy: REMEDIES[wish],
        place,
        data: { address: link.address },
      }),
    );
  }
  return { edits, findings };
}
