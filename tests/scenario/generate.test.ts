import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  difficulties,
  FAMILIES,
  type Family,
  generateScenario,
  tellable,
  type Wish,
} from '../../src/scenario/generate.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { partLibrary } from './files.ts';

const library = partLibrary();
const parts = [...library.keys()];

/** Any wish the generator grants. */
const wish: fc.Arbitrary<Wish> = fc.constantFrom(...library.values()).chain((design) =>
  fc.record({
    seed: fc.nat(),
    part: fc.constant(design.id),
    family: fc.constantFrom(...tellable(design)),
    difficulty: fc.constantFrom(...difficulties(design)),
  }),
);
const kinds = ({ hidden }: Scenario) => hidden.armature.faults.map(({ kind }) => kind);

describe('the generator of jobs', () => {
  it('makes files that can be read, and the same one for the same wish', () => {
    fc.assert(
      fc.property(wish, (asked) => {
        const made = generateScenario(asked, library);
        const read = parseScenario(JSON.parse(JSON.stringify(made)), library);
        expect(read.ok ? [] : read.issues).toEqual([]);
        expect(generateScenario(asked, library)).toEqual(made);
      }),
      { numRuns: 400 },
    );
  });

  it('makes another job for another seed', () => {
    const jobs = Array.from({ length: 60 }, (_, seed) =>
      JSON.stringify(generateScenario({ seed, family: 'bridge' }, library).hidden),
    );
    expect(new Set(jobs).size).toBe(60);
  });

  it('grants the family and the part asked for', () => {
    const kindsOf = (family: Family, part = 'lap-24') =>
      new Set(
        Array.from({ length: 40 }, (_, seed) =>
          kinds(generateScenario({ seed, family, part }, library)),
        ).flat(),
      );
    expect(kindsOf('sound').size).toBe(0);
    expect([...kindsOf('open')]).toEqual(['openCoil']);
    expect([...kindsOf('joint')]).toEqual(['riserJoint']);
    expect([...kindsOf('bridge')]).toEqual(['bridgedBars']);
    expect([...kindsOf('short')].sort()).toEqual(['coilShort', 'turnShort']);
    expect([...kindsOf('ground')].sort()).toEqual(['groundedBar', 'groundedCoil']);
    expect(generateScenario({ seed: 1, part: 'wave-23' }, library).public.armature).toBe('wave-23');
  });

  it('reaches every family, part and mains when nothing is asked for', () => {
    const jobs = Array.from({ length: 300 }, (_, seed) => generateScenario({ seed }, library));
    expect(new Set(jobs.map((job) => job.public.armature))).toEqual(new Set(parts));
    expect(new Set(jobs.map((job) => job.public.mains)).size).toBe(2);
    expect(new Set(jobs.flatMap(kinds)).size).toBe(10);
    expect(jobs.some((job) => kinds(job).length === 0)).toBe(true);
  });

  it('gives nothing away in id or card', () => {
    // The same card must be possible for other families too: none of its lines may belong to one family only.
    const lines = new Map<string, Set<string>>();
    for (const family of FAMILIES)
      for (let seed = 0; seed < 150; seed += 1)
        for (const part of ['wave-23', 'lap-24']) {
          const { id, card } = generateScenario({ seed, family, part }, library).public;
          expect(id).toMatch(/^q-[0-9a-f]{4}$/);
          lines.set(card.complaint, (lines.get(card.complaint) ?? new Set()).add(family));
        }
    for (const families of lines.values()) expect(families.size).toBeGreaterThanOrEqual(4);
  });

  it('refuses what the tests cannot tell on a part', () => {
    expect(() => generateScenario({ seed: 1, part: 'lap-28e', family: 'reversed' }, library)).toThrow(
      /cannot tell "reversed" on part lap-28e/,
    );
  });
});
