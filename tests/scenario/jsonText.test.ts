import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findJsonStop } from '../../src/scenario/jsonStop.ts';
import { parseJsonText } from '../../src/scenario/jsonText.ts';

const sentence = (text: string) => {
  const read = parseJsonText(text, 'a scenario file', 1000);
  return read.ok ? 'read' : `${read.issues[0]!.path}|${read.issues[0]!.sentence}`;
};

describe('text that is not JSON', () => {
  it.each([
    ['', '|Expected a scenario file, but the file is empty.'],
    ['  \n', '|Expected a scenario file, but the file is empty.'],
    [
      '{\n  "a": 1,\n  b: 2\n}',
      "line 3, column 3|This is not JSON: expected a field name in double quotes at line 3, column 3, but 'b: 2' came.",
    ],
    [
      '{"a": 1,}',
      "line 1, column 9|This is not JSON: expected a field name in double quotes at line 1, column 9, but '}' came.",
    ],
    [
      '{"a" 1}',
      "line 1, column 6|This is not JSON: expected a colon after the field name at line 1, column 6, but '1}' came.",
    ],
    [
      '[1 2]',
      "line 1, column 4|This is not JSON: expected a comma or the closing bracket at line 1, column 4, but '2]' came.",
    ],
    ['[01]', "line 1, column 2|This is not JSON: expected a value or ] at line 1, column 2, but '01]' came."],
    ['{} x', "line 1, column 4|This is not JSON: expected nothing more at line 1, column 4, but 'x' came."],
    [
      '{"a": [1, 2',
      'line 1, column 12|The file ends too soon, as if cut off: expected a comma or the closing bracket at line 1, column 12.',
    ],
    [
      '{"a": "ab',
      'line 1, column 10|The file ends too soon, as if cut off: expected a value at line 1, column 10.',
    ],
    [
      '{"a": tr',
      'line 1, column 7|The file ends too soon, as if cut off: expected a value at line 1, column 7.',
    ],
  ])('%j', (text, wanted) => {
    expect(sentence(text)).toBe(wanted);
  });

  it('is refused by its size before anything else', () => {
    expect(sentence('x'.repeat(1001))).toBe('|Expected a scenario file of at most 1 kB, but 2 kB came.');
  });

  it('a long cut-off text and deep brackets are located too', () => {
    expect(findJsonStop(`{"a": "${'x'.repeat(3_000_000)}`)?.atEnd).toBe(true);
    expect(findJsonStop('['.repeat(1_000_000))?.atEnd).toBe(true);
  });
});

describe('the place where JSON stops', () => {
  it('is found exactly where the platform refuses the text', () => {
    const jsonish = fc.oneof(
      fc.json(),
      fc
        .tuple(fc.json(), fc.nat(), fc.constantFrom('', ',', '}', ']', '"', 'x', '0', ':', ' '))
        .map(([text, at, put]) => {
          const cut = at % (text.length + 1);
          return text.slice(0, cut) + put + text.slice(cut + 1);
        }),
    );
    fc.assert(
      fc.property(jsonish, (text) => {
        let platform = true;
        try {
          JSON.parse(text);
        } catch {
          platform = false;
        }
        expect(findJsonStop(text) === null).toBe(platform);
      }),
      { numRuns: 2000 },
    );
  });

  it('every beginning of a sound text is called cut off', () => {
    fc.assert(
      fc.property(fc.object(), fc.nat(), (value, at) => {
        const text = JSON.stringify(value);
        const cut = text.slice(0, at % text.length);
        fc.pre(cut !== '');
        expect(findJsonStop(cut)?.atEnd).toBe(true);
      }),
    );
  });
});
