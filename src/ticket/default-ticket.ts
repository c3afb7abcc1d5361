// The ticket of somebody who asked for nothing in particular.
import type { Ticket } from '../model/ticket.js';

/** Every default. Mark sizes are common practice, no source. */
export const DEFAULT_TICKET: Ticket = {
  passes: [],
  rules: [],
  hidden: 'ask',
  partPaint: false,
  linkedPictures: 'ask',
  marks: {
    wanted: true,
    discDiameterMm: 6,
    crossSizeMm: 6,
    lineWidthMm: 0.25,
    offsetMm: 3,
    cornerLengthMm: 5,
    passes: [],
    label: true,
  },
  marginMm: 0,
  userUnitsPerInch: null,
  compact: false,
  witness: 'auto',
  severities: {},
};
