// The order of the work list: worst first, and within a weight by what it is about; list and picture number alike.
import type { CheckGroup } from '../model/check-kinds.js';
import { FINDING_KINDS, type Finding, SEVERITIES, type Severity } from '../model/finding.js';

/** Findings of one weight about one kind of thing, numbered. */
export interface FindingGroup {
  readonly severity: Severity;
  /** What it is about, in words. */
  readonly heading: string;
  readonly items: readonly NumberedFinding[];
}

/** A finding with the number it has in list and picture. */
export interface NumberedFinding {
  readonly number: number;
  readonly finding: Finding;
}

const HEADINGS: Readonly<Record<CheckGroup | 'drawing', string>> = {
  drawing: 'Drawing and passes found in it',
  lines: 'Lines',
  print: 'Print',
  sheet: 'Sheet and size',
  passes: 'Passes',
  blank: 'Blank',
};

const GROUPS = Object.keys(HEADINGS) as readonly (CheckGroup | 'drawing')[];

/** Findings worst first, then group by group, numbered from 1 through all of it. */
export function groupFindings(findings: readonly Finding[]): readonly FindingGroup[] {
  let number = 0;
  return SEVERITIES.flatMap((severity) =>
    GROUPS.map((group) => {
      const own = findings.filter(
        (item) => item.severity === severity && (FINDING_KINDS[item.code].group ?? 'drawing') === group,
      );
      const items = own.map((finding) => {
        number += 1;
        return { number, finding };
      });
      return { severity, heading: HEADINGS[group], items };
    }).filter(({ items }) => items.length > 0),
  );
}
