// The words of what resolving finds.
import type { FindingCode, FindingText, Place } from '../model/finding.js';
import type { Occurrence, Say } from './finding-log.js';

function shorten(text: string): string {
  return text.length > 80 ? `${text.slice(0, 77)}...` : text;
}

function at(place: Place): string {
  const id = place.id === undefined ? '' : ` "${shorten(place.id)}"`;
  return `${place.element}${id} (line ${place.line})`;
}

function inLayer(place: Place): string {
  return place.layerPath === undefined ? 'outside the layers' : `in layer "${place.layerPath}"`;
}

/** ` and 3 more`, or nothing. */
function more(occurrence: Occurrence): string {
  return occurrence.count > 1 ? ` and ${occurrence.count - 1} more` : '';
}

function sayText(occurrence: Occurrence, place: Place): FindingText {
  const families = [...occurrence.words].map((family) => (family === '' ? 'no font named' : family)).sort();
  const one = occurrence.count === 1;
  return {
    message: `${occurrence.count} ${one ? 'text' : 'texts'} ${inLayer(place)} ${one ? 'is' : 'are'} live type (${shorten(families.join('; '))}): how far ${one ? 'it reaches' : 'they reach'} depends on fonts and is not measured.`,
    remedy: 'Turn the type into outlines, or see to it that the machine has the same fonts.',
    data: { families },
  };
}

/** What is said for each code of the log. */
export const SAYINGS: Partial<Record<FindingCode, Say>> = {
  'resolve/length-invalid': (occurrence, place) => ({
    message: `"${shorten(occurrence.subject)}" at ${at(place)}${more(occurrence)} is no length that can be read and counts as not written.`,
    remedy: 'Write a number, with or without a unit such as mm, px or %.',
    data: { value: shorten(occurrence.subject) },
  }),
  'resolve/transform-invalid': (occurrence, place) => ({
    message: `The transform "${shorten(occurrence.subject)}" at ${at(place)}${more(occurrence)} cannot be read and is not applied.`,
    remedy: 'Write a list of matrix, translate, scale, rotate, skewX and skewY, or take the transform out.',
    data: { value: shorten(occurrence.subject) },
  }),
  'resolve/view-box-invalid': (occurrence, place) => ({
    message: `The viewBox "${shorten(occurrence.subject)}" of ${at(place)}${more(occurrence)} is ignored: it takes four numbers, the last two not below zero.`,
    remedy: 'Write the viewBox as x, y, width and height, or leave it out.',
    data: { viewBox: shorten(occurrence.subject) },
  }),
  'resolve/path-broken': (occurrence, place) => ({
    message: `The line of ${at(place)}${more(occurrence)} is broken: it is drawn up to the error in its data.`,
    remedy: 'Draw the shape again, or mend its data.',
  }),
  'resolve/reference-missing': (occurrence, place) => ({
    message: `${at(place)}${more(occurrence)} refers to "#${shorten(occurrence.subject)}", which is not in the file.`,
    remedy: 'Bring the missing element back, or take the reference out.',
    data: { target: occurrence.subject },
  }),
  'resolve/reference-cycle': (occurrence, place) => ({
    message: `${at(place)}${more(occurrence)} refers back to itself and is not followed.`,
    remedy: 'Take the reference out, or let it refer to something else.',
  }),
  'resolve/live-text': sayText,
  'resolve/marker-unmeasured': (occurrence, place) => ({
    message: `${occurrence.count} ${occurrence.count === 1 ? 'line' : 'lines'} ${inLayer(place)} have markers (arrow heads and the like), which are not measured.`,
    remedy: 'Turn the markers into shapes where they may reach beyond the drawing or are to be cut.',
  }),
  'resolve/filter-unmeasured': (occurrence, place) => ({
    message: `${occurrence.count} ${occurrence.count === 1 ? 'element' : 'elements'} ${inLayer(place)} have a filter, which can draw beyond the measured extent.`,
    remedy: 'Turn the effect into a picture or shapes where it may reach beyond the drawing.',
  }),
  'resolve/root-transform': (occurrence, place) => ({
    message: `The drawing as a whole has the transform "${shorten(occurrence.subject)}" on ${at(place)}: many programs leave it out, and so does pinbar.`,
    remedy: 'Put the transform on a group around the drawing.',
    data: { value: shorten(occurrence.subject) },
  }),
  'layer/same-name': (occurrence, place) => ({
    message: `${occurrence.count + 1} layers are called "${shorten(occurrence.subject)}"; this one, at ${at(place)}, goes by "${place.layerPath}".`,
    remedy: 'Give the layers names of their own where they are to go to different passes.',
    data: { path: occurrence.subject },
  }),
  'layer/not-printed': (_, place) => ({
    message: `The layer "${place.layerPath}" (line ${place.line}) is marked as not for print.`,
    remedy: 'Nothing is left out for that; give the layer to a pass, or ignore it by a rule.',
  }),
};
