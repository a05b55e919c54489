import { describe, expect, it } from 'vitest';
import { soundsBetween } from '../../src/sound/events.ts';
import { humming, QUIET, touching, withStrip } from './bench.ts';

const on = humming(11);

describe('single sounds', () => {
  it('are none when nothing happens', () => {
    expect(soundsBetween(on, { ...on, atMs: 40, hum: { ...on.hum, level: 12 } })).toEqual([]);
  });

  it('are a click for the selector and for the meter range', () => {
    expect(soundsBetween(QUIET, on)).toEqual(['click']);
    expect(soundsBetween(on, { ...on, rangeA: 3 })).toEqual(['click']);
  });

  it('are a clack when the cut-out opens, not when the bench is switched off', () => {
    expect(soundsBetween(on, { ...on, supply: 'cutOut' })).toEqual(['clack']);
    expect(soundsBetween(on, QUIET)).toEqual(['click']);
  });

  it('are a tick when a tip lands, none while bars pass under it in the stand', () => {
    const landed = touching(on, 'ammeter.1', 'bar:3');
    expect(soundsBetween(on, landed)).toEqual(['tick']);
    expect(soundsBetween(landed, touching(on, 'ammeter.1', 'bar:4'))).toEqual([]);
  });

  it('are a snap when a tip leaves while current passes, for the lamp only while it glows', () => {
    const ammeter = {
      ...touching(on, 'ammeter.1', 'bar:3'),
      needle: { deflection: 0.6, pegged: false, atRest: true },
    };
    expect(soundsBetween(ammeter, touching(on, 'ammeter.1', null))).toEqual(['arc']);
    const dark = touching(on, 'lamp.1', 'core');
    expect(soundsBetween(dark, touching(on, 'lamp.1', null))).toEqual([]);
    expect(soundsBetween({ ...dark, lamp: { glow: 7 } }, touching(on, 'lamp.1', null))).toEqual(['arc']);
    expect(soundsBetween({ ...ammeter, supply: 'off' }, touching(QUIET, 'ammeter.1', null))).not.toContain(
      'arc',
    );
  });

  it('are a thud for an armature laid down, a scrape for chalk, a slap for a strip that snaps on', () => {
    expect(soundsBetween({ ...QUIET, cradle: 'empty' }, QUIET)).toEqual(['thud']);
    expect(soundsBetween(QUIET, { ...QUIET, chalkedBar: 4 })).toEqual(['chalk']);
    expect(soundsBetween(withStrip(on, 3, 6), withStrip(on, 4, 8))).toEqual(['slap']);
  });
});
