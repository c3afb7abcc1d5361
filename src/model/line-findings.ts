// Codes of findings about the order of lines, and about ties.

/** Severity and manual line of each. */
export const LINE_KINDS = {
  'sequence/stayed': { severity: 'note', doc: 'Elements of a pass that cannot be moved safely keep their place.' },
  'sequence/order-kept': { severity: 'warning', doc: 'Lines come after others that they should come before.' },
} as const;
