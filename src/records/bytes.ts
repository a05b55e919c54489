import type { Bytes, Subtle } from './crypto.ts';

/** UTF-8 (RFC 3629) of a text; a lone surrogate becomes U+FFFD. */
export function utf8(text: string): Bytes {
  const bytes = new Uint8Array(text.length * 3);
  let end = 0;
  for (const letter of text) end = putCodePoint(bytes, end, letter.codePointAt(0)!);
  return bytes.slice(0, end);
}

/** @returns where the next byte goes */
function putCodePoint(bytes: Bytes, at: number, found: number): number {
  const point = found >= 0xd800 && found <= 0xdfff ? 0xfffd : found;
  if (point < 0x80) {
    bytes[at] = point;
    return at + 1;
  }
  const extra = point < 0x800 ? 1 : point < 0x10000 ? 2 : 3;
  const lead = [0, 0xc0, 0xe0, 0xf0][extra]!;
  bytes[at] = lead | (point >> (6 * extra));
  for (let n = 1; n <= extra; n++) bytes[at + n] = 0x80 | ((point >> (6 * (extra - n))) & 0x3f);
  return at + extra + 1;
}

/** Lower-case hexadecimal digits, two a byte. */
export function hex(buffer: ArrayBuffer): string {
  return Array.from(new Uint8Array(buffer), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** @returns null where the text is not pairs of hexadecimal digits */
export function fromHex(text: string): Bytes | null {
  if (!/^(?:[0-9a-f]{2})+$/i.test(text)) return null;
  return Uint8Array.from(text.match(/../g)!, (pair) => Number.parseInt(pair, 16));
}

/** Hexadecimal digits in groups of four, as they are read out over a telephone or compared with a print. */
export function grouped(digits: string): string {
  return digits.match(/.{1,4}/g)?.join(' ') ?? '';
}

/** SHA-256 (FIPS 180-4) of a text in UTF-8, as hexadecimal digits. */
export async function sha256(text: string, subtle: Subtle): Promise<string> {
  return hex(await subtle.digest('SHA-256', utf8(text)));
}
