// Every word of the page, English and German.
import type { Stage } from '../model/job.js';
import type { Role } from '../model/pass.js';
import { JOB_WORDS } from './job-words.js';

/** Languages of the page. */
export type Language = 'en' | 'de';

/** What the page says it is doing; a stage without words does not compile. */
const STAGES: Readonly<Record<Stage, readonly [string, string]>> = {
  read: ['reading', 'liest'],
  resolve: ['working out boxes and paint', 'bestimmt Maße und Farben'],
  classify: ['sorting shapes into passes', 'ordnet Formen den Durchgängen zu'],
  derive: ['putting lines in order', 'bringt Linien in Reihenfolge'],
  split: ['taking apart', 'zerlegt'],
  check: ['checking whether it is fit to run', 'prüft, ob es maschinenreif ist'],
  compact: ['making smaller files', 'verkleinert die Dateien'],
  write: ['naming and hashing the files', 'benennt und zählt die Dateien'],
  'read-back': ['first judge: reading the files back', 'erster Prüfer: liest die Dateien zurück'],
  witness: ['second judge: comparing', 'zweiter Prüfer: vergleicht'],
  report: ['drawing the proof', 'zeichnet den Beweis'],
  'lay-out': ['laying out the sheet', 'teilt den Bogen ein'],
};

const TABLE = {
  title: ['pinbar: one sheet per pass', 'pinbar: ein Bogen je Durchgang'],
  intro: [
    'Put a layered SVG here. It is taken apart into one file per pass of the machine, and proved to overlay. Nothing leaves this computer.',
    'Legen Sie eine SVG mit Ebenen hierher. Sie wird in eine Datei je Durchgang der Maschine zerlegt, und es wird bewiesen, dass sie passgenau sind. Nichts verlässt diesen Rechner.',
  ],
  dropHere: ['Drop a drawing here', 'Zeichnung hier ablegen'],
  pick: ['Choose a file', 'Datei wählen'],
  pasteHint: ['or paste SVG text', 'oder SVG-Text einfügen'],
  another: ['Another drawing', 'Andere Zeichnung'],
  undo: ['Take back', 'Zurücknehmen'],
  redo: ['Do again', 'Wiederholen'],
  language: ['Sprache: Deutsch', 'Language: English'],
  theme: ['Light or dark', 'Hell oder dunkel'],
  stop: ['Stop', 'Anhalten'],
  goOn: ['Start again', 'Neu beginnen'],
  goOnWithout: ['Go on without it', 'Ohne weitermachen'],
  stopped: ['Stopped.', 'Angehalten.'],
  working: ['Working', 'Arbeitet'],
  stages: ['Steps of the work', 'Arbeitsschritte'],
  'outcome.in-register': ['In register', 'Passgenau'],
  'outcome.answer-needed': ['An answer is needed', 'Eine Antwort fehlt'],
  'outcome.refused': ['Must be mended first', 'Muss erst ausgebessert werden'],
  'outcome.not-verified': ['Not proved', 'Nicht bewiesen'],
  'outcome.failed': ['Cannot be read', 'Nicht lesbar'],
  ways: ['Parts of this page', 'Teile dieser Seite'],
  'way.drawn': ['Drawn', 'Zeichnung'],
  'way.found': ['Found', 'Funde'],
  'next.why': ['See why', 'Sehen, warum'],
  'next.mend': ['Work through what was found ({0})', 'Abarbeiten, was gefunden wurde ({0})'],
  'next.look': ['{0} things were found', '{0} Funde ansehen'],
  'next.lookOne': ['1 thing was found', '1 Fund ansehen'],
  runs: ['What the machine runs, in order', 'Was die Maschine nacheinander fährt'],
  runNothing: [
    'No pass yet: send a layer or a line to one below.',
    'Noch kein Durchgang: ordnen Sie eine Ebene oder Linie zu.',
  ],
  show: ['Show {0}', '{0} zeigen'],
  only: ['{0} alone', '{0} allein'],
  all: ['All over each other', 'Alle übereinander'],
  stepOn: ['Next run', 'Nächster Lauf'],
  stepBack: ['Run before', 'Lauf davor'],
  earlier: ['{0} runs earlier', '{0} läuft früher'],
  later: ['{0} runs later', '{0} läuft später'],
  shapes: ['{0} shapes', '{0} Formen'],
  shape: ['1 shape', '1 Form'],
  board: ['The art on its board', 'Die Zeichnung auf dem Bogen'],
  boardKeys: [
    'Arrow keys move, plus and minus zoom, 0 shows all, 1 is true size.',
    'Pfeiltasten verschieben, Plus und Minus zoomen, 0 zeigt alles, 1 ist wahre Größe.',
  ],
  whole: ['Whole', 'Ganz'],
  trueSize: ['True size', 'Wahre Größe'],
  nearer: ['Nearer', 'Näher'],
  farther: ['Farther', 'Ferner'],
  manner: ['Look', 'Ansicht'],
  'manner.both': ['Art with tool lines', 'Zeichnung mit Werkzeuglinien'],
  'manner.drawn': ['As drawn', 'Wie gezeichnet'],
  'manner.passes': ['By pass', 'Nach Durchgang'],
  simplified: [
    'Large drawing: shown here by its lines and plain colours alone, curves within {0} mm. Gradients, pictures and effects are not painted; pictures are grey. The files are whole and exact.',
    'Große Zeichnung: hier nur mit Linien und einfachen Farben gezeigt, Kurven auf {0} mm genau. Verläufe, Bilder und Effekte sind nicht gemalt; Bilder sind grau. Die Dateien sind vollständig und genau.',
  ],
  places: ['Findings on the art', 'Funde auf der Zeichnung'],
  alone: ['alone', 'allein'],
  choose: ['choose', 'wählen'],
  answerHere: ['Answer it here', 'Hier beantworten'],
  point: ['Point at a line to see where it goes and why.', 'Zeigen Sie auf eine Linie: wohin sie geht und warum.'],
  open: ['nobody claims it', 'niemand nimmt es'],
  leftOut: ['left out', 'ausgelassen'],
  drawn: ['What is drawn', 'Was gezeichnet ist'],
  layers: ['Layers', 'Ebenen'],
  lines: ['Lines', 'Linien'],
  loose: ['In no layer', 'In keiner Ebene'],
  hidden: ['hidden', 'verborgen'],
  locked: ['locked', 'gesperrt'],
  goesTo: ['{0} goes to', '{0} geht an'],
  mixed: ['several', 'mehrere'],
  suggested: ['Suggested: {0}, since {1}', 'Vorschlag: {0}, denn {1}'],
  unsure: ['Perhaps {0}: {1}', 'Vielleicht {0}: {1}'],
  noSuggestion: ['Nothing suggests a pass.', 'Nichts legt einen Durchgang nahe.'],
  newPass: ['another pass', 'anderer Durchgang'],
  dragHint: [
    'Choose the pass in the list, or drag a row onto a run.',
    'Den Durchgang in der Liste wählen oder die Zeile auf einen Lauf ziehen.',
  ],
  more: ['Show {0} more', '{0} weitere zeigen'],
  found: ['What was found', 'Was gefunden wurde'],
  foundNothing: ['Nothing to work through.', 'Nichts abzuarbeiten.'],
  'severity.error': ['stops the job', 'hält den Auftrag auf'],
  'severity.warning': ['look at it', 'ansehen'],
  'severity.note': ['good to know', 'gut zu wissen'],
  goThere: ['Show {0} on the board', '{0} auf dem Bogen zeigen'],
  proof: ['Proof', 'Beweis'],
  noProof: ['There is a proof once the files are made.', 'Einen Beweis gibt es, sobald die Dateien gemacht sind.'],
  mm: ['{0} mm', '{0} mm'],
  greatest: ['Greatest deviation', 'Größte Abweichung'],
  'judge.read-back': [
    'First judge, reads the files back byte for byte',
    'Erster Prüfer, liest die Dateien Byte für Byte zurück',
  ],
  'judge.witness': ['Second judge, a reader of its own', 'Zweiter Prüfer, mit eigenem Leser'],
  judged: [
    'drawn elements: {0}; greatest deviation: {1} mm; differences: {2}',
    'gezeichnete Elemente: {0}; größte Abweichung: {1} mm; Unterschiede: {2}',
  ],
  didNotLook: ['did not look: {0}', 'hat nicht hingesehen: {0}'],
  equalExtents: ['All files draw the same extent.', 'Alle Dateien zeichnen dieselbe Ausdehnung.'],
  unequalExtents: ['The files draw different extents.', 'Die Dateien zeichnen verschiedene Ausdehnungen.'],
  take: ['Take away', 'Mitnehmen'],
  takeAll: ['All files, one zip', 'Alle Dateien, eine Zip-Datei'],
  takeNothing: [
    'There are files once nothing stops the job.',
    'Dateien gibt es, sobald nichts mehr den Auftrag aufhält.',
  ],
  repeat: ['The same on the command line', 'Dasselbe auf der Befehlszeile'],
  bytes: ['{0} bytes', '{0} Byte'],
  line: ['line {0}', 'Zeile {0}'],
  remedy: ['What to do', 'Was zu tun ist'],
  wording: ['In its own words', 'Im Wortlaut (englisch)'],
  ...JOB_WORDS,
  artboard: ['{0} × {1} mm', '{0} × {1} mm'],
  sizeUnsure: [
    'The size is not sure: it is stated without a unit.',
    'Die Größe ist nicht sicher: sie steht ohne Einheit da.',
  ],
} as const satisfies Readonly<Record<string, readonly [string, string]>>;

/** A text of the table. */
export type TextKey = keyof typeof TABLE;

/** A number with so many decimals. */
export interface Fixed {
  readonly value: number;
  readonly digits: number;
}

/** A number that is shown with so many decimals. */
export function fixed(value: number, digits: number): Fixed {
  return { value, digits };
}

/** Says a text; `{0}`, `{1}` stand for what is handed in. Numbers get the decimal sign of the language. */
export type Say = (key: TextKey, ...values: readonly (string | number | Fixed)[]) => string;

/** Both wordings of every text. */
export const TEXTS: Readonly<Record<TextKey, readonly [string, string]>> = TABLE;

/** A number with the decimal sign of the language. */
export function spellNumber(value: number | Fixed, language: Language): string {
  const text = typeof value === 'number' ? String(value) : value.value.toFixed(value.digits);
  return language === 'de' ? text.replace('.', ',') : text;
}

function spell(value: string | number | Fixed | undefined, language: Language): string {
  return value === undefined || typeof value === 'string' ? (value ?? '') : spellNumber(value, language);
}

/** The sayer of a language. */
export function sayIn(language: Language): Say {
  const column = language === 'en' ? 0 : 1;
  return (key, ...values) =>
    TEXTS[key][column].replace(/\{(\d)\}/g, (_, at: string) => spell(values[Number(at)], language));
}

/** What passes do, in the language of the page. */
const ROLES: Readonly<Record<Role, readonly [string, string]>> = {
  creasing: ['creasing', 'Rillen'],
  'reverse-creasing': ['reverse creasing', 'Rillen von der Rückseite'],
  embossing: ['embossing', 'Prägen'],
  debossing: ['debossing', 'Tiefprägen'],
  white: ['white', 'Weiß'],
  print: ['print', 'Druck'],
  varnish: ['varnish', 'Lack'],
  'foil-stamping': ['foil stamping', 'Heißfolie'],
  'cold-foil-stamping': ['cold foil stamping', 'Kaltfolie'],
  perforating: ['perforating', 'Perforieren'],
  'partial-cutting': ['partial cutting', 'Anschneiden'],
  'reverse-partial-cutting': ['reverse partial cutting', 'Anschneiden von der Rückseite'],
  drilling: ['drilling', 'Bohren'],
  punching: ['punching', 'Lochen'],
  cutting: ['cutting', 'Schneiden'],
  gluing: ['gluing', 'Kleben'],
  ignore: ['nothing: left out', 'nichts: ausgelassen'],
};

/** Says what a pass does. */
export function sayRole(language: Language, role: Role): string {
  return ROLES[role][language === 'en' ? 0 : 1];
}

/** Says a stage of the work. */
export function sayStage(language: Language, stage: Stage): string {
  return STAGES[stage][language === 'en' ? 0 : 1];
}
