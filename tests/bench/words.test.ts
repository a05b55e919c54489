import { describe, expect, it } from 'vitest';
import { RANGES_A } from '../../src/bench/action.ts';
import { placeWords } from '../../src/bench/placeWords.ts';
import { DIVISION_A, printedA, strokeAt } from '../../src/bench/scale.ts';
import { operables, touchables } from '../../src/bench/touchables.ts';
import { actionWords, needleWords, sayObservation } from '../../src/bench/words.ts';
import { BenchDriver, type JobOptions } from '../support/benchDriver.ts';

const needle = (deflection: number, atRest = true) => ({ deflection, pegged: false, atRest });

describe('the needle in words', () => {
  it('names the two printed strokes and the nearer one', () => {
    expect(needleWords(needle(strokeAt(30.5, 100)), 100)).toBe('Needle between 30 and 32, nearer 30.');
    expect(needleWords(needle(strokeAt(31.6, 100)), 100)).toBe('Needle between 30 and 32, nearer 32.');
    expect(needleWords(needle(strokeAt(31, 100)), 100)).toBe('Needle about halfway between 30 and 32.');
    expect(needleWords(needle(strokeAt(10.5, 15)), 15)).toBe('Needle on 10.5.');
  });

  it('says what cannot be read instead of inventing it', () => {
    expect(needleWords(needle(0), 30)).toBe('Needle at zero.');
    expect(needleWords(needle(strokeAt(2, 30)), 30)).toMatch(/below 3, where the strokes crowd/);
    expect(needleWords({ deflection: 1.03, pegged: true, atRest: true }, 3)).toMatch(
      /against the stop beyond 3/,
    );
    expect(needleWords(needle(strokeAt(20, 30), false), 30)).toMatch(/^Needle moving, now on 20/);
  });

  it('never names a stroke further off than one division, anywhere on any range', () => {
    for (const range of RANGES_A) {
      for (let step = 1; step <= 400; step += 1) {
        const words = needleWords(needle(step / 400), range);
        const named = [...words.matchAll(/[\d.]*\d/g)].map((match) => Number(match[0]));
        if (words.includes('crowd') || words.includes('zero')) continue;
        for (const amps of named) {
          expect(Math.abs(amps - printedA(needle(step / 400), range))).toBeLessThanOrEqual(
            DIVISION_A[range] + 1e-9,
          );
        }
      }
    }
  });

  it('goes by the printed scale, which crowds at the bottom', () => {
    for (const range of RANGES_A) {
      for (const share of [0.1, 0.35, 0.8, 1]) {
        expect(printedA(needle(strokeAt(share * range, range)), range)).toBeCloseTo(share * range, 9);
      }
      expect(strokeAt(0.1 * range, range)).toBeLessThan(0.05);
    }
  });
});

describe('places in words', () => {
  const wave = { bars: 23, barZeroDeg: -90 };

  it('count from the chalk in the sense of rising numbers', () => {
    const seen = { chalkedBar: 20, rotationDeg: 0 };
    expect(placeWords(wave, seen, 'bar:20')).toBe('the chalked bar');
    expect(placeWords(wave, seen, 'bar:3')).toBe('bar 6 on from the chalk');
    expect(placeWords(wave, seen, 'riser:19')).toBe('the riser of bar 22 on from the chalk');
    expect(placeWords(wave, seen, 'tip:lamp.2')).toBe('the tip of lamp probe 2');
  });

  it('say where a bar lies when none is chalked, and never its number', () => {
    const seen = { chalkedBar: null, rotationDeg: 40 };
    expect(placeWords(wave, { ...seen, rotationDeg: 0 }, 'bar:0')).toBe('the bar on the near side, level');
    expect(placeWords(wave, seen, 'bar:0')).toBe('the bar on the near side, 40° down');
    expect(placeWords(wave, { ...seen, rotationDeg: -40 }, 'bar:0')).toBe('the bar on the near side, 40° up');
    expect(placeWords(wave, { ...seen, rotationDeg: 90 }, 'bar:0')).toBe('the bar at the bottom');
    expect(placeWords(wave, { ...seen, rotationDeg: -90 }, 'bar:0')).toBe('the bar at the top');
  });

  it('tell every place of a commutator apart, chalked or not', () => {
    const me = new BenchDriver({ part: 'lap-28' }).placesArmature();
    for (const chalked of [false, true]) {
      if (chalked) me.chalks(me.barNear(-90));
      const labels = touchables(me.geometry, me.sees).map(({ label }) => label);
      expect(new Set(labels).size).toBe(labels.length);
    }
  });
});

describe('an observation in words', () => {
  it('says what eyes and ears have and no more', () => {
    const me = new BenchDriver({ part: 'wave-23' }).placesArmature();
    me.chalks(me.barNear(-90)).switches('high').setsRange(15);
    me.takes('ammeter.1')
      .touches('ammeter.1', `bar:${me.barNear(-90)}`)
      .clamps('ammeter.1');
    me.takes('ammeter.2')
      .touches('ammeter.2', `bar:${me.barNear(-74)}`)
      .waits(4000);
    const said = sayObservation(me.geometry, me.sees);
    expect(said).toContain('Selector at HIGH, pilot light on; ammeter on 15 A.');
    expect(said).toContain('Ammeter probe 1 on the chalked bar, in the stand.');
    expect(said).toContain('Ammeter probe 2 on bar 1 on from the chalk, in the hand.');
    expect(said.join(' ')).toMatch(/Needle (between|on|about)/);
    expect(said.join(' ')).toMatch(/The growler hums/);
    for (const sentence of said) expect(sentence).toMatch(/^[A-Z].*\.$/);
    expect(said.join(' ')).not.toMatch(/fault|riser joint|open|short|ground/i);
  });

  it('speaks of the strip as a hand feels it', () => {
    const me = new BenchDriver({ faults: [{ kind: 'bridgedBars', bar: 5, ohm: 2e-4, by: 'copper' }] });
    me.placesArmature().switches('high').takesStrip().holdsStrip(180);
    const felt = new Set<string>();
    for (let bar = 0; bar < 23; bar += 1) {
      felt.add(sayObservation(me.geometry, me.sees).find((line) => line.startsWith('The strip'))!);
      me.turnsOneBar();
    }
    expect(felt).toContain('The strip is held 0.5 mm above the core, at the top: no pull, still.');
    expect([...felt].some((line) => /strong pull|snapped/.test(line))).toBe(true);
  });
});

describe('the list of touchable places', () => {
  it('offers only what would not be refused', () => {
    const me = new BenchDriver().placesArmature().takes('lamp.1').takes('lamp.2');
    const offered = touchables(me.geometry, me.sees).flatMap(({ actions }) => actions);
    expect(offered.length).toBeGreaterThan(40);
    for (const action of offered) {
      const you = new BenchDriver().placesArmature().takes('lamp.1').takes('lamp.2').does(action);
      expect(you.refusal, actionWords(me.geometry, me.sees, action)).toBeNull();
    }
  });

  it('offers everything that would not be refused: a place within reach to every lead in a hand', () => {
    const me = new BenchDriver().placesArmature().takes('lamp.1');
    for (const { place, reachable, angleDeg, actions } of touchables(me.geometry, me.sees)) {
      const touch = actions.some((action) => action.type === 'lead.touch' && action.lead === 'lamp.1');
      expect(touch).toBe(reachable && (angleDeg !== null || place === 'core' || place === 'shaft'));
    }
  });

  it('names every act that can be done with a control, each in other words', () => {
    const me = new BenchDriver().placesArmature().takesStrip().holdsStrip(180);
    const words = operables(me.geometry, me.sees).flatMap(({ actions }) =>
      actions.map((action) => actionWords(me.geometry, me.sees, action)),
    );
    expect(words).toContain('Turn the selector to LOW');
    expect(words).toContain('Turn the armature 1 bar, top towards you');
    expect(words).toContain('Take lamp probe 1 by the bare tip');
    expect(words).toContain('Hang the strip up');
    expect(words).not.toContain('Lay the armature in the cradle');
    expect(new Set(words).size).toBe(words.length);
  });
});

describe('every part and tool in words', () => {
  const everything: JobOptions = {
    parts: ['armature', 'fieldFrame', 'brushPlate'],
    tests: ['look', 'megohm', 'millivolt', 'gauges'],
  };

  it('names every act of places and controls in other words', () => {
    for (const part of ['fieldFrame', 'brushPlate'] as const) {
      const me = new BenchDriver(everything).takesUp(part).takes('lamp.1');
      const offered = [...touchables(me.geometry, me.sees), ...operables(me.geometry, me.sees)];
      const words = offered.flatMap(({ actions }) =>
        actions.map((action) => actionWords(me.geometry, me.sees, action)),
      );
      expect(new Set(words).size).toBe(words.length);
      for (const word of words) expect(word).toMatch(/^[A-Z].*[^.]$/);
    }
  });

  it('offers only what would not be refused, each to a fresh pair of hands', () => {
    const ready = () => new BenchDriver(everything).takesUp('fieldFrame').chalks(0).takes('drop.1');
    const me = ready();
    const offered = [...touchables(me.geometry, me.sees), ...operables(me.geometry, me.sees)];
    const actions = offered.flatMap((one) => one.actions);
    expect(new Set(actions.map(({ type }) => type)).size).toBeGreaterThan(12);
    for (const action of actions) expect(ready().does(action).refusal).toBeNull();
  });

  it('lists no place of a part that is not on the job', () => {
    const me = new BenchDriver();
    const places = touchables(me.geometry, me.sees).map(({ place }) => place);
    expect(places.filter((place) => /^(field|plate|tip:(tester|drop))/.test(place))).toEqual([]);
    expect(places).toContain('handle:lamp.1');
  });

  it('says what lies in front, what the tools show and what a gauge reads, and no more', () => {
    const me = new BenchDriver(everything).takesUp('fieldFrame');
    const said = () => sayObservation(me.geometry, me.sees).join(' ');
    expect(said()).toContain('its two brushes lying against one another');
    me.partsBrushes().clipsOn('tester', 'field:case', 'field:brush1').presses(true).waits(6000);
    expect(said()).toMatch(/Tester clip 1 on the case, clipped on\./);
    expect(said()).toMatch(
      /Insulation tester at 250 V, button down, shows [\d.]+ megohms, its warning light on\./,
    );
    me.presses(false).discharges().hangsUpBoth('tester').feeds('field:terminal', 'field:brush2');
    me.holdsOn('drop', 'field:terminal', 'field:brush2');
    expect(said()).toMatch(
      /The feed is clamped on the motor terminal and field brush 2 and drives 5 A; [\d.]+ mV\./,
    );
    me.hangsUpBoth('drop').unfeeds().gauges('runOut');
    expect(said()).toContain('The commutator runs out by 0.02 mm.');
    me.cures('undercut');
    expect(said()).toContain('By the book 20 minutes have gone into work.');
    expect(said()).not.toMatch(/fault|broken|open|short/i);
  });
});
