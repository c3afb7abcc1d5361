// What pinbar has to say about the artwork: findings, and the closed table of their codes.
import { CHECK_KINDS, type CheckGroup } from './check-kinds.js';
import { LINE_KINDS } from './line-findings.js';
import { REGISTER_KINDS } from './register-findings.js';
import { SHEET_KINDS } from './sheet-findings.js';

/** How much a finding weighs: an error stops the job, a warning and a note do not. */
export type Severity = 'error' | 'warning' | 'note';

/** The severities, worst first. */
export const SEVERITIES: readonly Severity[] = ['error', 'warning', 'note'];

/** Plain data that survives JSON. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** Where a finding stands in the file. */
export interface Place {
  /** Line in the file as delivered, from 1. */
  readonly line?: number;
  /** Column in characters, from 1. */
  readonly column?: number;
  /** Path of layer names, outermost first, joined by `/`. */
  readonly layerPath?: string;
  readonly id?: string;
  /** Qualified name of the element. */
  readonly element?: string;
  /** The file, where more than one is at hand. */
  readonly file?: string;
  /** On the artboard, from its top left, mm. */
  readonly xMm?: number;
  readonly yMm?: number;
}

/** What a code says in the manual. `asks` marks an error that an answer in the ticket settles (exit code 5). */
export interface FindingKind {
  readonly severity: Severity;
  readonly asks?: true;
  /** Under which heading a check lists it; only codes of `check/` have one. */
  readonly group?: CheckGroup;
  readonly doc: string;
}

/** Every code a finding can carry but those of the checks: the closed table that the house test walks. */
const KINDS = {
  'source/malformed': { severity: 'error', doc: 'The file is not well-formed XML.' },
  'source/encoding-unknown': { severity: 'error', doc: 'The declared encoding is not one pinbar reads.' },
  'source/encoding-broken': { severity: 'error', doc: 'The bytes do not fit the declared encoding.' },
  'source/gzip-broken': { severity: 'error', doc: 'The gzip stream is damaged or cut off.' },
  'source/not-svg': { severity: 'error', doc: 'The root element is not svg, or the file is of another kind.' },
  'source/entity-refused': { severity: 'error', doc: 'An entity is nested, external or a parameter entity.' },
  'source/namespace-missing': { severity: 'warning', doc: 'The root lacks the SVG namespace; the sheets get it.' },
  'source/doctype-removed': {
    severity: 'note',
    doc: 'The document type is left out of the sheets; its entities are written out.',
  },
  'source/transcoded': { severity: 'note', doc: 'The file was not UTF-8; the sheets are.' },
  'limit/bytes': { severity: 'error', doc: 'The file is larger than allowed.' },
  'limit/unpacked-bytes': { severity: 'error', doc: 'The unpacked file is larger than allowed.' },
  'limit/depth': { severity: 'error', doc: 'Elements are nested deeper than allowed.' },
  'limit/elements': { severity: 'error', doc: 'There are more elements than allowed.' },
  'limit/attributes': { severity: 'error', doc: 'An element has more attributes than allowed.' },
  'limit/entity-count': { severity: 'error', doc: 'More entities are declared than allowed.' },
  'limit/entity-length': { severity: 'error', doc: 'An entity is longer than allowed.' },
  'limit/entity-total': { severity: 'error', doc: 'Entities expand to more text than allowed.' },
  'limit/references': { severity: 'error', doc: 'Uses draw more copies than allowed.' },
  'limit/selectors': { severity: 'error', doc: 'Style sheets hold more selectors than allowed.' },
  'resolve/size-unsure': { severity: 'warning', doc: 'The root says its size in px or without a unit.' },
  'resolve/size-missing': { severity: 'warning', doc: 'The root has no usable width or height.' },
  'resolve/view-box-invalid': { severity: 'warning', doc: 'The viewBox is not four numbers with a positive size.' },
  'resolve/length-invalid': { severity: 'warning', doc: 'A length or number of an element cannot be read.' },
  'resolve/transform-invalid': { severity: 'warning', doc: 'A transform cannot be read and is not applied.' },
  'resolve/path-broken': { severity: 'warning', doc: 'Path data or points hold an error; the line is drawn up to it.' },
  'resolve/style-unreadable': { severity: 'warning', doc: 'Part of a style sheet cannot be read.' },
  'resolve/selector-unknown': { severity: 'warning', doc: 'A selector is not known; its rule is not applied.' },
  'resolve/colour-unknown': { severity: 'warning', doc: 'A colour cannot be read.' },
  'resolve/reference-missing': { severity: 'warning', doc: 'A reference points at nothing in the file.' },
  'resolve/reference-cycle': { severity: 'warning', doc: 'References form a circle; they are drawn once.' },
  'resolve/live-text': { severity: 'warning', doc: 'Live type is not measured: its extent depends on fonts.' },
  'resolve/marker-unmeasured': { severity: 'warning', doc: 'Markers on a line are not measured.' },
  'resolve/filter-unmeasured': { severity: 'warning', doc: 'A filter can draw beyond the measured extent.' },
  'resolve/root-transform': { severity: 'warning', doc: 'A transform on the outermost svg is not taken into account.' },
  'layer/hidden-skipped': { severity: 'warning', doc: 'A hidden layer is left out.' },
  'layer/hidden-asked': {
    severity: 'error',
    asks: true,
    doc: 'A hidden layer holds a pass: say whether it is wanted.',
  },
  'layer/not-printed': { severity: 'note', doc: 'A layer is marked as not for print.' },
  'layer/same-name': { severity: 'note', doc: 'Two layers share a name and are told apart by position.' },
  'classify/unclaimed': { severity: 'error', asks: true, doc: 'Shapes that no rule and no layer name claims.' },
  'classify/claimed-twice': { severity: 'error', asks: true, doc: 'Shapes that two passes claim.' },
  'classify/name-against-paint': {
    severity: 'error',
    asks: true,
    doc: 'Shapes that a name sends to one pass and their paint to another.',
  },
  'classify/name-unsure': {
    severity: 'error',
    asks: true,
    doc: 'A layer name suggests a pass, but its shapes do not look like it.',
  },
  'classify/fill-and-stroke': { severity: 'error', asks: true, doc: 'Shapes with a print fill and a die stroke.' },
  'classify/use-divided': { severity: 'error', doc: 'One use draws shapes of two passes.' },
  'classify/rule-unused': { severity: 'warning', doc: 'A rule that takes no shape.' },
  'classify/pass-empty': { severity: 'warning', doc: 'A pass without any shape.' },
  'classify/no-sheet': { severity: 'error', doc: 'No shape goes to any pass: there is no file to write.' },
  'classify/draws-nothing': { severity: 'note', doc: 'Shapes without paint or size are in no pass.' },
  'classify/ignored': { severity: 'note', doc: 'Shapes left out because a rule ignores them.' },
  'order/interleaved': {
    severity: 'warning',
    doc: 'Shapes of a pass lie over and under those of another: no order of whole sheets looks like the drawing.',
  },
  'order/lines-interleaved': {
    severity: 'note',
    doc: 'Lines of tools lie over and under each other; the sheets show their crossings otherwise than the drawing.',
  },
  'order/effect-divided': {
    severity: 'warning',
    doc: 'An opacity, mask, filter or blend mode takes in shapes of more than one pass at once.',
  },
  'order/box-divided': {
    severity: 'error',
    doc: 'A clip path, mask or filter measured by the box of a group of which a sheet holds only a part.',
  },
  'order/filter-region': {
    severity: 'warning',
    doc: 'A filter is cut off around the box of a group that loses shapes without paint.',
  },
  'split/script-removed': { severity: 'warning', doc: 'A script is taken out.' },
  'split/handler-removed': { severity: 'warning', doc: 'An event handler attribute is taken out.' },
  'split/animation-removed': { severity: 'warning', doc: 'An animation is taken out.' },
  'split/foreign-object-removed': { severity: 'warning', doc: 'A foreignObject is taken out.' },
  'split/outside-reference-removed': { severity: 'warning', doc: 'A reference to the outside is taken out.' },
  'split/foreign-left-out': {
    severity: 'note',
    doc: 'Elements that draw nothing (metadata, editor data) are left out.',
  },
  'split/picture-linked': { severity: 'error', asks: true, doc: 'A linked picture: embed it or leave it out.' },
  'split/picture-embedded': { severity: 'note', doc: 'A linked picture is embedded.' },
  'split/picture-left-out': { severity: 'warning', doc: 'A linked picture is left out, as the ticket says.' },
  'split/picture-refused': { severity: 'error', doc: 'A linked picture may not or cannot be read.' },
  'split/definition-divided': {
    severity: 'error',
    doc: 'A shape is drawn in one pass and needed whole as a definition in another.',
  },
  'mark/no-room': { severity: 'error', asks: true, doc: 'The artboard has no room for the marks.' },
  'mark/percent-lengths': { severity: 'error', doc: 'The artboard cannot grow: lengths in percent would change.' },
  'mark/no-such-pass': { severity: 'warning', doc: 'A pass that is to carry register marks is not in this job.' },
  'mark/left-out': { severity: 'note', doc: 'No marks were asked for; drawn extents may differ between passes.' },
  'compact/moved': { severity: 'warning', doc: 'Compaction moved or lost something; the uncompacted file is written.' },
  'compact/too-large': { severity: 'warning', doc: 'The file is too large to compact.' },
  'verify/lost': { severity: 'error', doc: 'A shape of the source, or something it needs, is missing from its pass.' },
  'verify/doubled': { severity: 'error', doc: 'A shape stands more often than it should.' },
  'verify/unexpected': { severity: 'error', doc: 'A sheet draws something the source does not send there.' },
  'verify/bytes-changed': { severity: 'error', doc: 'The bytes of a kept element differ from the source.' },
  'verify/chain-changed': { severity: 'error', doc: 'The groups around a kept shape differ from the source.' },
  'verify/artboard-differs': { severity: 'error', doc: 'The artboards of the files differ.' },
  'verify/box-moved': { severity: 'error', doc: 'A shape lies elsewhere than in the source.' },
  'verify/paint-changed': { severity: 'error', doc: 'A shape is painted otherwise than in the source.' },
  'verify/marks-differ': { severity: 'error', doc: 'The marks of the files differ.' },
  'verify/extents-differ': { severity: 'error', doc: 'The drawn extents of the files differ.' },
  'verify/active-content': {
    severity: 'error',
    doc: 'A file holds a script, a handler, an animation or an outside reference.',
  },
  'verify/size-differs': { severity: 'error', doc: 'The files state different sizes.' },
  'verify/marks-missing': { severity: 'warning', doc: 'A file has no marks that pinbar knows.' },
  'verify/moved': { severity: 'error', doc: 'A matched shape is shifted against the source.' },
  'verify/scaled': { severity: 'error', doc: 'A matched shape has another size than in the source.' },
  'verify/missing': { severity: 'error', doc: 'A shape of the source is in none of the files.' },
  'verify/added': { severity: 'warning', doc: 'A file holds a shape that the source does not.' },
  'verify/repainted': { severity: 'warning', doc: 'A matched shape is painted otherwise than in the source.' },
  'witness/disagrees': { severity: 'error', doc: 'The second judge sees a difference.' },
  'witness/unreadable': { severity: 'error', doc: 'The second judge cannot read a file.' },
  'witness/not-asked': { severity: 'note', doc: 'The second judge did not look (size or ticket).' },
  'ticket/not-json': { severity: 'error', doc: 'The ticket is not JSON.' },
  'ticket/wrong': { severity: 'error', doc: 'The ticket holds an unknown key or a wrong value.' },
  'profile/not-json': { severity: 'error', doc: 'The shop profile is not JSON.' },
  'profile/wrong': { severity: 'error', doc: 'The shop profile holds an unknown key or a wrong value.' },
  'write/exists': { severity: 'error', doc: 'The output folder is already there.' },
  'write/failed': { severity: 'error', doc: 'The files could not be written.' },
  'read/failed': { severity: 'error', doc: 'The input could not be read.' },
  'use/wrong': { severity: 'error', doc: 'The command line is wrong.' },
  cancelled: { severity: 'error', doc: 'The caller stopped the run.' },
} as const;

/** A code of the closed table. */
export type FindingCode =
  | keyof typeof KINDS
  | keyof typeof CHECK_KINDS
  | keyof typeof REGISTER_KINDS
  | keyof typeof LINE_KINDS
  | keyof typeof SHEET_KINDS;

/** Severity and manual line of every code. */
export const FINDING_KINDS: Readonly<Record<FindingCode, FindingKind>> = {
  ...KINDS,
  ...CHECK_KINDS,
  ...REGISTER_KINDS,
  ...LINE_KINDS,
  ...SHEET_KINDS,
};

/**
 * One thing found: returned, never thrown.
 *
 * `message` says what was found, where and what is allowed; `remedy` what to do about it.
 */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly message: string;
  readonly remedy: string;
  readonly place: Place;
  /** What was measured; keys per code are listed in DEVELOPERS.md. Lengths in mm end in `Mm`. */
  readonly data: { readonly [key: string]: Json };
}

/** What a stage says when it makes a finding; severity comes from the table. */
export interface FindingText {
  readonly message: string;
  readonly remedy?: string;
  readonly place?: Place;
  readonly data?: { readonly [key: string]: Json };
}

/** A finding of a code, with the table's severity. */
export function finding(code: FindingCode, text: FindingText): Finding {
  return {
    code,
    severity: FINDING_KINDS[code].severity,
    message: text.message,
    remedy: text.remedy ?? '',
    place: text.place ?? {},
    data: text.data ?? {},
  };
}
