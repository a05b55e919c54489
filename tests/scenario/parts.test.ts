import { describe, expect, it } from 'vitest';
import { parseNewJob, parseScenario, parseScenarioText } from '../../src/scenario/parse.ts';
import { jobOf } from '../../src/scenario/public/view.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { job } from '../support/jobs.ts';
import { partLibrary } from './files.ts';

const library = partLibrary();
// biome-ignore lint/suspicious/noExplicitAny: a file broken on purpose fits no type
type Loose = Record<string, any>;

const whole = (): Scenario =>
  job({
    parts: ['armature', 'fieldFrame', 'brushPlate'],
    tests: ['look', 'ground', 'fieldContinuity', 'plateInsulation', 'megohm', 'gauges'],
    fieldFaults: [{ kind: 'openCoil', coil: 3 }],
    plateFaults: [{ kind: 'brokenPigtail', holder: 'plate:earthed1' }],
    benchFaults: [{ kind: 'ammeterZero', offset: 0.03 }],
    wear: { runOutMm: 0.08 },
    limits: { brushLengthMm: 6 },
  });

function broken(change: (file: Loose) => void): string[] {
  const file = structuredClone(whole()) as Loose;
  change(file);
  const read = parseScenario(file, library);
  return read.ok ? [] : read.issues.map(({ path, sentence }) => `${path}: ${sentence}`);
}

describe('a job about every part', () => {
  it('is read as it is written', () => {
    expect(parseScenario(structuredClone(whole()), library)).toEqual({ ok: true, value: whole() });
  });

  it('shows the parts, how the frame is joined, and the card’s limits with the usual ones beside them', () => {
    const shown = jobOf(whole(), library);
    expect(shown.parts).toEqual(['armature', 'fieldFrame', 'brushPlate']);
    expect(shown.fieldFrame?.coils).toHaveLength(4);
    expect(shown.brushPlate?.typeId).toBe('plate-four-holders');
    // References A04, A02, A07; the card names the brush length itself.
    expect(shown.limits).toEqual({
      commutatorDiameterMm: 36,
      runOutMm: 0.05,
      undercutMm: 0.2,
      brushLengthMm: 6,
      insulationMohm: 1,
    });
  });

  it('shows the same whatever is hidden', () => {
    const sound = { ...whole(), hidden: job().hidden };
    expect(jobOf(sound, library)).toEqual(jobOf(whole(), library));
  });
});

describe('a job whose parts do not fit together', () => {
  it.each<[string, (file: Loose) => void, RegExp]>([
    ['no part', (f) => (f.public.parts = []), /^public\.parts: Expected a list of at least 1 entry/],
    ['a part twice', (f) => f.public.parts.push('armature'), /^public\.parts/],
    ['a test of a part that is not there', (f) => f.public.parts.pop(), /plateInsulation|brushPlate/],
    ['no field frame named', (f) => delete f.public.fieldFrame, /^public\.fieldFrame: Expected a known type/],
    ['an unknown brush plate', (f) => (f.public.brushPlate = 'plate-9'), /"plate-9" came/],
    ['a coil the frame has not', (f) => (f.hidden.fieldFrame.faults[0].coil = 4), /coil from 0 to 3/],
    [
      'a coil open twice',
      (f) => f.hidden.fieldFrame.faults.push({ kind: 'openCoil', coil: 3 }),
      /^hidden\.fieldFrame\.faults\[1\]: .*both decide the copper of coil 3/,
    ],
    [
      'a holder that cannot be dirty',
      (f) => (f.hidden.brushPlate.faults = [{ kind: 'dirt', holder: 'plate:earthed1', ohm: 5 }]),
      /^hidden\.brushPlate\.faults\[0\]\.holder/,
    ],
    ['a needle off the scale', (f) => (f.hidden.bench.faults[0].offset = 2), /at most 0\.2, but 2 came/],
    ['three brushes', (f) => (f.hidden.wear.brushLengthsMm = [1, 2, 3]), /^hidden\.wear\.brushLengthsMm/],
  ])('with %s', (_, change, sentence) => {
    expect(broken(change).join('\n')).toMatch(sentence);
  });

  it('with faults in a cradle armature that is not to be judged', () => {
    const file = structuredClone(job({ parts: ['fieldFrame'], faults: [{ kind: 'openCoil', coil: 1 }] }));
    const read = parseScenario(file, library);
    expect(read.ok ? '' : read.issues[0]!.path).toBe('hidden.armature.faults');
  });
});

describe('a needle below zero', () => {
  const hiding = (offset: number): Scenario => ({
    ...whole(),
    hidden: { ...whole().hidden, bench: { faults: [{ kind: 'ammeterZero', offset }] } },
  });

  it.each([-0.05, 0, 0.0025])('of %f is refused in a new job, since nobody could find it', (offset) => {
    const read = parseNewJob(hiding(offset), library);
    expect(read.ok ? [] : read.issues.map(({ path }) => path)).toEqual(['hidden.bench.faults[0].offset']);
    expect(parseScenarioText(JSON.stringify(hiding(offset)), library).ok).toBe(false);
  });

  it('is still read where it was kept, and above zero a job may hide it', () => {
    expect(parseScenario(hiding(-0.05), library).ok).toBe(true);
    expect(parseNewJob(hiding(0.01), library).ok).toBe(true);
  });
});
