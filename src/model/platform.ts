// The few web-platform functions the core calls, typed by hand so that neither DOM nor Node types are needed.
import { joinPieces } from './sheet.js';

interface TextDecoderLike {
  decode(bytes?: Uint8Array): string;
}

interface PlatformGlobals {
  readonly TextEncoder: new () => { encode(text: string): Uint8Array };
  readonly TextDecoder: new (
    label?: string,
    options?: { readonly fatal?: boolean; readonly ignoreBOM?: boolean },
  ) => TextDecoderLike;
  readonly setTimeout: (callback: () => void, delayMs: number) => unknown;
  readonly btoa: (binary: string) => string;
  /** Node's own modules, where there are any. */
  readonly process?: { readonly getBuiltinModule?: (name: string) => unknown };
  /** Node's memcmp and base64, where there are any. */
  readonly Buffer?: {
    compare(a: Uint8Array, b: Uint8Array): number;
    from(buffer: ArrayBufferLike, offset: number, length: number): { toString(encoding: 'base64'): string };
  };
  readonly crypto: {
    readonly subtle: { digest(algorithm: 'SHA-256', bytes: Uint8Array): Promise<ArrayBuffer> };
  };
}

const platform = globalThis as unknown as PlatformGlobals;

/** UTF-8 bytes of a string. */
export function encodeUtf8(text: string): Uint8Array {
  return new platform.TextEncoder().encode(text);
}

/** The string that UTF-8 bytes spell; a leading byte order mark is kept, broken sequences become U+FFFD. */
export function decodeUtf8(bytes: Uint8Array): string {
  return new platform.TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
}

/** The text of a plain file, as editors and spreadsheets save it: UTF-8, or UTF-16 where a byte order mark says so; the mark is left out. */
export function decodeText(bytes: Uint8Array): string {
  const isLittle = bytes[0] === 0xff && bytes[1] === 0xfe;
  const isBig = bytes[0] === 0xfe && bytes[1] === 0xff;
  return new platform.TextDecoder(isLittle ? 'utf-16le' : isBig ? 'utf-16be' : 'utf-8').decode(bytes);
}

/**
 * A strict decoder for a named encoding.
 *
 * @param label - A label of the WHATWG Encoding Standard.
 * @throws RangeError when the platform does not know the label; its `decode` throws TypeError on broken bytes.
 */
export function strictDecoder(label: string): TextDecoderLike {
  return new platform.TextDecoder(label, { fatal: true });
}

interface NodeCrypto {
  createHash(algorithm: 'sha256'): { update(bytes: Uint8Array): unknown; digest(encoding: 'hex'): string };
}

function toHex(digest: Uint8Array): string {
  let hex = '';
  for (const byte of digest) hex += byte.toString(16).padStart(2, '0');
  return hex;
}

/**
 * SHA-256 of bytes in pieces, in lower-case hexadecimal.
 *
 * The web's digest takes one stretch only and copies it; where Node is at hand, its hash takes the pieces as they are, so that a
 * large file does not stand in memory twice.
 */
export async function sha256Hex(pieces: readonly Uint8Array[]): Promise<string> {
  const crypto = platform.process?.getBuiltinModule?.('node:crypto') as NodeCrypto | undefined;
  if (crypto === undefined) {
    const bytes = pieces.length === 1 ? pieces[0]! : joinPieces(pieces);
    return toHex(new Uint8Array(await platform.crypto.subtle.digest('SHA-256', bytes)));
  }
  const hash = crypto.createHash('sha256');
  for (const piece of pieces) hash.update(piece);
  return hash.digest('hex');
}

/** What a caller hands over to stop a long run; an AbortSignal fits. */
export interface CancelSignal {
  readonly aborted: boolean;
}

/** Base64 of some bytes. */
export function encodeBase64(bytes: Uint8Array): string {
  if (platform.Buffer !== undefined) {
    return platform.Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).toString('base64');
  }
  let binary = '';
  for (let at = 0; at < bytes.length; at += 0x8000) {
    binary += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  }
  return platform.btoa(binary);
}

/** Whether two stretches hold the same bytes. */
export function equalBytes(a: Uint8Array, b: Uint8Array): boolean {
  if (a.length !== b.length) return false;
  if (platform.Buffer !== undefined && a.length > 32) return platform.Buffer.compare(a, b) === 0;
  for (let i = 0; i < a.length; i += 1) if (a[i] !== b[i]) return false;
  return true;
}

/** Lets other work of the event loop run, so that a stop can be noticed. */
export function pause(): Promise<void> {
  return new Promise((resume) => {
    platform.setTimeout(resume, 0);
  });
}
