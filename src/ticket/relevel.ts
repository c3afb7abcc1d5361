// Applies the ticket's new severities to findings.
import type { Finding } from '../model/finding.js';
import type { Ticket } from '../model/ticket.js';

/** Findings with the severities of the ticket; errors stay errors. */
export function relevelFindings(findings: readonly Finding[], severities: Ticket['severities']): readonly Finding[] {
  return findings.map((item) => {
    const severity = severities[item.code];
    return severity === undefined || item.severity === 'error' ? item : { ...item, severity };
  });
}
