import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csv } from '../../src/records/csv.ts';
import { makeSigner, signRecord } from '../../src/records/sign.ts';
import { attemptsCsv, logCsv, marksCsv, outcomesCsv, recordCsv } from '../../src/records/tables.ts';
import { attemptOf, MARKS, recordOver } from './support/attempt.ts';

/** Rows as an independent reader (the package csv-parse) takes them, by header. */
const rowsOf = (text: string) =>
  parse(text, { columns: true, record_delimiter: '\r\n' }) as Record<string, string>[];

describe('comma-separated text', () => {
  it('follows the examples of RFC 4180, section 2 (from memory)', () => {
    expect(csv(['field_name'], [['aaa']])).toBe('field_name\r\naaa\r\n');
    expect(csv(['a', 'b', 'c'], [['a"aa', 'b\r\nbb', 'ccc']])).toBe('a,b,c\r\n"a""aa","b\r\nbb",ccc\r\n');
  });

  it('comes back from an independent reader as it was written', () => {
    // Texts a spreadsheet would take for formulas are changed on purpose and have their own test.
    const letter = fc.constantFrom('a', ' ', ',', '"', "'", '\r', '\n', ';', '=', '-', '\t', 'é', '€', '🔧');
    const cell = fc.string({ unit: letter }).filter((text) => !/^\s*[=+\-@\t\r＝＋－＠]/.test(text));
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { maxLength: 8 }), (rows) => {
        expect(rowsOf(csv(['one', 'two'], rows))).toEqual(rows.map(([one, two]) => ({ one, two })));
      }),
    );
  });

  it('lets no text begin a formula, and leaves numbers alone', () => {
    for (const text of ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =1', '＝1', '=HYPERLINK("x";"y")'])
      expect(rowsOf(csv(['a'], [[text]]))).toEqual([{ a: `'${text}` }]);
    expect(rowsOf(csv(['a', 'b', 'c', 'd'], [[-1.5, 1e-7, true, null]]))).toEqual([
      { a: '-1.5', b: '1e-7', c: 'true', d: '' },
    ]);
  });
});

describe('tables', () => {
  it('give the log, one act a row', () => {
    const rows = rowsOf(logCsv(attemptOf('a-1', 7)));
    expect(rows).toHaveLength(7);
    expect(rows[3]).toEqual({
      entry: '3',
      time_s: '4.5',
      act: 'selector.turn',
      particulars: 'to=high',
      outcome: 'done',
      said: '',
      rules_broken: '',
      critical: 'false',
    });
    expect(rows[6]?.particulars).toBe('line={"test":"neighbour","count":2,"readingA":4.2,"rangeA":15}');
  });

  it('give the marks with the entries behind them', () => {
    const [first] = rowsOf(marksCsv('a-1', MARKS));
    expect(first).toMatchObject({ mark: 'groundPass', earned: '6.5', of: '10', entries: '12 14' });
  });

  it('give a record with computed and changed points side by side', async () => {
    const { subtle } = globalThis.crypto;
    const unsigned = recordOver([
      { attempt: 'a-1', seal: '0'.repeat(64) },
      { attempt: 'a-2', seal: '1'.repeat(64) },
    ]);
    const { record } = await signRecord(unsigned, await makeSigner(subtle), '2026-03-02T11:00:00Z', subtle);
    const rows = rowsOf(recordCsv(record));
    expect(rows).toHaveLength(4);
    expect(rows[0]).toMatchObject({ computed: '6.5', after_assessor: '8', outcome: 'competent' });
    expect(rows[0]?.reasons).toContain('6.5 to 8: The other nine bars');
    expect(rows[2]).toMatchObject({ attempt: 'a-2', computed: '6.5', after_assessor: '6.5', reasons: '' });
    expect(rowsOf(outcomesCsv([record]))).toEqual([
      expect.objectContaining({ attempts: '2', earned: '54.5', of: '60' }),
    ]);
  });

  it('give a class list, names that are formulas made harmless', () => {
    const row = {
      id: 'a-1',
      learner: '=cmd()',
      job: 'Dynamo, canal boat',
      startedAt: '2026-03-02T08:30:00Z',
      mode: 'assessed',
      minutes: 12.5,
      state: 'handedIn',
      earned: 3,
      of: 10,
      outcome: null,
    };
    expect(rowsOf(attemptsCsv([row]))).toEqual([
      expect.objectContaining({
        learner: "'=cmd()",
        job: 'Dynamo, canal boat',
        minutes: '12.5',
        outcome: '',
      }),
    ]);
  });
});
