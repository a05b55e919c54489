import { describe, expect, it } from 'vitest';
import { lampLit, shownBy } from '../../src/assess/diagnosis/shown.ts';
import { PART_KINDS } from '../../src/bench/action.ts';
import { TEST_KINDS } from '../../src/bench/paper.ts';
import { createArmatureSolver } from '../../src/engine/armatureBench.ts';
import { MAINS } from '../../src/engine/drive.ts';
import { armatureResistance } from '../../src/engine/instruments/armatureDc.ts';
import { LEAST_OHM, terminalVolt } from '../../src/engine/instruments/insulationTester.ts';
import { neighbourDrops } from '../../src/engine/instruments/millivoltDrop.ts';
import { type BrushPlateHow, brushPlateResistance, FOUR_HOLDERS } from '../../src/engine/parts/brushPlate.ts';
import { type FieldBrush, type FieldNode, fieldFrameResistance } from '../../src/engine/parts/fieldFrame.ts';
import { JOB_FRAMES } from '../../src/engine/parts/fieldFrameDesigns.ts';
import { ARMATURE_REMEDIES, remedyArmature, remedyBrushPlate } from '../../src/engine/parts/remedies.ts';
import { cluesAt } from '../../src/scenario/hidden/looks.ts';
import { parseScenarioText } from '../../src/scenario/parse.ts';
import { limitsOf } from '../../src/scenario/public/limits.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { partLibrary, scenarioTexts } from './files.ts';

/** What the library covers, by what its parts compute to, never by what a file says of itself. */

const library = partLibrary();
const jobs = [...scenarioTexts().values()].map((text): Scenario => {
  const read = parseScenarioText(text, library);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value;
});
const designOf = ({ public: shown }: Scenario) => library.get(shown.armature)!;
const mainsOf = ({ public: shown }: Scenario) => MAINS[shown.mains];
const allows = ({ public: shown }: Scenario, ...tests: (typeof TEST_KINDS)[number][]) =>
  tests.every((test) => shown.tests.includes(test));
const ids = (found: readonly Scenario[]) => found.map((one) => one.public.id);
const kindsOf = (lists: readonly (readonly { readonly kind: string }[])[]) =>
  new Set(lists.flat().map(({ kind }) => kind)).size;

/** Field frame between two of its places, ohm; null: no path. */
function fieldOhm(job: Scenario, from: FieldNode, brush: FieldBrush, peakV: number, brushesTouching = false) {
  const frame = JOB_FRAMES.get(job.public.fieldFrame!)!;
  const faults = job.hidden.fieldFrame!.faults;
  return fieldFrameResistance(frame, faults, from, `field:brush${brush}`, { brushesTouching, peakV });
}
const frames = jobs.filter((job) => job.public.parts.includes('fieldFrame'));
const plates = jobs.filter((job) => job.public.parts.includes('brushPlate'));
const peakOf = (job: Scenario) => Math.SQRT2 * mainsOf(job).volt;
const fieldLit = (job: Scenario, from: FieldNode, brush: FieldBrush, touching = false) =>
  lampLit(fieldOhm(job, from, brush, peakOf(job), touching), mainsOf(job));

function plateOhm(job: Scenario, holder: Exclude<BrushPlateHow['pressed'], null>, how: BrushPlateHow) {
  return brushPlateResistance(FOUR_HOLDERS, job.hidden.brushPlate!.faults, 'plate:metal', holder, how);
}
const INSULATED = ['plate:insulated1', 'plate:insulated2'] as const;
const HOLDERS = [...INSULATED, 'plate:earthed1', 'plate:earthed2'] as const;
const plateLit = (job: Scenario, holder: (typeof HOLDERS)[number], pressed: boolean) =>
  lampLit(plateOhm(job, holder, { pressed: pressed ? holder : null, peakV: peakOf(job) }), mainsOf(job));

/** Whether the tester reads too little over a resistance that may give way. */
const readsPoor = (at: (peakV: number) => number | null) => {
  const ohm = at(terminalVolt(250, at(0)));
  return ohm !== null && ohm < LEAST_OHM;
};

describe('the library covers', () => {
  it('every part, alone and together, and every test', () => {
    const parts = new Set(jobs.map((job) => job.public.parts.join(' ')));
    for (const part of PART_KINDS) expect(parts).toContain(part);
    expect(parts).toContain(PART_KINDS.join(' '));
    expect(new Set(jobs.flatMap((job) => job.public.tests))).toEqual(new Set(TEST_KINDS));
    expect(new Set(frames.map((job) => job.public.fieldFrame))).toEqual(new Set(JOB_FRAMES.keys()));
  });

  it('frames and plates in every mode and on both mains', () => {
    for (const about of [frames, plates]) {
      expect(new Set(about.map((job) => job.public.mode)).size).toBe(3);
      expect(new Set(about.map((job) => job.public.mains)).size).toBe(2);
    }
  });

  it('every kind of fault of frame, plate and bench, sound ones too, and wear', () => {
    expect(kindsOf(frames.map((job) => job.hidden.fieldFrame!.faults))).toBe(5);
    expect(kindsOf(plates.map((job) => job.hidden.brushPlate!.faults))).toBe(4);
    expect(kindsOf(jobs.map((job) => job.hidden.bench?.faults ?? []))).toBe(4);
    expect(frames.some((job) => job.hidden.fieldFrame!.faults.length === 0)).toBe(true);
    expect(plates.some((job) => job.hidden.brushPlate!.faults.length === 0)).toBe(true);
    const short = ({ hidden, public: shown }: Scenario) =>
      hidden.wear?.brushLengthsMm?.some(
        (mm) => mm < limitsOf(shown, library.get(shown.armature)!).brushLengthMm,
      );
    expect(jobs.some(short)).toBe(true);
  });

  it('two faults at once in one frame', () => {
    expect(frames.some((job) => job.hidden.fieldFrame!.faults.length >= 2)).toBe(true);
  });

  it('faults that a remedy at this bench cures, where the card leaves it to the bench, and such as none cures', () => {
    const curable = jobs.filter((job) => allows(job, 'gauges'));
    const cured = (job: Scenario) => [
      ...ARMATURE_REMEDIES.filter(
        (remedy) =>
          job.hidden.armature.faults.length > 0 &&
          job.hidden.armature.faults.some((fault) => {
            const bar = fault.kind === 'riserJoint' ? fault.bar : undefined;
            return remedyArmature([fault], remedy, bar).length === 0;
          }),
      ),
      ...(['cleanPlateInsulation', 'tightenRivets'] as const).filter((remedy) =>
        (job.hidden.brushPlate?.faults ?? []).some((fault) => remedyBrushPlate([fault], remedy).length === 0),
      ),
    ];
    expect(new Set(curable.flatMap(cured)).size).toBe(6);
    const faulty = curable.filter(({ hidden }) => hidden.armature.faults.length > 0);
    expect(faulty.some((job) => cured(job).length === 0)).toBe(true);
  });
});

describe('among its jobs is the trap', () => {
  it('of a dark lamp over poor insulation, on each part', () => {
    const armature = jobs.filter((job) => {
      const at = (peakV: number) =>
        armatureResistance(designOf(job), job.hidden.armature.faults, 0, 'core', { peakV, tempC: 20 });
      return allows(job, 'ground', 'megohm') && !lampLit(at(peakOf(job)), mainsOf(job)) && readsPoor(at);
    });
    const frame = frames.filter(
      (job) =>
        allows(job, 'fieldInsulation', 'megohm') &&
        !fieldLit(job, 'field:case', 1) &&
        readsPoor((peakV) => fieldOhm(job, 'field:case', 1, peakV)),
    );
    const plate = plates.filter((job) =>
      INSULATED.some(
        (holder) =>
          allows(job, 'plateInsulation', 'megohm') &&
          !plateLit(job, holder, false) &&
          readsPoor((peakV) => plateOhm(job, holder, { pressed: null, peakV })),
      ),
    );
    for (const found of [armature, frame, plate]) expect(ids(found)).not.toEqual([]);
  });

  it('of field brushes that touch and hide a broken branch', () => {
    const found = frames.filter((job) =>
      ([1, 2] as const).some(
        (brush) => !fieldLit(job, 'field:terminal', brush) && fieldLit(job, 'field:terminal', brush, true),
      ),
    );
    expect(ids(found)).not.toEqual([]);
  });

  it('of shorted field turns that no lamp shows and the drop does', () => {
    const found = frames.filter((job) => {
      const lampSound = ([1, 2] as const).every(
        (brush) => fieldLit(job, 'field:terminal', brush) && !fieldLit(job, 'field:case', brush),
      );
      const [one, two] = ([1, 2] as const).map((brush) => fieldOhm(job, 'field:terminal', brush, 0)!);
      return allows(job, 'millivolt') && lampSound && Math.abs(one! / two! - 1) > 0.1;
    });
    expect(ids(found)).not.toEqual([]);
  });

  it('of a frame that looks burnt and is in order', () => {
    const found = frames.filter(
      (job) =>
        job.hidden.fieldFrame!.faults.length === 0 &&
        cluesAt(job.hidden, designOf(job), 'field:case').includes('charredFieldCoil'),
    );
    expect(ids(found)).not.toEqual([]);
  });

  it('of a rivet that makes only when the holder is leant on, and breaks only until it is', () => {
    const moves = (holders: readonly (typeof HOLDERS)[number][]) =>
      plates.filter((job) =>
        holders.some((holder) => !plateLit(job, holder, false) && plateLit(job, holder, true)),
      );
    expect(ids(moves(INSULATED))).not.toEqual([]);
    expect(ids(moves(['plate:earthed1', 'plate:earthed2']))).not.toEqual([]);
  });

  it('of dirt that lights the lamp like a breakdown, and of a breakdown that looks like dirt', () => {
    const lights = (job: Scenario) => INSULATED.filter((holder) => plateLit(job, holder, false));
    const cleaned = (job: Scenario) =>
      remedyBrushPlate(job.hidden.brushPlate!.faults, 'cleanPlateInsulation').length === 0;
    const dirty = (job: Scenario) =>
      lights(job).some((holder) => cluesAt(job.hidden, designOf(job), holder).includes('dirt'));
    expect(ids(plates.filter((job) => lights(job).length > 0 && cleaned(job)))).not.toEqual([]);
    expect(ids(plates.filter((job) => dirty(job) && !cleaned(job)))).not.toEqual([]);
  });

  it('of a lamp or a lead that is itself dead, on a good part and on a bad one', () => {
    const deadLamp = jobs.filter((job) =>
      (job.hidden.bench?.faults ?? []).some(
        (fault) =>
          fault.kind === 'blownLamp' || (fault.kind === 'brokenLead' && fault.lead.startsWith('lamp')),
      ),
    );
    const faults = ({ hidden }: Scenario) =>
      hidden.armature.faults.length + (hidden.fieldFrame?.faults.length ?? 0);
    expect(ids(deadLamp.filter((job) => faults(job) === 0))).not.toEqual([]);
    expect(ids(deadLamp.filter((job) => faults(job) > 0))).not.toEqual([]);
  });

  it('of a bridge too soft for strip and ammeter, which the drop shows', () => {
    const found = jobs.filter((job) => {
      const { faults } = job.hidden.armature;
      if (!allows(job, 'millivolt') || faults.length === 0 || !job.public.parts.includes('armature'))
        return false;
      const design = designOf(job);
      const shown = shownBy(createArmatureSolver(design), faults, mainsOf(job));
      const drops = neighbourDrops(design, faults).map(
        (volt, bar) => volt! / neighbourDrops(design, [])[bar]!,
      );
      const still =
        shown.feltSlots === 0 && shown.neighbour.every((d) => Math.abs(d) <= shown.band.neighbour);
      return still && Math.min(...drops) < 0.95;
    });
    expect(ids(found)).not.toEqual([]);
  });
});
