// What can be found out about copies on a sheet: their part of the closed table of codes.

/** Codes of the sheet. */
const SHEET = {
  'sheet/too-small': { severity: 'error', asks: true, doc: 'The copies and marks asked for do not fit on the sheet.' },
  'sheet/bleed-into-neighbour': {
    severity: 'error',
    asks: true,
    doc: 'Print beyond the edge of a copy would reach into the blank of its neighbour.',
  },
  'sheet/laid-out-already': { severity: 'error', doc: 'The drawing is a sheet of copies, or carries marks, already.' },
  'sheet/not-kept': { severity: 'error', doc: 'A copy on the sheet is not what the pass draws.' },
  'sheet/copy-mark-missing': { severity: 'warning', doc: 'A copy has no room beside it for a cross of its own.' },
  'sheet/scaled': { severity: 'note', doc: 'The copies are scaled, as the ticket asks.' },
} as const;

/** Severity and manual line of the codes of the sheet. */
export const SHEET_KINDS: typeof SHEET = SHEET;
