import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import Ajv from 'ajv-draft-04';
import { describe, expect, it } from 'vitest';
import { makeSigner, signRecord } from '../../src/records/sign.ts';
import { attemptStatements, recordStatements, type Statement } from '../../src/records/xapi.ts';
import { altered } from './support/alter.ts';
import { attemptOf, MARKS, recordOver, STOPPED } from './support/attempt.ts';

/**
 * The outside witness: the JSON Schema of the open format's statements as published in the package
 * tin-can-json-schema (version 1.0.1 of the format, whose fields of a statement IEEE 9274.1.1 keeps), run by Ajv.
 */
const require = createRequire(import.meta.url);
const read = (name: string) =>
  JSON.parse(readFileSync(require.resolve(`tin-can-json-schema/${name}`), 'utf8'));
const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
for (const [name, pattern] of Object.entries<string>(read('formats.json')))
  ajv.addFormat(name, new RegExp(pattern));
ajv.addSchema({ ...read('1.0.1.json'), id: 'format' });
const validate = ajv.compile({ $ref: 'format#statement' });

/** What the schema has against a statement after its way through JSON. */
function against(statement: unknown): string[] {
  validate(JSON.parse(JSON.stringify(statement)));
  return (validate.errors ?? []).map((error) => `${error.instancePath} ${error.message}`);
}

const attempt = {
  ...attemptOf('a-1'),
  entries: [
    ...attemptOf('a-1').entries,
    {
      ...attemptOf('a-1').entries[0]!,
      n: 40,
      atMs: 60_000,
      action: {
        type: 'verdict.write' as const,
        verdict: {
          part: 'armature' as const,
          findings: [
            { condition: 'openCoil' as const, place: { kind: 'pair' as const, count: 3 } },
            { condition: 'worn' as const, place: { kind: 'somewhere' as const } },
          ],
          disposition: 'winder' as const,
          sure: 0.8,
          because: 'lines 4 to 9',
        },
      },
    },
  ],
};
const statements = attemptStatements(attempt, MARKS);

describe('statements of an attempt', () => {
  it('are valid to a schema we did not write', () => {
    expect(statements.flatMap(against)).toEqual([]);
  });

  it('are held to it: the schema finds what is wrong', () => {
    const wrong: [string, unknown][] = [
      ['id', 'a-1'],
      ['verb', {}],
      ['timestamp', 'yesterday'],
      ['actor.account.homePage', 'not an address'],
      ['context.registration', 'a-1'],
      ['extra', 1],
    ];
    for (const [path, to] of wrong) expect(against(altered(statements[0], path, to)), path).not.toEqual([]);
    expect(against(altered(statements.at(-1), 'result.score.scaled', 2))).not.toEqual([]);
    expect(against(altered(statements.at(-1), 'result.duration', '90 s'))).not.toEqual([]);
  });

  it('say who began, what was answered, each mark, and how it ended', () => {
    expect(statements.map(({ verb }) => verb.display.en)).toEqual([
      'attempted',
      'answered',
      'scored',
      'scored',
      'completed',
    ]);
    expect(statements[1]?.result?.response).toBe(
      'openCoil at pair 3 from the chalk, worn; next: winder; sure: 0.8; because: lines 4 to 9',
    );
    expect(statements[1]?.timestamp).toBe('2026-03-02T08:31:00.000Z');
    expect(statements.at(-1)?.result).toEqual({
      completion: true,
      score: { scaled: 26.5 / 30, raw: 26.5, min: 0, max: 30 },
      duration: 'PT60S',
    });
  });

  it('say that a critical act ended it', () => {
    const last = attemptStatements(attempt, STOPPED).at(-1);
    expect(last).toMatchObject({ verb: { display: { en: 'terminated' } }, result: { completion: false } });
  });

  it('have ids that are all different, and the same when they are made again', () => {
    const ids = statements.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(attemptStatements(attempt, MARKS).map(({ id }) => id)).toEqual(ids);
    expect(attemptStatements({ ...attempt, id: 'a-2' }, MARKS).some(({ id }) => ids.includes(id))).toBe(
      false,
    );
  });

  it('say nothing of the hidden fault', () => {
    expect(JSON.stringify(statements)).not.toMatch(/hidden|fault|seed|supplyReference/);
  });

  it('are valid for a learner without a name and a job worth nothing', () => {
    const bare = attemptStatements({ ...attempt, learner: ' ' }, { ...MARKS, marks: [], earned: 0, of: 0 });
    expect(bare.flatMap(against)).toEqual([]);
  });
});

describe('statements of a signed record', () => {
  it('are valid, tie the decision to attempt, assessor and key, and keep both points of a changed mark', async () => {
    const { subtle } = globalThis.crypto;
    const unsigned = recordOver([{ attempt: 'a-1', seal: '0'.repeat(64) }]);
    const signer = await makeSigner(subtle);
    const { record } = await signRecord(unsigned, signer, '2026-03-02T11:00:00.000Z', subtle);
    const [made, ...more]: Statement[] = recordStatements(record);
    expect(more).toEqual([]);
    expect(against(made)).toEqual([]);
    expect(made?.verb.display.en).toBe('passed');
    expect(made?.context.registration).toBe(statements[0]?.context.registration);
    expect(made?.context.instructor?.name).toBe('R. Lindqvist');
    expect(made?.result?.score?.raw).toBe(28);
    const text = JSON.stringify(made);
    expect(text).toContain(signer.fingerprint);
    expect(text).toContain('"from":6.5,"to":8');
  });
});
