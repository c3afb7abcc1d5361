// The packed package, laid out as an install would lay it out, with nothing in reach but its declared dependencies.
import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { publint } from 'publint';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const ROOT = resolve(import.meta.dirname, '../..');
const MANIFEST = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
  version: string;
  dependencies: Record<string, string>;
};

/** Every public name; a name that comes or goes is a change that CHANGELOG.md tells. */
const VALUES = [
  'describeStrip',
  'drawRegisterTarget',
  'drawTestStrip',
  'printStrip',
  'readMarks',
  'judgeMarks',
  'copiesOf',
  'correctPasses',
  'DEFAULT_LIMITS',
  'DEFAULT_TICKET',
  'FINDING_KINDS',
  'PINBAR_VERSION',
  'PinbarError',
  'ROLES',
  'check',
  'inspect',
  'joinPieces',
  'makeJobRunSheet',
  'makeRunSheet',
  'parseTake',
  'readProfile',
  'readTicket',
  'split',
  'verify',
  'writeTicket',
];
const TYPES = [
  'OwnDrawing',
  'RecordedStep',
  'SteppedSetting',
  'StripRecord',
  'StripRequest',
  'StripStep',
  'TargetRequest',
  'Caution',
  'Entered',
  'Figure',
  'FigureSource',
  'Hazard',
  'LikeStretches',
  'Machine',
  'MachineTimes',
  'MadeRunSheet',
  'Material',
  'ProfileTool',
  'RegisterFigures',
  'RegisterMeans',
  'RunBudget',
  'RunLines',
  'RunPass',
  'RunRegister',
  'RunRequest',
  'RunSettings',
  'RunSheet',
  'RunTime',
  'SheetTurn',
  'TurnedPass',
  'ShopOrder',
  'ShopProfile',
  'TimedRun',
  'ToolSettings',
  'Residual',
  'Corner',
  'SequenceReport',
  'TieReport',
  'TieRequest',
  'SequenceRequest',
  'Stayed',
  'RegisterReport',
  'RegisterFit',
  'PassFile',
  'PassToCorrect',
  'MarkReading',
  'FitKind',
  'DrawnMarks',
  'Correction',
  'CorrectedPass',
  'Artboard',
  'Artwork',
  'Assignment',
  'Box',
  'CancelSignal',
  'CheckGroup',
  'CheckResult',
  'CheckSettings',
  'Colour',
  'ComparedFile',
  'ComparedCopy',
  'Comparison',
  'Conditions',
  'Exclusion',
  'ExtentMm',
  'Finding',
  'FindingCode',
  'FindingKind',
  'Fitness',
  'InspectOptions',
  'InspectedLayer',
  'InspectedStroke',
  'Inspection',
  'JobResult',
  'Json',
  'Fill',
  'Layout',
  'LayoutMethod',
  'SheetRequest',
  'SheetSide',
  'Judgement',
  'Layer',
  'LimitChanges',
  'Limits',
  'MarksRequest',
  'Matrix',
  'NameSource',
  'NamedFile',
  'Outcome',
  'OutputFile',
  'Paint',
  'PaintSource',
  'Part',
  'Pass',
  'PassProof',
  'PassRequest',
  'Place',
  'Placement',
  'Proof',
  'Reason',
  'RoadOptions',
  'Role',
  'Rule',
  'Severity',
  'Shape',
  'ShapeKind',
  'ShapeMatch',
  'Solid',
  'SolidArea',
  'SolidBlank',
  'SolidHinge',
  'SolidPanel',
  'Stage',
  'Suggestion',
  'Ticket',
  'VerifyOptions',
];

const CONSUMER = `import { readFileSync } from 'node:fs';
import { joinPieces, readTicket, split } from 'pinbar';
import schema from 'pinbar/ticket.schema.json' with { type: 'json' };
const bytes = readFileSync(process.argv[2]);
const ticket = readTicket({ pinbar: 1, rules: [{ pass: 'cutting', layer: 'Cut' }, { pass: 'print', rest: true }] });
const job = await split(bytes, ticket, { fileName: 'carton.svg' });
const sizes = job.files.map((file) => joinPieces(file.pieces).length - file.byteLength);
console.log(JSON.stringify({ outcome: job.outcome, names: job.files.map((file) => file.name), sizes, schema: typeof schema }));
`;

const TYPED_CONSUMER = `import { type Finding, inspect, type JobResult, PinbarError, split, type Ticket, verify } from 'pinbar';
import { DEFAULT_TICKET, FINDING_KINDS } from 'pinbar';
const ticket: Ticket = { ...DEFAULT_TICKET, marginMm: 3 };
export async function run(bytes: Uint8Array): Promise<readonly Finding[]> {
  const job: JobResult = await split(bytes, ticket, { fileName: 'a.svg', onProgress: (stage) => stage satisfies string });
  const { artboard } = await inspect(bytes);
  const { inRegister } = await verify([{ name: 'a', bytes }], null, { shiftMm: [artboard.widthMm, 0] });
  if (!inRegister) throw new PinbarError('cancelled', { message: FINDING_KINDS.cancelled.doc });
  return job.findings;
}
// @ts-expect-error A ticket holds no such key.
export const wrong: Ticket = { ...DEFAULT_TICKET, colour: 'red' };
`;

const scratch = mkdtempSync(join(tmpdir(), 'pinbar-package-'));
const installed = join(scratch, 'node_modules', 'pinbar');

function run(command: string, args: readonly string[], cwd = scratch): string {
  const ran = spawnSync(command, args, { cwd, encoding: 'utf8', shell: process.platform === 'win32' });
  if (ran.status !== 0) throw new Error(`${command} ${args.join(' ')}: ${ran.stdout}${ran.stderr}`);
  return ran.stdout;
}

beforeAll(() => {
  run('npm', ['pack', '--ignore-scripts', '--silent', '--pack-destination', scratch], ROOT);
  mkdirSync(installed, { recursive: true });
  run('tar', ['-xzf', `pinbar-${MANIFEST.version}.tgz`, '--strip-components=1', '-C', installed]);
  for (const name of Object.keys(MANIFEST.dependencies)) {
    mkdirSync(dirname(join(scratch, 'node_modules', name)), { recursive: true });
    symlinkSync(join(ROOT, 'node_modules', name), join(scratch, 'node_modules', name), 'junction');
  }
  writeFileSync(join(scratch, 'package.json'), '{"type":"module"}');
});

afterAll(() => rmSync(scratch, { recursive: true, force: true }));

/** Faults a compiler finds in a consumer that has neither Node nor DOM types. */
function checkTypes(options: ts.CompilerOptions): readonly string[] {
  const file = join(scratch, 'consumer.ts');
  writeFileSync(file, TYPED_CONSUMER);
  const program = ts.createProgram([file], {
    ...options,
    target: ts.ScriptTarget.ES2023,
    lib: ['lib.es2023.d.ts'],
    types: [],
    strict: true,
    exactOptionalPropertyTypes: true,
    noEmit: true,
  });
  return ts.getPreEmitDiagnostics(program).map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n'));
}

/** Names that the declarations export, values and types alike. */
function listDeclared(): readonly string[] {
  const door = join(installed, 'dist', 'index.d.ts');
  const program = ts.createProgram([door], {
    module: ts.ModuleKind.NodeNext,
    target: ts.ScriptTarget.ES2023,
    types: [],
    noEmit: true,
  });
  const checker = program.getTypeChecker();
  const symbol = checker.getSymbolAtLocation(program.getSourceFile(door)!)!;
  return checker.getExportsOfModule(symbol).map(({ name }) => name);
}

describe('the packed package', () => {
  it('holds the program, its samples and its papers, and no more', () => {
    const paths = readdirSync(installed, { recursive: true, encoding: 'utf8' }).map((path) =>
      path.replaceAll('\\', '/'),
    );
    const tops = [...new Set(paths.map((path) => path.split('/')[0]!))].sort();
    expect(tops).toEqual(['CHANGELOG.md', 'LICENSE', 'README.md', 'bin', 'dist', 'package.json', 'samples']);
    expect(paths.filter((path) => /test|bench|tsbuildinfo|\.map$|^bin\/(?!pinbar)|^dist\/built/.test(path))).toEqual(
      [],
    );
    expect(existsSync(join(installed, 'dist', 'ticket', 'ticket.schema.json'))).toBe(true);
    expect(existsSync(join(installed, 'dist', 'ticket', 'profile.schema.json'))).toBe(true);
  });

  it('answers to its name', () => {
    expect(run(process.execPath, [join(installed, 'bin', 'pinbar.js'), '--version'])).toBe(`${MANIFEST.version}\n`);
    expect(run(process.execPath, [join(installed, 'bin', 'pinbar.js'), '-V'])).toBe(`${MANIFEST.version}\n`);
  });

  it('splits a sample by its command', () => {
    const sample = join(installed, 'samples', 'tuck-carton.svg');
    const out = run(process.execPath, [join(installed, 'bin', 'pinbar.js'), 'split', sample, '--out', 'job', '--json']);
    expect(JSON.parse(out)).toMatchObject({ outcome: 'in-register' });
    expect(readdirSync(join(scratch, 'job'))).toHaveLength(5);
  });

  it('splits a sample as a library', () => {
    writeFileSync(join(scratch, 'consumer.js'), CONSUMER);
    const sample = join(installed, 'samples', 'tuck-carton.svg');
    const out = run(process.execPath, ['--no-warnings', 'consumer.js', sample]);
    expect(JSON.parse(out)).toEqual({
      outcome: 'in-register',
      names: ['carton.1-print.svg', 'carton.2-cut.svg'],
      sizes: [0, 0],
      schema: 'object',
    });
  });

  it('has these public names', async () => {
    const door = (await import(join(installed, 'dist', 'index.js'))) as object;
    expect(Object.keys(door).sort()).toEqual([...VALUES].sort());
    expect([...listDeclared()].sort()).toEqual([...VALUES, ...TYPES].sort());
  });

  it('keeps its inner files to itself', () => {
    writeFileSync(join(scratch, 'burglar.js'), "await import('pinbar/dist/pipeline.js');");
    expect(() => run(process.execPath, ['burglar.js'])).toThrow('ERR_PACKAGE_PATH_NOT_EXPORTED');
  });

  it('has types that resolve without those of Node and the DOM', { timeout: 60_000 }, () => {
    const { NodeNext, ESNext } = ts.ModuleKind;
    expect(checkTypes({ module: NodeNext, moduleResolution: ts.ModuleResolutionKind.NodeNext })).toEqual([]);
    expect(checkTypes({ module: ESNext, moduleResolution: ts.ModuleResolutionKind.Bundler })).toEqual([]);
  });

  it('passes publint', async () => {
    const { messages } = await publint({ pkgDir: installed, pack: false, strict: true });
    expect(messages).toEqual([]);
  });
});
