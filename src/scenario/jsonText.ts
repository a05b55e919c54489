import { findJsonStop, type JsonStop } from './jsonStop.ts';
import type { Issue, Parsed } from './scenario.ts';

function sizeText(size: number): string {
  return size >= 1e6 ? `${(size / 1e6).toFixed(1)} MB` : `${Math.ceil(size / 1e3)} kB`;
}

/** Says that a file is larger than this kind of file can be; null when it is not. `size` in bytes or characters. */
export function tooLarge(size: number, what: string, most: number): Issue | null {
  if (size <= most) return null;
  const sentence = `Expected ${what} of at most ${sizeText(most)}, but ${sizeText(size)} came.`;
  return { path: '', sentence };
}

/**
 * Reads JSON text, every failure as one sentence with the place.
 * @param what  what the text should be, as in "a scenario file"
 * @param most  largest size accepted, characters
 */
export function parseJsonText(text: string, what: string, most: number): Parsed<unknown> {
  const large = tooLarge(text.length, what, most);
  if (large !== null) return { ok: false, issues: [large] };
  const body = text.startsWith('\ufeff') ? text.slice(1) : text;
  if (body.trim() === '')
    return { ok: false, issues: [{ path: '', sentence: `Expected ${what}, but the file is empty.` }] };
  try {
    return { ok: true, value: JSON.parse(body) };
  } catch {
    return { ok: false, issues: [notJson(body, what)] };
  }
}

function notJson(text: string, what: string): Issue {
  const stop = findJsonStop(text);
  if (stop === null)
    return { path: '', sentence: `Expected ${what} in JSON, but it cannot be read as JSON.` };
  const place = `line ${stop.line}, column ${stop.column}`;
  return {
    path: place,
    sentence: stop.atEnd
      ? `The file ends too soon, as if cut off: expected ${stop.expected} at ${place}.`
      : `This is not JSON: expected ${stop.expected} at ${place}, but ${came(text, stop)} came.`,
  };
}

function came(text: string, stop: JsonStop): string {
  const line = text.split('\n', stop.line).at(-1) ?? '';
  const piece = line.slice(stop.column - 1, stop.column + 11).trim();
  return piece === '' ? 'the end of the line' : `'${piece}'`;
}
