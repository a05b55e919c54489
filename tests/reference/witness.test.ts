import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judge, type WitnessCase, within, worst } from './case.ts';
import { WITNESS_GROUPS } from './groups.ts';
import { page, WITNESS_PAGE } from './report.ts';

/** The same cases as the `witness` command, row by row. */
describe.each(WITNESS_GROUPS.map((group) => [group.title, group] as const))('%s', (_title, group) => {
  it.each(group.cases.map((one) => [one.id, one.quantity, one] as const))(
    '%s %s',
    async (_id, _what, one) => {
      const { failure } = await judge(one);
      expect(failure).toBeNull();
    },
  );
});

describe('the witness table', () => {
  const cases = WITNESS_GROUPS.flatMap((group) => group.cases);

  it('names every row once', () => {
    const ids = cases.map((one) => one.id);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  });

  it('has at least sixty circuits solved by ngspice in this run, of every fault kind', () => {
    const live = cases.filter((one) => one.verified === 'live');
    expect(live.length).toBeGreaterThanOrEqual(60);
    for (const one of live) expect(one.tolerance).toEqual(within(1e-6));
  });

  it('is the page of the docs, row by row: run `npm run -s witness` when rows have changed', () => {
    const written = readFileSync(WITNESS_PAGE, 'utf8');
    const rows = written.split('\n').flatMap((line) => /^\| (\S+) \| .* \| pass \|$/.exec(line)?.[1] ?? []);
    expect(rows).toEqual(cases.map((one) => one.id));
  });

  it('calls nothing common practice that has a source, nor the other way round', () => {
    for (const one of cases)
      expect(one.verified === 'practice', one.id).toBe(one.source === 'common practice, no source');
  });
});

describe('judging a row', () => {
  const one: WitnessCase = {
    id: 'x',
    quantity: 'x',
    unit: '-',
    source: 'x',
    verified: 'calc',
    standing: 'independent',
    tolerance: within(0.01),
    find: () => ({ ours: 1.02, reference: 1 }),
  };

  it('fails what lies outside its tolerance, is no number, or throws', async () => {
    expect((await judge(one)).pass).toBe(false);
    expect((await judge({ ...one, find: () => ({ ours: Number.NaN, reference: 1 }) })).pass).toBe(false);
    expect((await judge({ ...one, find: () => ({ ours: 'a', reference: 'b' }) })).pass).toBe(false);
    const thrown = await judge({
      ...one,
      find: () => {
        throw new Error('broken');
      },
    });
    expect(thrown).toMatchObject({ pass: false, failure: 'broken' });
    expect(page([{ group: { title: 't', about: 'a', cases: [one] }, outcomes: [thrown] }])).toContain('FAIL');
  });

  it('passes what lies within, and finds the worst of many', async () => {
    expect((await judge({ ...one, find: () => ({ ours: 1.005, reference: 1 }) })).pass).toBe(true);
    expect(worst([1, 2.5, 3], [1, 2, 4])).toEqual({ ours: 3, reference: 4, scale: 4 });
    expect(() => worst([Number.NaN], [1])).toThrow('Expected a number');
  });
});
