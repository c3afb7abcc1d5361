// Codes of findings about the order of lines, about ties, and about turned sheets.

/** Severity and manual line of each. */
export const LINE_KINDS = {
  'sequence/stayed': { severity: 'note', doc: 'Elements of a pass that cannot be moved safely keep their place.' },
  'sequence/order-kept': { severity: 'warning', doc: 'Lines come after others that they should come before.' },
  'sequence/start-kept': {
    severity: 'note',
    doc: 'Lines of a pass keep their start point though others were allowed.',
  },
  'sequence/no-such-pass': { severity: 'warning', doc: 'A pass that is to be put in order is not in this job.' },
  'ties/no-such-pass': { severity: 'warning', doc: 'A pass that is to get ties is not in this job, or gets others.' },
  'turn/not-made': { severity: 'warning', doc: 'The file of a pass on the reverse cannot be mirrored.' },
  'turn/off-artboard': { severity: 'warning', doc: 'A mirrored file draws beyond its artboard.' },
  'ties/few': { severity: 'warning', doc: 'An outline has no room for as many ties as wanted.' },
  'ties/far-apart': { severity: 'warning', doc: 'An outline is free over a longer stretch than wanted.' },
  'ties/stretched': {
    severity: 'warning',
    doc: 'A pattern of cuts and ties is stretched by more than 5 % to fit a line.',
  },
  'ties/line-short': { severity: 'warning', doc: 'A line is too short for the pattern, and cut through.' },
  'ties/left-whole': { severity: 'warning', doc: 'Lines that cannot be written as stretches get no ties.' },
} as const;
