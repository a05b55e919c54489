import { describe, expect, it } from 'vitest';
import type { Verdict } from '../../src/bench/paper.ts';
import {
  decide,
  draftOf,
  EMPTY_FINDING,
  EMPTY_VERDICT,
  type VerdictDraft,
} from '../../src/screens/apprentice/bench/verdictDraft.ts';

const RISER: VerdictDraft = {
  findings: [{ condition: 'badRiserJoint', place: 'bar', count: '7' }],
  disposition: 'resolder',
  sure: 0.85,
  because: '  falls away at chalk + 7 ',
};

describe('a verdict read off the form', () => {
  it('is whole when nothing is missing', () => {
    expect(decide(RISER, 'armature', 23)).toEqual({
      ok: true,
      verdict: {
        part: 'armature',
        findings: [{ condition: 'badRiserJoint', place: { kind: 'bar', count: 7 } }],
        disposition: 'resolder',
        sure: 0.85,
        because: 'falls away at chalk + 7',
      },
    });
  });

  it('says everything that is missing at once', () => {
    const decided = decide(EMPTY_VERDICT, 'armature', 23);
    expect(decided).toMatchObject({ ok: false });
    expect(!decided.ok && decided.problems).toHaveLength(2);
  });

  it.each(['', '23', '-1', '2.5', 'seven'])('does not take “%s” for a place', (count) => {
    const decided = decide(
      { ...RISER, findings: [{ condition: 'openCoil', place: 'pair', count }] },
      'armature',
      23,
    );
    expect(decided).toMatchObject({ ok: false, problems: [expect.stringContaining('0 to 22')] });
  });

  it('asks for no place where there is none', () => {
    const sound = { condition: 'sound', place: 'bar', count: 'x' } as const;
    expect(decide({ ...RISER, findings: [sound] }, 'armature', 23)).toMatchObject({
      ok: true,
      verdict: { findings: [{ condition: 'sound', place: { kind: 'somewhere' } }] },
    });
  });

  it('lets “sound” stand only alone', () => {
    const findings = [{ ...EMPTY_FINDING, condition: 'sound' } as const, ...RISER.findings];
    expect(decide({ ...RISER, findings }, 'armature', 23)).toMatchObject({ ok: false });
  });

  it('comes back to the form as it was written', () => {
    const decided = decide(RISER, 'armature', 23);
    const verdict = (decided as { readonly verdict: Verdict }).verdict;
    expect(decide(draftOf(verdict), 'armature', 23)).toEqual(decided);
    expect(draftOf(null)).toBe(EMPTY_VERDICT);
  });
});
