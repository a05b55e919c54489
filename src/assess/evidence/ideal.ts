import type { Finding, TestKind, Verdict } from '../../bench/paper.ts';
import { barPlace } from '../../bench/places.ts';
import { NOMINAL_LOOP_OHM } from '../../engine/answers.ts';
import { type ArmatureSolver, createArmatureSolver } from '../../engine/armatureBench.ts';
import type { Drive } from '../../engine/drive.ts';
import { scaleFraction } from '../../engine/instruments/ammeter.ts';
import { armatureResistance, armatureResistors } from '../../engine/instruments/armatureDc.ts';
import { DEFAULT_TEST_VOLT, seeMegohms, terminalVolt } from '../../engine/instruments/insulationTester.ts';
import { benchLamp, glow, steadyFilament } from '../../engine/instruments/lamp.ts';
import { seeMillivolts, underFeed } from '../../engine/instruments/millivoltDrop.ts';
import { UPPER_STOP } from '../../engine/instruments/needle.ts';
import { feel } from '../../engine/instruments/stripMotion.ts';
import { ROOM_C } from '../../engine/instruments/thermal.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import { insulationShows, nearestInsulation } from './insulation.ts';
import { judge } from './judge.ts';
import { likenessOf } from './likeness.ts';
import type { EvidenceModel } from './model.ts';
import { CONDITION_OF } from './naming.ts';
import { type NextReading, nextReadings } from './nextBest.ts';
import { coilsOfPair } from './placing.ts';
import { lampShows, type Reading } from './reading.ts';
import { meterPasses, stripPasses } from './standardTests.ts';
import { locate, nearestSuspect } from './suspects.ts';
import { Weigher } from './weigher.ts';

/** Nobody is asked for more than this many. */
const MOST = 24;
/** A reading that is expected to tell less than this is not taken, bits. */
const LEAST_BITS = 0.01;

/**
 * How many readings prove what is the matter with a part, if each is the one expected to tell most and shows what the
 * part shows when nothing scatters. Null where so many do not, or none that the job allows tells anything more. A
 * measure of how hard a job is: nobody works like that.
 */
export function readingsToProve(model: EvidenceModel, faults: readonly ArmatureFault[]): number | null {
  const bench = new IdealBench(model, faults);
  const verdict = trueVerdict(model, faults);
  const weigher = new Weigher(model);
  const before = weigher.result();
  const taken = new Set<string>();
  let after = before;
  for (let count = 0; count <= MOST; count++) {
    if (judge(after, before, verdict, { faults, chalkedBar: 0 }).judgement === 'proven') return count;
    const next = nextReadings(after).find((one) => !taken.has(keyOf(one)));
    if (next === undefined || next.bits < LEAST_BITS) return null;
    taken.add(keyOf(next));
    weigher.add(bench.read(next, count));
    after = weigher.result();
  }
  return null;
}

const keyOf = ({ test, bars, slot, angleDeg }: NextReading) => `${test} ${bars} ${slot} ${angleDeg}`;

/** What somebody who knew would write, each fault at its place; bars are counted from bar 0. */
function trueVerdict(model: EvidenceModel, faults: readonly ArmatureFault[]): Verdict {
  const findings = faults.flatMap((fault) => findingOf(model, fault));
  const sound: Finding = { condition: 'sound', place: { kind: 'somewhere' } };
  return {
    part: 'armature',
    findings: findings.length > 0 ? findings : [sound],
    disposition: 'service',
    sure: 1,
    because: '',
  };
}

/** Tests that count bars. */
const COUNTING: readonly TestKind[] = ['neighbour', 'spaced', 'millivolt'];

function findingOf(model: EvidenceModel, fault: ArmatureFault): Finding[] {
  const somewhere = { kind: 'somewhere' } as const;
  if (fault.kind === 'dirtyCommutator') return [{ condition: 'worn', place: somewhere }];
  const insulation = nearestInsulation(model.insulation, model.dictionary.mains, fault);
  if (insulation !== null) {
    const isShown = insulationShows(model.insulation[insulation]!, model.tests);
    return isShown ? [{ condition: 'grounded', place: somewhere }] : [];
  }
  const suspect = nearestSuspect(model.suspects, fault);
  if (suspect === null || likenessOf(model).showable[suspect] === 0) return [];
  const { block, place } = locate(model.suspects, suspect)!;
  const counts = model.tests.some((test) => COUNTING.includes(test));
  return [{ condition: CONDITION_OF[block.kind], place: counts ? placeOf(model, fault, place) : somewhere }];
}

function placeOf({ design }: EvidenceModel, { kind }: ArmatureFault, place: number): Finding['place'] {
  if (kind === 'riserJoint') return { kind: 'bar', count: place };
  if (kind === 'bridgedBars') return { kind: 'pair', count: place };
  const pairs = Array.from({ length: design.bars }, (_, pair) => pair);
  const shows = pairs.find((pair) => coilsOfPair(design, pair).includes(place));
  return { kind: 'pair', count: shows ?? place };
}

/** A bench on which nothing scatters. */
class IdealBench {
  private readonly model: EvidenceModel;
  private readonly faults: readonly ArmatureFault[];
  private readonly solver: ArmatureSolver;

  constructor(model: EvidenceModel, faults: readonly ArmatureFault[]) {
    this.model = model;
    this.faults = faults;
    this.solver = createArmatureSolver(model.design, model.dictionary.growler);
  }

  read(next: NextReading, entry: number): Reading {
    switch (next.test) {
      case 'ground':
        return this.lamp(entry);
      case 'megohm':
        return this.tester(entry);
      case 'millivolt':
        return this.drop(next, entry);
      case 'strip':
        return this.strip(next, entry);
      default:
        return this.meter(next, entry);
    }
  }

  private tester(entry: number): Reading {
    const { design } = this.model;
    const at = (peakV: number) =>
      armatureResistance(design, this.faults, 0, 'core', { peakV, tempC: ROOM_C });
    const { megohms, over } = seeMegohms(
      at(terminalVolt(DEFAULT_TEST_VOLT, at(0))) ?? Number.POSITIVE_INFINITY,
    );
    const shown = { volt: DEFAULT_TEST_VOLT, megohms: over ? ('over' as const) : megohms };
    return { kind: 'megohm', entry, places: ['core', barPlace(0)], ...shown, from: 'instrument' };
  }

  private drop({ bars }: NextReading, entry: number): Reading {
    const [from, to] = bars!.map(String) as [string, string];
    const { at } = underFeed(armatureResistors(this.model.design, this.faults), from, to);
    const { millivolts } = seeMillivolts(at.get(from)! - at.get(to)!);
    return { kind: 'drop', entry, feed: bars!, bars: bars!, millivolts, from: 'instrument' };
  }

  private meter({ test, bars }: NextReading, entry: number): Reading {
    const pass = meterPasses(this.model).find((one) => one.test === test)!;
    const laid = pass.readings.find((one) => one.bars[0] === bars![0] && one.bars[1] === bars![1])!;
    const tap = { barA: laid.bars[0], barB: laid.bars[1], loopOhm: NOMINAL_LOOP_OHM };
    const { meterA } = this.point({ rotationDeg: laid.rotationDeg, meter: tap });
    const target = scaleFraction(meterA, laid.rangeA);
    const shown = { deflection: Math.min(target, UPPER_STOP), pegged: target > UPPER_STOP };
    return { kind: 'meter', entry, ...laid, ...shown, from: 'instrument' };
  }

  private strip({ angleDeg, slot }: NextReading, entry: number): Reading {
    const pass = stripPasses(this.model).find((one) => one.angleDeg === angleDeg)!;
    const held = pass.readings[slot!]!;
    const gapM = held.heightMm / 1000;
    const force = this.point({ rotationDeg: held.rotationDeg, meter: null }).strip(held.angleDeg, gapM);
    const { pull } = feel(force, gapM, this.model.dictionary.mains.hz);
    return { kind: 'strip', entry, ...held, pull, from: 'instrument' };
  }

  private lamp(entry: number): Reading {
    const { volt, hz } = this.model.dictionary.mains;
    const path = this.solver.path(this.faults, 'core', 0, hz, Math.SQRT2 * volt);
    const shows = lampShows(glow(steadyFilament(benchLamp(volt), { volt, path })));
    return { kind: 'lamp', entry, places: ['core', barPlace(0)], shows, from: 'instrument' };
  }

  private point({ rotationDeg, meter }: { rotationDeg: number; meter: Drive['meter'] }) {
    const { mains } = this.model.dictionary;
    const rotationRad = (rotationDeg * Math.PI) / 180;
    const drive = { mains, excitation: 'high', rotationRad, windingC: ROOM_C, meter } as const;
    return this.solver.solve(this.faults, drive);
  }
}
