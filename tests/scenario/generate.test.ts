import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PartKind } from '../../src/bench/action.ts';
import { JOB_FRAMES } from '../../src/engine/parts/fieldFrameDesigns.ts';
import {
  benchFamilies,
  DIFFICULTIES,
  difficulties,
  FAMILIES,
  type Family,
  type FrameFamily,
  generateScenario,
  PLATE_FAMILIES,
  type PlateFamily,
  tellable,
  tellableOnFrame,
  type Wish,
  wearFamilies,
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
/** Any wish for frame, plate or a whole unit, with or without something wrong with the bench and something worn. */
const matWish: fc.Arbitrary<Wish> = fc
  .record({
    about: fc.constantFrom<readonly PartKind[]>(
      ['fieldFrame'],
      ['brushPlate'],
      ['fieldFrame', 'brushPlate'],
      ['armature', 'fieldFrame', 'brushPlate'],
    ),
    frame: fc.constantFrom(...JOB_FRAMES.values()),
  })
  .chain(({ about, frame }) =>
    fc.record({
      seed: fc.nat(),
      about: fc.constant(about),
      frame: fc.constant(frame.id),
      frameFamily: fc.constantFrom(...tellableOnFrame(frame)),
      plateFamily: fc.constantFrom(...PLATE_FAMILIES),
      bench: fc.option(fc.constantFrom(...benchFamilies(about)), { nil: undefined }),
      wear: fc.option(fc.constantFrom(...wearFamilies(about)), { nil: undefined }),
      curedHere: fc.boolean(),
      difficulty: fc.constantFrom('easy' as const, 'medium' as const),
    }),
  )
  .map(({ bench, wear, ...wish }) => ({
    ...wish,
    ...(bench === undefined ? {} : { bench }),
    ...(wear === undefined ? {} : { wear }),
  }));
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

  it('makes whole jobs, frames and plates that can be read, and the same one however the wish is written', () => {
    fc.assert(
      fc.property(matWish, (asked) => {
        const made = generateScenario(asked, library);
        const read = parseScenario(JSON.parse(JSON.stringify(made)), library);
        expect(read.ok ? [] : read.issues).toEqual([]);
        expect([...made.public.parts].sort()).toEqual([...asked.about!].sort());
        const turned = Object.fromEntries(Object.entries(asked).reverse()) as unknown as Wish;
        expect(generateScenario(turned, library)).toEqual(made);
      }),
      { numRuns: 200 },
    );
  });

  it('grants the family asked for on frame and plate', () => {
    const seeds = Array.from({ length: 30 }, (_, seed) => seed);
    const ofFrame = (frameFamily: FrameFamily) =>
      seeds.flatMap((seed) =>
        DIFFICULTIES.flatMap((difficulty) => {
          const wish: Wish = {
            seed,
            difficulty,
            about: ['fieldFrame'],
            frame: 'field-two-branches',
            frameFamily,
          };
          return generateScenario(wish, library).hidden.fieldFrame!.faults.map(({ kind }) => kind);
        }),
      );
    const ofPlate = (plateFamily: PlateFamily) =>
      seeds.flatMap((seed) =>
        generateScenario({ seed, about: ['brushPlate'], plateFamily }, library).hidden.brushPlate!.faults.map(
          ({ kind }) => kind,
        ),
      );
    expect(ofFrame('sound')).toEqual([]);
    expect(new Set(ofFrame('open'))).toEqual(new Set(['openCoil']));
    expect(new Set(ofFrame('joint'))).toEqual(new Set(['brushJoint']));
    expect(new Set(ofFrame('leak'))).toEqual(new Set(['weakInsulation']));
    expect(new Set(ofFrame('short'))).toEqual(new Set(['shortedTurns']));
    expect(new Set(ofFrame('two'))).toEqual(new Set(['openCoil', 'groundedCoil']));
    expect(ofPlate('sound')).toEqual([]);
    expect(new Set(ofPlate('rivet'))).toEqual(new Set(['looseRivet']));
    expect(new Set(ofPlate('breakdown'))).toEqual(new Set(['insulatorDown']));
    expect(new Set(ofPlate('two'))).toEqual(new Set(['dirt', 'brokenPigtail']));
  });

  it('puts wear past the limit of the card and a fault on the bench only where they were asked for', () => {
    const plain = generateScenario({ seed: 4, about: ['brushPlate'] }, library);
    expect(plain.hidden.wear).toBeUndefined();
    expect(plain.hidden.bench).toBeUndefined();
    expect(plain.public.tests).not.toContain('gauges');
    const worn = generateScenario(
      { seed: 4, about: ['brushPlate'], wear: 'shortBrush', bench: 'lamp' },
      library,
    );
    expect(Math.min(...worn.hidden.wear!.brushLengthsMm!)).toBeLessThan(7.9);
    expect(worn.hidden.bench).toEqual({ faults: [{ kind: 'blownLamp' }] });
    expect(worn.public.tests).toContain('gauges');
  });

  it('gives nothing away in the card of a frame or plate', () => {
    const cards = (wish: Partial<Wish>) =>
      new Set(
        Array.from(
          { length: 120 },
          (_, seed) => generateScenario({ seed, ...wish }, library).public.card.complaint,
        ),
      );
    const about = ['fieldFrame'] as const;
    expect(cards({ about, frameFamily: 'sound' })).toEqual(cards({ about, frameFamily: 'ground' }));
  });

  it('refuses a wish the parts cannot grant', () => {
    const make = (wish: Partial<Wish>) => () => generateScenario({ seed: 1, ...wish }, library);
    expect(make({ about: ['fieldFrame'], frame: 'field-all-in-series', frameFamily: 'short' })).toThrow(
      /cannot tell "short" on frame/,
    );
    expect(make({ about: ['fieldFrame'], frame: 'field-round' })).toThrow(/No field frame field-round/);
    expect(make({ about: ['brushPlate'], bench: 'zero' })).toThrow(/does not come upon "zero"/);
    expect(make({ about: ['brushPlate'], wear: 'thin' })).toThrow(/shows "thin"/);
  });
});
