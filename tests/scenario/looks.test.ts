import { describe, expect, it } from 'vitest';
import type { Clue } from '../../src/bench/observation.ts';
import type { Place } from '../../src/bench/places.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { cluesAt } from '../../src/scenario/hidden/looks.ts';
import type { ScenarioHidden } from '../../src/scenario/scenario.ts';
import { partLibrary } from './files.ts';

const wave = partLibrary().get('wave-23')!;
const hidden = (faults: ArmatureFault[], seed: number): ScenarioHidden => ({
  armature: { faults },
  startRotationDeg: 0,
  seed,
  supplyReference: 'floating',
});

/** Share of many parts with these faults that show the clue at the place. */
function share(faults: ArmatureFault[], place: Place, clue: Clue): number {
  const parts = 2000;
  const shown = Array.from({ length: parts }, (_, seed) => cluesAt(hidden(faults, seed), wave, place));
  return shown.filter((clues) => clues.includes(clue)).length / parts;
}

const badJoint: ArmatureFault = { kind: 'riserJoint', bar: 6, form: 'bar', ohm: 'open' };
const bridge = (by: 'copper' | 'carbon'): ArmatureFault => ({ kind: 'bridgedBars', bar: 22, ohm: 0.001, by });

describe('what the lens shows', () => {
  it('is the same every time one part is looked at', () => {
    const part = hidden([badJoint], 77);
    const places: Place[] = ['riser:6', 'bar:6', 'riser:7', 'core', 'shaft'];
    expect(places.map((place) => cluesAt(part, wave, place))).toEqual(
      places.map((place) => cluesAt(part, wave, place)),
    );
  });

  it('points to a bad joint mostly, not always, and now and then to its neighbour or to a sound one', () => {
    expect(share([badJoint], 'riser:6', 'solderThrown')).toBeGreaterThan(0.7);
    expect(share([badJoint], 'riser:6', 'solderThrown')).toBeLessThan(0.9);
    expect(share([badJoint], 'riser:7', 'solderThrown')).toBeGreaterThan(0.1);
    expect(share([], 'riser:6', 'solderThrown')).toBeGreaterThan(0.005);
    expect(share([], 'riser:6', 'solderThrown')).toBeLessThan(0.1);
  });

  it('tells copper from carbon across the mica, from either bar', () => {
    expect(share([bridge('copper')], 'bar:0', 'metalAcrossMica')).toBeGreaterThan(0.6);
    expect(share([bridge('carbon')], 'bar:22', 'carbonAcrossMica')).toBeGreaterThan(0.6);
    expect(share([bridge('carbon')], 'bar:22', 'metalAcrossMica')).toBe(0);
  });

  it('shows a burnt edge at either end of an open coil', () => {
    const open: ArmatureFault = { kind: 'openCoil', coil: 20 };
    expect(share([open], 'bar:20', 'burntBarEdge')).toBeGreaterThan(0.5);
    expect(share([open], 'bar:8', 'burntBarEdge')).toBeGreaterThan(0.5);
    expect(share([open], 'bar:9', 'burntBarEdge')).toBeLessThan(0.1);
  });

  it('is nothing at most places of a sound part', () => {
    const places = Array.from({ length: 23 }, (_, bar): Place[] => [`bar:${bar}`, `riser:${bar}`]).flat();
    const seen = places.filter((place) => cluesAt(hidden([], 5), wave, place).length > 0);
    expect(seen.length).toBeLessThan(places.length / 4);
  });

  it('adds what the file plants, and knows no place beyond the part', () => {
    const part = { ...hidden([], 5), falseLeads: [{ place: 'shaft', clue: 'dirt' }] } as const;
    expect(cluesAt(part, wave, 'shaft')).toEqual(['dirt']);
    expect(cluesAt(part, wave, 'bar:23')).toEqual([]);
    expect(cluesAt(part, wave, 'tip:lamp.1')).toEqual([]);
  });
});
