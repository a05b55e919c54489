import { describe, expect, it } from 'vitest';
import { ATTEMPT_FORMAT, ATTEMPT_VERSION, MOST_ATTEMPT_CHARS } from '../../src/attempt/entry.ts';
import { parseAttempt, parseAttemptText } from '../../src/attempt/parse.ts';
import { BenchDriver, job, PARTS } from '../support/benchDriver.ts';

function stored() {
  const me = new BenchDriver().placesArmature().switches('high').setsProbesAt(-90, -75).waits(90_000);
  me.does({
    type: 'verdict.write',
    verdict: {
      part: 'armature',
      findings: [{ condition: 'openCoil', place: { kind: 'pair', count: 3 } }],
      disposition: 'winder',
      sure: 0.8,
      because: 'the readings of entry 5',
    },
  });
  me.does({ type: 'sheet.write', line: { test: 'spaced', count: 0, readingA: 12.5, rangeA: 30 } }).handsIn();
  return {
    format: ATTEMPT_FORMAT as string,
    version: ATTEMPT_VERSION as number,
    id: 'a-1',
    mode: 'practice',
    learner: 'A learner',
    startedAt: '2031-05-06T08:30:00.000Z',
    scenario: job() as unknown,
    entries: structuredClone(me.session.log) as unknown as Record<string, unknown>[],
    endMs: me.atMs + 500,
  };
}

/** The one issue of a file that was spoilt in one place. */
function issueOf(spoil: (attempt: ReturnType<typeof stored>) => void) {
  const attempt = stored();
  spoil(attempt);
  const parsed = parseAttempt(attempt, PARTS);
  if (parsed.ok) throw new Error('This was read without complaint.');
  return parsed.issues[0]!;
}

function sentenceOf(text: string): string {
  const parsed = parseAttemptText(text, PARTS);
  return parsed.ok ? '' : parsed.issues[0]!.sentence;
}

describe('an attempt file', () => {
  it('is read back as it was written', () => {
    const attempt = stored();
    const parsed = parseAttemptText(JSON.stringify(attempt), PARTS);
    expect(parsed).toEqual({ ok: true, value: attempt });
  });

  it('that is not JSON, cut off, empty or huge gets one sentence with the place', () => {
    const text = JSON.stringify(stored(), null, 1);
    expect(sentenceOf('hello')).toMatch(/not JSON/);
    expect(sentenceOf(text.slice(0, text.length / 2))).toMatch(/cut off/);
    expect(sentenceOf('')).toMatch(/empty/);
    expect(sentenceOf(' '.repeat(50_000_000))).toMatch(/at most 20.0 MB, but 50.0 MB came/);
    expect(sentenceOf(JSON.stringify([1, 2]))).toMatch(/an attempt|format/);
    expect(MOST_ATTEMPT_CHARS).toBeLessThan(50_000_000);
  });

  it('of another kind or an unknown version is refused by name', () => {
    expect(
      issueOf((a) => {
        a.format = 'slot-and-riser/scenario';
      }),
    ).toEqual({
      path: 'format',
      sentence: 'Expected "slot-and-riser/attempt", but "slot-and-riser/scenario" came.',
    });
    expect(
      issueOf((a) => {
        a.version = 99;
      }).sentence,
    ).toMatch(/version 1 or one .* but 99 came/);
    expect(
      issueOf((a) => {
        a.version = '1' as unknown as number;
      }).path,
    ).toBe('version');
  });

  it('with an unknown act names the entry and what came', () => {
    const issue = issueOf((a) => {
      a.entries[1]!.action = { type: 'armature.polish' };
    });
    expect(issue.path).toBe('entries[1].action.type');
    expect(issue.sentence).toMatch(/"selector.turn".*but "armature.polish" came/);
  });

  it('with a broken act names the field', () => {
    expect(
      issueOf((a) => {
        a.entries[1]!.action = { type: 'selector.turn', to: 'medium' };
      }),
    ).toEqual({
      path: 'entries[1].action.to',
      sentence: 'Expected "off", "low" or "high", but "medium" came.',
    });
    const place = issueOf((a) => {
      a.entries[1]!.action = { type: 'lens.look', place: 'bar:x' };
    });
    expect(place.sentence).toMatch(/a place on the bench.*but "bar:x" came/);
    const extra = issueOf((a) => {
      a.entries[1]!.action = { type: 'armature.lift', gently: true };
    });
    expect(extra.path).toBe('entries[1].action.gently');
  });

  it('whose times run backwards, whose numbers jump or whose end comes too soon is refused', () => {
    expect(
      issueOf((a) => {
        a.entries[2]!.atMs = 100;
      }),
    ).toEqual({
      path: 'entries[2].atMs',
      sentence: 'Expected a time of at least 800 ms, as of the entry before, but 100 came.',
    });
    expect(
      issueOf((a) => {
        a.entries[2]!.n = 7;
      }).path,
    ).toBe('entries[2].n');
    expect(
      issueOf((a) => {
        a.endMs = 5;
      }).path,
    ).toBe('endMs');
    expect(
      issueOf((a) => {
        a.entries[0]!.atMs = -3;
      }).path,
    ).toBe('entries[0].atMs');
  });

  it('with a broken scenario inside names the place inside', () => {
    const issue = issueOf((a) => {
      a.scenario = {
        ...job(),
        hidden: { ...job().hidden, armature: { faults: [{ kind: 'openCoil', coil: 40 }] } },
      };
    });
    expect(issue.path).toMatch(/^scenario\.hidden\.armature\.faults\[0\]/);
    expect(issue.sentence).toMatch(/40/);
    expect(
      issueOf((a) => {
        a.scenario = undefined;
      }).path,
    ).toBe('scenario');
  });

  it('never throws, whatever it holds', () => {
    for (const junk of [
      null,
      3,
      'x',
      [],
      {},
      { format: ATTEMPT_FORMAT },
      { format: ATTEMPT_FORMAT, version: 1, entries: 5 },
    ]) {
      expect(parseAttempt(junk, PARTS).ok).toBe(false);
    }
  });
});
