/** Where reading JSON stopped. `atEnd`: the text ended before its value did, as a truncated file does. */
export interface JsonStop {
  readonly line: number;
  readonly column: number;
  readonly atEnd: boolean;
  readonly expected: string;
}

type Want = 'value' | 'valueOrClose' | 'key' | 'keyOrClose' | 'colon' | 'next';
const WANTED: Readonly<Record<Want, string>> = {
  value: 'a value',
  valueOrClose: 'a value or ]',
  key: 'a field name in double quotes',
  keyOrClose: 'a field name in double quotes or }',
  colon: 'a colon after the field name',
  next: 'a comma or the closing bracket',
};

/** A reader's place in the text: brackets still open (their closing marks) and what must come next. */
interface Reader {
  readonly text: string;
  at: number;
  want: Want;
  readonly closes: ('}' | ']')[];
}

const SPACE = /[ \t\r\n]*/y;
const SCALAR = /(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![\w.])/y;
/** The beginning of a number or word that runs into the end of the file: cut off, not misspelt. */
const CUT_SCALAR = /(?:-?[\d.eE+-]*|t|tr|tru|f|fa|fal|fals|n|nu|nul)$/y;

/** End of a match that begins exactly at `at`, or -1. */
function matchEnd(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : -1;
}

const ESCAPE = /^(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/;
const CUT_ESCAPE = /^(?:u[0-9a-fA-F]{0,3})?$/;

/** End of the quoted text that begins at `at`; -1 when there is none, past the end of the text when it is cut off. */
function quotedEnd(text: string, at: number): number {
  if (text[at] !== '"') return -1;
  for (let i = at + 1; i < text.length; i++) {
    if (text[i] === '"') return i + 1;
    if (text.charCodeAt(i) < 0x20) return -1;
    if (text[i] === '\\') {
      const rest = text.slice(i + 1, i + 6);
      if (CUT_ESCAPE.test(rest)) break;
      if (!ESCAPE.test(rest)) return -1;
      i += 1;
    }
  }
  return text.length + 1;
}

function advance(reader: Reader, end: number, want: Want): boolean {
  if (end < 0) return false;
  reader.at = Math.min(end, reader.text.length);
  if (end > reader.text.length) return false;
  reader.want = want;
  return true;
}

function openBracket(reader: Reader, char: '{' | '['): boolean {
  reader.closes.push(char === '{' ? '}' : ']');
  return advance(reader, reader.at + 1, char === '{' ? 'keyOrClose' : 'valueOrClose');
}

function closeBracket(reader: Reader): boolean {
  reader.closes.pop();
  return advance(reader, reader.at + 1, 'next');
}

function readValue(reader: Reader, char: string | undefined): boolean {
  if (char === '{' || char === '[') return openBracket(reader, char);
  if (char === '"') return advance(reader, quotedEnd(reader.text, reader.at), 'next');
  return advance(reader, matchEnd(SCALAR, reader.text, reader.at), 'next');
}

/** Takes one mark, name or value; false where the text is not what must come next. */
function step(reader: Reader): boolean {
  const char = reader.text[reader.at];
  const mayClose = reader.want === 'next' || reader.want.endsWith('OrClose');
  if (mayClose && char !== undefined && char === reader.closes.at(-1)) return closeBracket(reader);
  switch (reader.want) {
    case 'value':
    case 'valueOrClose':
      return readValue(reader, char);
    case 'key':
    case 'keyOrClose':
      return advance(reader, quotedEnd(reader.text, reader.at), 'colon');
    case 'colon':
      return char === ':' && advance(reader, reader.at + 1, 'value');
    case 'next':
      return char === ',' && advance(reader, reader.at + 1, reader.closes.at(-1) === '}' ? 'key' : 'value');
  }
}

/**
 * Finds where a text stops being JSON, or null when nothing is wrong. The platform's own reader decides whether a
 * text is JSON; this only finds the place, which readers word differently or leave out.
 */
export function findJsonStop(text: string): JsonStop | null {
  const reader: Reader = { text, at: 0, want: 'value', closes: [] };
  for (;;) {
    reader.at = matchEnd(SPACE, text, reader.at);
    const whole = reader.want === 'next' && reader.closes.length === 0;
    if (whole && reader.at >= text.length) return null;
    if (whole) return stopAt(reader, 'nothing more');
    if (!step(reader)) return stopAt(reader, WANTED[reader.want]);
  }
}

function stopAt({ text, at }: Reader, expected: string): JsonStop {
  const before = text.slice(0, at);
  const cut = at >= text.length || matchEnd(CUT_SCALAR, text, at) === text.length;
  return { line: before.split('\n').length, column: at - before.lastIndexOf('\n'), atEnd: cut, expected };
}
