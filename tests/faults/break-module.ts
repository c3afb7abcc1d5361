// One module of pinbar with a fault put into its text, in the place of the sound one.
import { readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import ts from 'typescript';
import { vi } from 'vitest';
import type * as door from '../../src/index.js';
import { changeText } from '../findings/sample.js';

const SOURCE = join(import.meta.dirname, '..', '..', 'src');

/** A fault: words of a file of src, and what stands there instead. */
export interface TextFault {
  /** Path below src. */
  readonly file: string;
  readonly changes: readonly (readonly [from: string, to: string])[];
}

type Module = Readonly<Record<string, unknown>>;

function compile(fault: TextFault): string {
  const path = join(SOURCE, fault.file);
  let text = readFileSync(path, 'utf8');
  for (const [from, to] of fault.changes) text = changeText(text, from, to);
  const compilerOptions = { module: ts.ModuleKind.CommonJS, target: ts.ScriptTarget.ES2023 };
  const { outputText, diagnostics } = ts.transpileModule(text, { compilerOptions, reportDiagnostics: true });
  if (diagnostics?.length !== 0) throw new Error(`the fault in ${fault.file} is no TypeScript`);
  return outputText;
}

/** Runs a compiled module on the modules that the rest of the program has too. */
async function evaluate(fault: TextFault): Promise<Module> {
  const code = compile(fault);
  const needed = new Map<string, Module>();
  for (const [, name] of code.matchAll(/require\("([^"]+)"\)/g)) {
    const path = relative(import.meta.dirname, join(dirname(join(SOURCE, fault.file)), name!));
    needed.set(name!, (await import(/* @vite-ignore */ path)) as Module);
  }
  const exports: Record<string, unknown> = {};
  new Function('exports', 'require', code)(exports, (name: string) => needed.get(name));
  return exports;
}

/** The door of a program that has the fault; the caller must call `vi.resetModules()` when done. */
export async function loadBroken(fault: TextFault): Promise<typeof door> {
  vi.resetModules();
  const path = join(SOURCE, fault.file).replace(/\.ts$/, '.js');
  vi.doMock(path, () => evaluate(fault));
  try {
    return await import('../../src/index.js');
  } finally {
    vi.doUnmock(path);
  }
}
