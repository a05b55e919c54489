import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromHex, grouped, hex, sha256, utf8 } from '../../src/records/bytes.ts';
import { canonicalText } from '../../src/records/canonical.ts';
import { firstChange, tagsOf } from '../../src/records/leaves.ts';
import { sealAttempt, verifySeal } from '../../src/records/seal.ts';
import { altered, numbersIn } from './support/alter.ts';
import { attemptOf } from './support/attempt.ts';

const { subtle } = globalThis.crypto;

describe('canonical JSON', () => {
  it('writes the sample of RFC 8785, section 3.2.2 (from memory) as section 3.2.3 does', () => {
    const sample = JSON.parse(
      '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],' +
        '"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}',
    );
    expect(canonicalText(sample)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],' +
        '"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
  });

  it('is the same for a value in memory and for the value read back from its file', () => {
    fc.assert(
      fc.property(fc.anything({ maxDepth: 4 }), (value) => {
        const written = JSON.stringify(value);
        fc.pre(written !== undefined);
        expect(canonicalText(JSON.parse(written))).toBe(canonicalText(value));
      }),
    );
  });

  it('does not stumble over half a surrogate pair', () => {
    expect(canonicalText({ remark: 'cut \ud83d' })).toBe(canonicalText({ remark: 'cut \ufffd' }));
  });
});

describe('bytes', () => {
  it('writes UTF-8 as the platform’s own encoder does', () => {
    fc.assert(
      fc.property(
        fc.string({
          unit: fc.integer({ min: 0, max: 0x10ffff }).map((point) => String.fromCodePoint(point)),
        }),
        (text) => {
          expect(utf8(text)).toEqual(new TextEncoder().encode(text));
        },
      ),
    );
    expect(utf8('\ud800x')).toEqual(new TextEncoder().encode('\ud800x'));
  });

  it('hashes the one-block message of the FIPS 180 examples', async () => {
    // "abc": FIPS 180-2, appendix B.1 (from memory; `printf abc | sha256sum` says the same).
    expect(await sha256('abc', subtle)).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
  });

  it('reads back the hexadecimal it writes, and nothing else', () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 1 }), (bytes) => {
        expect(fromHex(hex(new Uint8Array(bytes).buffer))).toEqual(new Uint8Array(bytes));
      }),
    );
    expect(fromHex('abc')).toBeNull();
    expect(fromHex('zz')).toBeNull();
    expect(grouped('0123456789')).toBe('0123 4567 89');
  });
});

describe('the seal of an attempt', () => {
  it('holds for the attempt it was made over, in memory and out of a file', async () => {
    const attempt = attemptOf('a-1');
    const seal = await sealAttempt(attempt, subtle);
    expect(await verifySeal(attempt, seal, subtle)).toBeNull();
    const file = JSON.parse(JSON.stringify({ seal, attempt }, null, 2));
    expect(await verifySeal(file.attempt, file.seal, subtle)).toBeNull();
  });

  it('holds for an attempt without a single entry', async () => {
    const attempt = attemptOf('a-1', 0);
    expect(await verifySeal(attempt, await sealAttempt(attempt, subtle), subtle)).toBeNull();
  });

  it.each<[string, string, unknown, number | null]>([
    ['a turn', 'entries[5].action.byDeg', 16, 5],
    ['an entry’s time', 'entries[17].atMs', 25_501, 17],
    ['a reading', 'entries[13].action.line.readingA', 4.3, 13],
    ['an outcome', 'entries[3].outcome.kind', 'refused', 3],
    ['the hidden half', 'scenario.hidden.seed', 1, null],
    ['the name', 'learner', 'Someone else', null],
    ['an added field', 'entries[9].before.extra', 1, 9],
  ])('names the changed place: %s', async (_, path, to, entry) => {
    const attempt = attemptOf('a-1');
    const found = await verifySeal(altered(attempt, path, to), await sealAttempt(attempt, subtle), subtle);
    expect(found).toMatchObject({ path, entry });
    expect(found?.sentence).toContain(entry === null ? path : `entry ${entry}`);
  });

  it('names the first of two changed places', async () => {
    const attempt = attemptOf('a-1');
    const twice = altered(altered(attempt, 'entries[30].atMs', 2), 'entries[8].atMs', 1);
    const found = await verifySeal(twice, await sealAttempt(attempt, subtle), subtle);
    expect(found?.path).toBe('entries[8].atMs');
  });

  it('says which entry stands where another stood, when one was taken out or put in', async () => {
    const attempt = attemptOf('a-1');
    const { entries } = attempt;
    const seal = await sealAttempt(attempt, subtle);
    const without = { ...attempt, entries: entries.toSpliced(10, 1) };
    expect(await verifySeal(without, seal, subtle)).toMatchObject({
      entry: 10,
      sentence: expect.stringContaining('where entry 10 of the log stood, entry 11 stands now'),
    });
    const shorter = { ...attempt, entries: entries.slice(0, -1) };
    expect(await verifySeal(shorter, seal, subtle)).toMatchObject({ path: 'entries[39]' });
    const longer = { ...attempt, entries: [...entries, { ...entries[39]!, n: 40 }] };
    expect(await verifySeal(longer, seal, subtle)).toMatchObject({ path: 'entries[40]', entry: 40 });
  });

  it.each([
    ['its end', 'end', 'f'.repeat(64), 'seal.end'],
    ['its tags', 'tags.entries[4]', 'ffff', 'seal.tags'],
    ['its name', 'attempt', 'a-2', 'seal.attempt'],
  ])('tells an altered seal from an altered attempt: %s', async (_, at, to, path) => {
    const attempt = attemptOf('a-1');
    const seal = altered(await sealAttempt(attempt, subtle), at, to);
    expect(await verifySeal(attempt, seal, subtle)).toMatchObject({ path, entry: null });
  });

  it('notices any single changed number, and names it but for a chance of 1 in 65,536', async () => {
    const attempt = attemptOf('a-1', 12);
    const seal = await sealAttempt(attempt, subtle);
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...numbersIn(attempt)),
        fc.integer({ min: 1, max: 1e6 }),
        async ({ path, number }, more) => {
          const found = await verifySeal(altered(attempt, path, number + more), seal, subtle);
          expect(found).not.toBeNull();
          // Two values with the same tag hide the place inside the entry, never the entry.
          if (found?.path !== path) expect(found?.path).toBe(`entries[${found?.entry}]`);
        },
      ),
    );
  });
});

describe('tags of values', () => {
  it('find the value that was changed in any JSON value', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => {
        expect(firstChange(value, tagsOf(value))).toBeNull();
        expect(firstChange({ value, more: 1 }, tagsOf({ value }))).toBe('more');
      }),
    );
  });
});
