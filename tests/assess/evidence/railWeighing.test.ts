import { describe, expect, it } from 'vitest';
import { provableParts } from '../../../src/assess/diagnosis/proven.ts';
import {
  createEvidence,
  type DropReading,
  type EvidenceModel,
  judge,
  nextReadings,
  possibilitiesOf,
  type Reading,
  Weigher,
  weighReadings,
} from '../../../src/assess/evidence/index.ts';
import type { MegohmReading } from '../../../src/assess/evidence/reading.ts';
import { overLeak } from '../../../src/assess/evidence/tester.ts';
import type { Condition, Finding, TestKind, Verdict } from '../../../src/bench/paper.ts';
import { barPlace, type Place } from '../../../src/bench/places.ts';
import { armatureResistance, armatureResistors } from '../../../src/engine/instruments/armatureDc.ts';
import {
  seeMegohms,
  TEST_VOLTS,
  type TestVolt,
  terminalVolt,
} from '../../../src/engine/instruments/insulationTester.ts';
import { seeMillivolts, underFeed } from '../../../src/engine/instruments/millivoltDrop.ts';
import { ROOM_C } from '../../../src/engine/instruments/thermal.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { armature } from './support/parts.ts';

/** What insulation tester and millivolt drop prove of an armature, read off the network the bench itself solves. */
const design = armature('lap-28');
type Faults = readonly ArmatureFault[];

function megohms(faults: Faults, bar = 0, volt: TestVolt = 250): MegohmReading {
  const at = (peakV: number) => armatureResistance(design, faults, bar, 'core', { peakV, tempC: ROOM_C });
  const shown = seeMegohms(at(terminalVolt(volt, at(0))) ?? Number.POSITIVE_INFINITY);
  const places: readonly [Place, Place] = ['shaft', barPlace(bar)];
  const figure = shown.over ? ('over' as const) : shown.megohms;
  return { kind: 'megohm', entry: bar, places, volt, megohms: figure, from: 'instrument' };
}

function drop(faults: Faults, bar: number, a: ArmatureDesign = design): DropReading {
  const pair = [bar, (bar + 1) % a.bars] as const;
  const { at } = underFeed(armatureResistors(a, faults), `${pair[0]}`, `${pair[1]}`);
  const { millivolts } = seeMillivolts(at.get(`${pair[0]}`)! - at.get(`${pair[1]}`)!);
  return { kind: 'drop', entry: bar, feed: pair, bars: pair, millivolts, from: 'instrument' };
}

const dropsOf = (faults: Faults) => Array.from({ length: design.bars }, (_, bar) => drop(faults, bar));
const dark: Reading = {
  kind: 'lamp',
  entry: 0,
  places: ['shaft', 'bar:0'],
  shows: 'dark',
  from: 'instrument',
};

const models = new Map<string, EvidenceModel>();
function modelOf(...tests: readonly TestKind[]): EvidenceModel {
  const known = models.get(`${tests}`) ?? createEvidence({ design, mains: '230V50Hz', tests });
  models.set(`${tests}`, known);
  return known;
}

const SOMEWHERE: Finding['place'] = { kind: 'somewhere' };
function judged(model: EvidenceModel, readings: readonly Reading[], faults: Faults, finding: Finding) {
  const verdict: Verdict = {
    part: 'armature',
    findings: [finding],
    disposition: 'winder',
    sure: 0.9,
    because: '',
  };
  const after = weighReadings(model, readings);
  return judge(after, weighReadings(model, []), verdict, { faults, chalkedBar: 0 });
}
const says = (condition: Condition, place: Finding['place'] = SOMEWHERE): Finding => ({ condition, place });

describe('a guess without readings', () => {
  it.each([['megohm'], ['millivolt'], ['ground', 'megohm', 'millivolt']] as const)(
    'is never proven, whatever the card allows: %s',
    (...tests) => {
      const weak: Faults = [{ kind: 'weakInsulation', ohm: 100e3, breakdownV: null }];
      expect(judged(modelOf(...tests), [], [], says('sound')).judgement).toBe('rightNotProven');
      expect(judged(modelOf(...tests), [], weak, says('poorInsulation')).judgement).not.toBe('proven');
      // With nothing to read but through the lens there is nothing to prove.
      expect(provableParts({ parts: ['armature'], tests: ['look', 'gauges'] })).toEqual([]);
      expect(provableParts({ parts: ['armature'], tests: [...tests] })).toEqual(['armature']);
    },
  );
});

describe('the insulation tester', () => {
  it('would show over every leak what the bench shows', () => {
    for (const { leak } of modelOf('megohm').insulation) {
      if (leak === null || leak.leastOhm < 1e4) continue;
      const ohm = Math.sqrt(leak.leastOhm * leak.mostOhm);
      const faults = [{ kind: 'weakInsulation', ohm, breakdownV: leak.breakdownV }] as const;
      for (const volt of TEST_VOLTS) {
        const found = overLeak({ ...leak, leastOhm: ohm, mostOhm: ohm }, volt).leastOhm;
        expect(seeMegohms(found).megohms).toBe(megohms(faults, 0, volt).megohms);
      }
    }
  });

  const weak: Faults = [{ kind: 'weakInsulation', ohm: 300e3, breakdownV: null }];
  const both = modelOf('ground', 'megohm');

  it('proves weak insulation that leaves the lamp dark, and the lamp alone does not', () => {
    expect(judged(both, [dark], weak, says('poorInsulation')).judgement).toBe('rightNotProven');
    expect(judged(both, [dark, megohms(weak)], weak, says('poorInsulation')).judgement).toBe('proven');
    // Where there is no tester on the card the lamp has the last word.
    const lampOnly = modelOf('ground');
    expect(judged(lampOnly, [dark], weak, says('sound')).judgement).toBe('proven');
  });

  it('contradicts whoever calls sound what it has read as poor, and poor what it has read as good', () => {
    expect(judged(both, [dark, megohms(weak)], weak, says('sound')).judgement).toBe('contradicted');
    expect(judged(both, [dark, megohms([])], [], says('poorInsulation')).judgement).toBe('contradicted');
    expect(judged(both, [dark, megohms([])], [], says('sound')).judgement).toBe('proven');
  });

  it('goes by the limit of the card, on either side of it', () => {
    const fair: Faults = [{ kind: 'weakInsulation', ohm: 2e6, breakdownV: null }];
    const strict = createEvidence({ design, mains: '230V50Hz', tests: ['megohm'], leastMohm: 2.2 });
    expect(judged(modelOf('megohm'), [megohms(fair)], fair, says('sound')).judgement).toBe('proven');
    expect(judged(strict, [megohms(fair)], fair, says('poorInsulation')).judgement).toBe('proven');
  });

  it('tells what breaks down at the higher voltage only', () => {
    const breaks: Faults = [{ kind: 'weakInsulation', ohm: 4e6, breakdownV: 430 }];
    const after = weighReadings(both, [megohms(breaks), megohms(breaks, 0, 500)]);
    const kinds = both.insulation.map(({ kind }, i) =>
      kind === 'weakBreaksDown' ? after.insulation[i]! : 0,
    );
    expect(kinds.reduce((sum, chance) => sum + chance, 0)).toBeGreaterThan(0.95);
  });

  it('finds a bar that nothing joins to the winding beyond the scale, and the winding still sound', () => {
    const cut: Faults = [{ kind: 'riserJoint', bar: 5, form: 'bar', ohm: 'open' }];
    const model = modelOf('megohm', 'millivolt');
    const readings = [megohms(cut, 5), megohms(cut, 9), drop(cut, 4), drop(cut, 5)];
    expect(readings[0]).toMatchObject({ megohms: 'over' });
    const at: Finding['place'] = { kind: 'bar', count: 5 };
    expect(judged(model, readings, cut, says('badRiserJoint', at)).judgement).toBe('proven');
  });

  it('is what would tell most where the lamp has stayed dark', () => {
    const [best] = nextReadings(weighReadings(both, [dark]));
    expect(best).toMatchObject({ test: 'megohm', bars: null });
  });
});

describe('the millivolt drop', () => {
  const model = modelOf('millivolt');

  it('proves turns that touch, by the drop of their own pair, and again for whoever doubts it', () => {
    const shorted: Faults = [{ kind: 'turnShort', coil: 11, turns: 1, ohm: 4e-4 }];
    const at: Finding['place'] = { kind: 'pair', count: 11 };
    const readings = [...dropsOf(shorted), drop(shorted, 11)];
    expect(judged(model, readings, shorted, says('shortedCoil', at)).judgement).toBe('proven');
    expect(judged(model, readings, shorted, says('shortedCoil', { kind: 'pair', count: 3 })).judgement).toBe(
      'contradicted',
    );
    expect(judged(model, readings, shorted, says('sound')).judgement).toBe('contradicted');
  });

  it('proves a joint by the two pairs beside its bar', () => {
    const joint: Faults = [{ kind: 'riserJoint', bar: 7, form: 'bar', ohm: 3e-4 }];
    const at: Finding['place'] = { kind: 'bar', count: 7 };
    expect(judged(model, dropsOf(joint), joint, says('badRiserJoint', at)).judgement).toBe('proven');
  });

  it('proves a part sound whose drops are all alike, however warm it is', () => {
    const warm = dropsOf([]).map((one) => ({
      ...one,
      millivolts: Number((1.04 * one.millivolts).toFixed(2)),
    }));
    for (const readings of [dropsOf([]), warm])
      expect(judged(model, readings, [], says('sound')).judgement).toBe('proven');
  });

  it('proves two faults at once', () => {
    const two: Faults = [
      { kind: 'bridgedBars', bar: 4, ohm: 5e-4, by: 'copper' },
      { kind: 'openCoil', coil: 19 },
    ];
    const readings = [...dropsOf(two), drop(two, 4), drop(two, 19)];
    const at: Finding['place'] = { kind: 'pair', count: 19 };
    expect(judged(model, readings, two, says('openCoil', at)).findings[0]).toMatchObject({ right: true });
    const [first, second] = possibilitiesOf(weighReadings(model, readings));
    expect([first, second].map((one) => one!.id).sort()).toEqual(['bridgedBars pair 4', 'openCoil coil 19']);
    expect(second!.chance).toBeGreaterThan(0.95);
  });

  it('counts a written figure less than one the instrument shows', () => {
    const bridged: Faults = [{ kind: 'bridgedBars', bar: 4, ohm: 5e-3, by: 'carbon' }];
    const chance = (from: DropReading['from']) => {
      const weigher = new Weigher(model);
      for (const one of dropsOf(bridged)) weigher.add({ ...one, from });
      return possibilitiesOf(weigher.result()).find(({ id }) => id === 'bridgedBars pair 4')!.chance;
    };
    expect(chance('sheet')).toBeLessThan(chance('instrument'));
  });

  it('says nothing of a joint through which its feed does not go', () => {
    const { drops, suspects } = model;
    const { millivolts } = drops.at({ feed: [0, 7], bars: [3, 4] });
    const soft = suspects.blocks.find(({ kind }) => kind === 'jointBar')!;
    expect(millivolts[soft.first + 3 * soft.severities.length]).toBeCloseTo(millivolts[0]!, 6);
  });
});
