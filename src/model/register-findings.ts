// Codes of findings about marks that were measured.

/** Severity and manual line of each. */
export const REGISTER_KINDS = {
  'register/marks-unreadable': { severity: 'error', doc: 'A line of the measured marks cannot be read.' },
  'register/turned': { severity: 'error', doc: 'The measured sheet lies turned.' },
  'register/flipped': { severity: 'error', doc: 'The measured marks are a mirror image of the drawn ones.' },
  'register/names-mixed': { severity: 'error', doc: 'The marks fit far better under other names.' },
  'register/outlier': { severity: 'warning', doc: 'One mark fits worse than all others let expect.' },
  'register/no-residual': { severity: 'note', doc: 'A fit has no residual to judge by: the marks are too few for it.' },
  'register/beyond-tolerance': { severity: 'error', doc: 'No fit brings all marks within the tolerance.' },
  'register/file-changed': { severity: 'error', doc: 'A pass is not the file that the manifest tells of.' },
  'register/corrected-already': { severity: 'error', doc: 'A pass was corrected before.' },
  'register/not-kept': { severity: 'error', doc: 'A corrected pass does not draw what the pass draws.' },
} as const;
