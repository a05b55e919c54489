import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barAngleDeg, canReach, STRIP_ARC_DEG } from '../../src/bench/geometry.ts';
import type { Observation } from '../../src/bench/observation.ts';
import { barOf } from '../../src/bench/places.ts';
import { KEY_LIST, type KeyContext, nearestBar, wishOf } from '../../src/screens/apprentice/bench/keys.ts';
import { AT_REST, GEOMETRY, touching } from './observed.ts';

function press(key: string, context: Partial<KeyContext> = {}, shift = false) {
  return wishOf({ key, shift }, { seen: AT_REST, geometry: GEOMETRY, lead: null, ...context });
}

function seenWith(part: Partial<Observation>): Observation {
  return { ...AT_REST, ...part };
}

describe('keys at the bench', () => {
  it('turn the armature by one bar, or by 5 degrees with Shift', () => {
    expect(press('ArrowRight')).toEqual({ kind: 'act', action: { type: 'armature.turn', byDeg: 360 / 23 } });
    expect(press('ArrowLeft', {}, true)).toEqual({
      kind: 'act',
      action: { type: 'armature.turn', byDeg: -5 },
    });
  });

  it.each([
    ['o', 'off'],
    ['L', 'low'],
    ['h', 'high'],
  ])('%s turns the selector to %s', (key, to) =>
    expect(press(key)).toEqual({ kind: 'act', action: { type: 'selector.turn', to } }),
  );

  it('step through the ranges and stop at either end', () => {
    expect(press('-')).toEqual({ kind: 'act', action: { type: 'range.turn', to: 15 } });
    expect(press('+')).toEqual({ kind: 'act', action: { type: 'range.turn', to: 100 } });
    expect(press('+', { seen: seenWith({ rangeA: 100 }) })).toBeNull();
    expect(press('-', { seen: seenWith({ rangeA: 3 }) })).toBeNull();
  });

  it('take a lead by its handle, never by its tip, or choose the one already held', () => {
    expect(press('3')).toEqual({
      kind: 'act',
      action: { type: 'lead.take', lead: 'lamp.1', grip: 'handle' },
    });
    const seen = seenWith({ leads: { ...AT_REST.leads, 'lamp.1': touching(null) } });
    expect(press('3', { seen })).toEqual({ kind: 'choose', lead: 'lamp.1' });
  });

  it('do nothing with a lead when none is in hand', () => {
    for (const key of ['u', 's', 'b', 'c', 'a', 'p', 'ArrowUp', 'ArrowDown']) expect(press(key)).toBeNull();
  });

  it('set a free tip on the bar nearest the person, and step from there', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 360, noNaN: true }), (rotationDeg) => {
        const seen = seenWith({ rotationDeg });
        const bar = nearestBar(seen, GEOMETRY);
        expect(canReach(barAngleDeg(GEOMETRY, bar, rotationDeg))).toBe(true);
        expect(press('ArrowDown', { seen, lead: 'ammeter.1' })).toMatchObject({
          action: { type: 'lead.touch', place: `bar:${bar}` },
        });
        const on = seenWith({
          rotationDeg,
          leads: { ...AT_REST.leads, 'ammeter.1': touching(`bar:${bar}`) },
        });
        const down = press('ArrowDown', { seen: on, lead: 'ammeter.1' });
        const next =
          down?.kind === 'act' && down.action.type === 'lead.touch' ? barOf(down.action.place) : null;
        expect(next).toBe((bar + 1) % 23);
      }),
    );
  });

  it('keep the strip on its arc', () => {
    const { from, to } = STRIP_ARC_DEG;
    fc.assert(
      fc.property(
        fc.double({ min: from, max: to, noNaN: true }),
        fc.constantFrom('[', ']'),
        (angleDeg, key) => {
          const strip = { at: 'core', angleDeg, heightMm: 1.5, pull: 0, buzz: 0 } as const;
          const wish = press(key, { seen: seenWith({ strip }) });
          const action = wish?.kind === 'act' && wish.action.type === 'strip.hold' ? wish.action : null;
          expect(action?.heightMm).toBe(1.5);
          expect(action?.angleDeg).toBeGreaterThanOrEqual(from);
          expect(action?.angleDeg).toBeLessThanOrEqual(to);
        },
      ),
    );
  });

  it('look at riser, bar and core one after the other', () => {
    const bar = nearestBar(AT_REST, GEOMETRY);
    const looks = [null, `riser:${bar}`, `bar:${bar}`, 'core'] as const;
    const next = looks.map((place) => press('v', { seen: seenWith({ look: place && { place, sees: [] } }) }));
    const places = next.map(
      (wish) => wish?.kind === 'act' && wish.action.type === 'lens.look' && wish.action.place,
    );
    expect(places).toEqual([`riser:${bar}`, `bar:${bar}`, 'core', `riser:${bar}`]);
  });

  it('go from place to place of a part that lies in front', () => {
    const mat = { fieldFrame: 'forward', brushPlate: 'absent' } as const;
    const tip = (place: 'field:terminal' | 'field:case' | null, key: string) => {
      const leads = { ...AT_REST.leads, 'lamp.1': touching(place) };
      const wish = press(key, { seen: seenWith({ mat, leads }), lead: 'lamp.1' });
      return wish?.kind === 'act' && wish.action.type === 'lead.touch' && wish.action.place;
    };
    expect(tip(null, 'ArrowDown')).toBe('field:terminal');
    expect(tip('field:terminal', 'ArrowDown')).toBe('field:brush1');
    expect(tip('field:terminal', 'ArrowUp')).toBe('field:case');
    expect(tip('field:case', 'ArrowDown')).toBe('field:terminal');
    const look = press('v', { seen: seenWith({ mat }) });
    expect(look).toMatchObject({ action: { type: 'lens.look', place: 'field:terminal' } });
  });

  it('leave keys alone that mean nothing here', () => {
    for (const key of ['Tab', 'Enter', 'Escape', 'q', 'F5', ' ']) expect(press(key)).toBeNull();
  });

  it('are all in the list that is shown', () => {
    const named = KEY_LIST.map(([keys]) => keys).join(' ');
    for (const key of [
      'G',
      'O',
      'L',
      'H',
      '1',
      '2',
      '3',
      '4',
      'C',
      'A',
      'P',
      'U',
      'E',
      'S',
      'B',
      'X',
      'V',
      'M',
      'N',
      '?',
    ]) {
      const leads = { ...AT_REST.leads, 'lamp.1': touching('bar:3') };
      expect(press(key, { seen: seenWith({ leads }), lead: 'lamp.1' }), key).not.toBeNull();
      expect(named).toContain(key);
    }
  });
});
