// Every word of the page, English and German.
import type { Stage } from '../model/job.js';

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
  stopped: ['Stopped.', 'Angehalten.'],
  working: ['Working', 'Arbeitet'],
  stages: ['Steps of the work', 'Arbeitsschritte'],
  'outcome.in-register': ['In register', 'Passgenau'],
  'outcome.answer-needed': ['An answer is needed', 'Eine Antwort fehlt'],
  'outcome.refused': ['Must be mended first', 'Muss erst ausgebessert werden'],
  'outcome.not-verified': ['Not proved', 'Nicht bewiesen'],
  'outcome.failed': ['Cannot be read', 'Nicht lesbar'],
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
    'Choose the pass in the list, or drag a row onto a run above.',
    'Den Durchgang in der Liste wählen oder die Zeile auf einen Lauf oben ziehen.',
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
  greatest: ['Greatest deviation', 'Größte Abweichung'],
  'judge.read-back': [
    'First judge, reads the files back byte for byte',
    'Erster Prüfer, liest die Dateien Byte für Byte zurück',
  ],
  'judge.witness': ['Second judge, a reader of its own', 'Zweiter Prüfer, mit eigenem Leser'],
  judged: [
    '{0} drawn elements, greatest deviation {1} mm, {2} differences',
    '{0} gezeichnete Elemente, größte Abweichung {1} mm, {2} Unterschiede',
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
  settings: ['Job', 'Auftrag'],
  ticketFile: ['Ticket', 'Auftragszettel'],
  saveTicket: ['Save the ticket', 'Zettel speichern'],
  loadTicket: ['Load a ticket', 'Zettel laden'],
  lastTicket: ['Use the last ticket ({0})', 'Letzten Zettel nehmen ({0})'],
  byNames: ['Back to the layer names', 'Zurück zu den Ebenennamen'],
  notSaid: ['not said', 'nicht gesagt'],
  'job.marksHeading': ['Marks and size', 'Marken und Größe'],
  'job.marks': ['Register marks on every sheet', 'Passmarken auf jedem Bogen'],
  'job.margin': ['Margin that the artboard grows by', 'Rand, um den die Zeichenfläche wächst'],
  'job.perInch': ['Units of the drawing to the inch', 'Einheiten der Zeichnung je Zoll'],
  'job.at96': ['96, as the web has it', '96, wie im Web'],
  'job.at72': ['72, as in print', '72, wie im Druck'],
  'job.sheetHeading': ['Sheet and copies', 'Bogen und Nutzen'],
  'sheet.wanted': ['Several copies on a sheet', 'Mehrere Nutzen auf einem Bogen'],
  'sheet.widthMm': ['Width of the sheet', 'Breite des Bogens'],
  'sheet.heightMm': ['Height of the sheet', 'Höhe des Bogens'],
  'sheet.marginsMm': ['Strip that stays free along the edges', 'Streifen, der am Rand frei bleibt'],
  'sheet.gutterMm': ['Between the blanks', 'Zwischen den Zuschnitten'],
  'sheet.gripperMm': ['Strip that the machine holds it by', 'Streifen, an dem die Maschine greift'],
  'sheet.side': ['Edge that is held', 'Kante, die gegriffen wird'],
  'side.bottom': ['bottom', 'unten'],
  'side.top': ['top', 'oben'],
  'side.left': ['left', 'links'],
  'side.right': ['right', 'rechts'],
  'sheet.ups': ['Copies: max, a number, or 3x2', 'Nutzen: max, eine Zahl oder 3x2'],
  'sheet.turn': ['How the copies lie', 'Lage der Nutzen'],
  'sheet.turn.best': ['whatever is best', 'was am besten passt'],
  'sheet.turn.0': ['upright', 'aufrecht'],
  'sheet.turn.90': ['a quarter turn right', 'Vierteldrehung rechts'],
  'sheet.turn.180': ['upside down', 'kopfüber'],
  'sheet.turn.270': ['a quarter turn left', 'Vierteldrehung links'],
  'sheet.turn.head-to-tail': ['every other row upside down', 'jede zweite Reihe kopfüber'],
  'sheet.found': ['{0} copies; {1} % of the sheet is blank.', '{0} Nutzen; {1} % des Bogens werden Zuschnitt.'],
  'of.sheets': ['the sheets', 'die Bogen'],
  'job.material': ['Material', 'Material'],
  'job.materialWidthMm': ['Width of the sheet', 'Breite des Bogens'],
  'job.materialHeightMm': ['Height of the sheet', 'Höhe des Bogens'],
  'job.caliperMm': ['Thickness of the board', 'Dicke des Kartons'],
  'job.gripperMm': ['Strip that the machine holds it by', 'Streifen, an dem die Maschine greift'],
  'job.print': ['Print', 'Druck'],
  'job.bleedMm': ['Print beyond the edge (bleed)', 'Druck über die Kante (Beschnitt)'],
  'job.safeMarginMm': ['Clear distance of type from lines', 'Abstand der Schrift von Linien'],
  'job.answers': ['Answers', 'Antworten'],
  'job.hidden': ['Hidden layers', 'Verborgene Ebenen'],
  'job.pictures': ['Pictures beside the drawing', 'Bilder neben der Zeichnung'],
  'job.ask': ['ask', 'fragen'],
  'job.skip': ['leave out', 'auslassen'],
  'job.include': ['take them', 'mitnehmen'],
  'job.stop': ['always ask', 'immer fragen'],
  'job.embed': ['put into the files', 'in die Dateien legen'],
  'job.partPaint': [
    'Shapes with both: fill to print, line to its tool',
    'Formen mit beidem: Fläche in den Druck, Linie ans Werkzeug',
  ],
  artboard: ['{0} × {1} mm', '{0} × {1} mm'],
  sizeUnsure: [
    'The size is not sure: it is stated without a unit.',
    'Die Größe ist nicht sicher: sie steht ohne Einheit da.',
  ],
} as const satisfies Readonly<Record<string, readonly [string, string]>>;

/** A text of the table. */
export type TextKey = keyof typeof TABLE;

/** Says a text; `{0}`, `{1}` stand for what is handed in. */
export type Say = (key: TextKey, ...values: readonly (string | number)[]) => string;

/** Both wordings of every text. */
export const TEXTS: Readonly<Record<TextKey, readonly [string, string]>> = TABLE;

/** The sayer of a language. */
export function sayIn(language: Language): Say {
  const column = language === 'en' ? 0 : 1;
  return (key, ...values) =>
    TEXTS[key][column].replace(/\{(\d)\}/g, (_, at: string) => String(values[Number(at)] ?? ''));
}

/** Says a stage of the work. */
export function sayStage(language: Language, stage: Stage): string {
  return STAGES[stage][language === 'en' ? 0 : 1];
}
