import { describe, expect, it } from 'vitest';
import { INTERLOCKS, type InterlockCode } from '../../src/bench/interlocks.ts';
import { BenchDriver, type JobOptions } from '../support/benchDriver.ts';
import { TOOL_MISDEEDS } from './toolMisdeeds.ts';

const codeOf = (code: InterlockCode) => INTERLOCKS.find((rule) => rule.code === code)!;

describe.each(TOOL_MISDEEDS)('$code: $what', ({ code, job, upTo, misdeed }) => {
  it('is refused in guided work, with the reason, and recorded', () => {
    const me = new BenchDriver({ ...job, mode: 'guided' });
    upTo(me);
    expect(me.refusal).toBeNull();
    expect(me.everythingBroken).toEqual([]);
    const state = me.session.stateAt(me.atMs);
    misdeed(me);
    expect(me.refusal).not.toBeNull();
    expect(me.last.breaches.map(({ sentence }) => sentence)).toContain(codeOf(code).sentence);
    expect(me.session.stateAt(me.atMs)).toEqual(state);
    expect(me.sees.stopped).toBeNull();
  });

  it.each(['practice', 'assessed'] as const)('is let happen in %s work and recorded', (mode) => {
    const me = new BenchDriver({ ...job, mode });
    upTo(me);
    expect(me.everythingBroken).toEqual([]);
    misdeed(me);
    expect(me.refusal).toBeNull();
    expect(me.broke).toContain(code);
    expect(me.sees.stopped !== null).toBe(codeOf(code).critical);
    expect(me.sees.supply === 'isolated').toBe(codeOf(code).critical);
  });
});

describe('a body on live metal', () => {
  const touch = (job: JobOptions, act: (me: BenchDriver) => unknown) => {
    const me = new BenchDriver(job)
      .placesArmature()
      .switches('low')
      .takes('lamp.1')
      .touches('lamp.1', 'core');
    act(me);
    return me.last.breaches.find(({ critical }) => critical)?.touch;
  };
  const hand = (me: BenchDriver) => me.layHandOnArmature();

  // Limits from references S01 to S03, through the engine's own test of the touch current.
  it('has its current worked out in the breach once it has happened', () => {
    const earthed = touch({ supplyReference: 'earthed' }, hand);
    expect(earthed?.currentA).toBeGreaterThan(0.04);
    expect(earthed?.effect).toBe('mayKill');
    const floating = touch({ supplyReference: 'floating' }, hand);
    expect(floating?.currentA).toBeLessThan(0.5e-3);
    expect(floating?.effect).toBe('notFelt');
  });

  it('is the same for a tip held when the bench is switched to LOW', () => {
    const grip = (supplyReference: 'floating' | 'earthed') => {
      const me = new BenchDriver({ supplyReference }).placesArmature().takes('lamp.1', 'tip').switches('low');
      return me.last.breaches[0]!.touch!.currentA;
    };
    expect(grip('floating')).toBeLessThan(0.5e-3);
    expect(grip('earthed')).toBeGreaterThan(0.04);
  });

  it('is worked out for nothing that was refused, and cannot be seen beforehand', () => {
    for (const supplyReference of ['floating', 'earthed'] as const) {
      expect(touch({ mode: 'guided', supplyReference }, hand)).toBeUndefined();
    }
    const shown = (supplyReference: 'floating' | 'earthed') =>
      new BenchDriver({ supplyReference }).placesArmature().switches('low').provesLamp().sees;
    expect(shown('floating')).toEqual(shown('earthed'));
  });
});
