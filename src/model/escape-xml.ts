// Text for XML and HTML, between tags and in quoted attributes alike.

/** Signs that no document may hold, not even spelled (XML 1.0, section 2.2). */
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

/**
 * Text that is safe between tags and in attributes, whichever quotes they have.
 *
 * What no document may hold becomes U+FFFD, so that it is seen that something stood there.
 */
export function escapeXml(text: string): string {
  return text
    .replace(FORBIDDEN, '\ufffd')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}
