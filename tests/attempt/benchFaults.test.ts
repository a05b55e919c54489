import { describe, expect, it } from 'vitest';
import type { BenchFault } from '../../src/scenario/hidden/benchFault.ts';
import { BenchDriver } from '../support/benchDriver.ts';

const bench = (...benchFaults: BenchFault[]) => new BenchDriver({ benchFaults });

/** Tips together on LOW: what proves the lamp. */
function lampProof(me: BenchDriver): number {
  me.placesArmature().switches('low').takes('lamp.1').takes('lamp.2');
  return me.touches('lamp.1', 'tip:lamp.2').watchesLamp();
}

describe('a bench that is itself at fault', () => {
  it.each<[string, BenchFault]>([
    ['a blown lamp', { kind: 'blownLamp' }],
    ['a broken lamp lead', { kind: 'brokenLead', lead: 'lamp.2' }],
  ])('%s shows at the proof: the tips together stay dark', (_, fault) => {
    const me = bench(fault);
    expect(lampProof(me)).toBe(0);
    expect(me.session.stateAt(me.atMs).lamp).toBe('unproved');
  });

  it('a dark result means nothing with a blown lamp: a grounded armature passes', () => {
    const grounded = [{ kind: 'groundedBar', bar: 3, ohm: 0.5 }] as const;
    const me = new BenchDriver({ faults: grounded, benchFaults: [{ kind: 'blownLamp' }] });
    me.placesArmature().switches('low');
    expect(me.lampBetween('core', `bar:${me.barNear(-90)}`)).toBe(0);
    expect(me.everythingBroken).toEqual(['lampNotProvedBefore']);
  });

  it('is put right with the bench off and the leads hung up, takes its minutes, and then proves', () => {
    const me = bench({ kind: 'blownLamp' }, { kind: 'brokenLead', lead: 'lamp.1' });
    lampProof(me);
    me.hangsUpBoth('lamp').switches('off').setsRight('lamp').setsRight('lampLeads');
    expect(me.refusal).toBeNull();
    expect(me.sees.minutesSpent).toBe(8);
    me.switches('low').provesLamp();
    expect(me.session.stateAt(me.atMs).lamp).toBe('proved');
    expect(me.everythingBroken).toEqual([]);
  });

  it('costs minutes to no end where the bulb was whole', () => {
    const me = bench({ kind: 'brokenLead', lead: 'lamp.1' }).setsRight('lamp');
    expect(lampProof(me)).toBe(0);
    expect(me.sees.minutesSpent).toBe(2);
  });

  it('a broken ammeter lead reads nothing anywhere, until the leads are changed', () => {
    const read = (me: BenchDriver) => {
      me.setsProbesAt(-90, -15);
      const reading = me.readsNeedle();
      me.hangsUpBoth('ammeter');
      return reading;
    };
    const me = bench({ kind: 'brokenLead', lead: 'ammeter.2' }).placesArmature().switches('high');
    expect(read(me)).toBe(0);
    me.switches('off').setsRight('ammeterLeads').switches('high');
    expect(read(me)).toBeGreaterThan(0.2);
  });

  it('an ammeter off zero shows it before anything is switched on, and adds it to every reading', () => {
    const me = bench({ kind: 'ammeterZero', offset: 0.05 });
    expect(me.sees.needle).toEqual({ deflection: 0.05, pegged: false, atRest: true });
    me.setsRight('ammeterZero').waits(4000);
    expect(me.sees.needle.deflection).toBe(0);
    expect(me.sees.minutesSpent).toBe(1);
    const below = bench({ kind: 'ammeterZero', offset: -0.05 });
    expect(below.sees.needle).toEqual({ deflection: 0, pegged: false, atRest: true });
    const read = (offset: number) =>
      bench({ kind: 'ammeterZero', offset })
        .placesArmature()
        .switches('high')
        .setsProbesAt(-90, -15)
        .readsNeedle();
    expect(read(0.05) - read(0)).toBeCloseTo(0.05, 2);
    expect(read(-0.05) - read(0)).toBeCloseTo(-0.05, 2);
  });

  it('a cracked handle is found by looking, and held live is a breach until the leads are changed', () => {
    const me = bench({ kind: 'crackedHandle', lead: 'lamp.2' }).placesArmature();
    expect(me.looksAt('handle:lamp.2').sees.look?.sees).toContain('crackedHandle');
    expect(me.looksAt('handle:lamp.1').sees.look?.sees).not.toContain('crackedHandle');
    me.switches('low').takes('lamp.1');
    expect(me.broke).toEqual([]);
    me.takes('lamp.2');
    expect(me.broke).toEqual(['crackedHandle']);
    expect(me.sees.stopped).toBeNull();
    me.hangsUpBoth('lamp').switches('off').setsRight('lampLeads').switches('low').takes('lamp.2');
    expect(me.broke).toEqual([]);
    expect(me.looksAt('handle:lamp.2').sees.look?.sees).not.toContain('crackedHandle');
  });

  it('gives nothing away before anyone proves, reads or looks', () => {
    const sound = bench().sees;
    for (const fault of [
      { kind: 'blownLamp' },
      { kind: 'brokenLead', lead: 'lamp.1' },
      { kind: 'crackedHandle', lead: 'lamp.1' },
    ] as const) {
      expect(bench(fault).sees).toEqual(sound);
    }
  });

  it('is not worked on with the leads in use, nor zeroed under power', () => {
    const me = bench().placesArmature().takes('lamp.1');
    expect(me.setsRight('lampLeads').refusal).toMatch(/Hang both leads/);
    me.hangsUp('lamp.1').switches('high');
    expect(me.setsRight('ammeterZero').refusal).toMatch(/OFF/);
  });
});
