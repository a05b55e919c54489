import { describe, expect, it } from 'vitest';
import { parsePart, parseScenario, parseScenarioText } from '../../src/scenario/parse.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { partLibrary, scenarioTexts } from './files.ts';

const library = partLibrary();
const texts = scenarioTexts();
// biome-ignore lint/suspicious/noExplicitAny: a file broken on purpose fits no type
type Loose = Record<string, any>;
/** A copy of a sound scenario file to break. */
const good = () => JSON.parse(texts.get('q-91d2')!) as Loose;

function issues(input: unknown): string[] {
  const read = parseScenario(input, library);
  return read.ok ? [] : read.issues.map((issue) => `${issue.path}: ${issue.sentence}`);
}
function broken(change: (file: Loose) => void): string[] {
  const file = good();
  change(file);
  return issues(file);
}

describe('the library', () => {
  const read = [...texts].map(([name, text]) => ({ name, read: parseScenarioText(text, library) }));
  const scenarios = read.flatMap(({ read }) => (read.ok ? [read.value] : []));
  const faultsOf = (s: Scenario) => s.hidden.armature.faults;

  it('is in order, thirty files and more', () => {
    expect(read.filter(({ read }) => !read.ok)).toEqual([]);
    expect(scenarios.length).toBeGreaterThanOrEqual(30);
  });
  it('covers every armature it is about with sound parts and faults, on both mains and in every mode', () => {
    for (const armature of ['wave-23', 'lap-24', 'lap-28', 'lap-28e']) {
      const here = scenarios.filter((s) => s.public.armature === armature);
      expect(here.some((s) => faultsOf(s).length === 0)).toBe(true);
      expect(here.some((s) => faultsOf(s).length > 0)).toBe(true);
    }
    expect(new Set(scenarios.map((s) => s.public.mains)).size).toBe(2);
    expect(new Set(scenarios.map((s) => s.public.mode)).size).toBe(3);
  });
  it('covers every kind of armature fault, and parts with two faults', () => {
    expect(new Set(scenarios.flatMap(faultsOf).map(({ kind }) => kind)).size).toBe(10);
    expect(scenarios.filter((s) => faultsOf(s).length === 2).length).toBeGreaterThanOrEqual(3);
  });

  it.each([...texts])('%s says nothing in its name, id or card that gives the fault away', (name, text) => {
    const file = JSON.parse(text) as Scenario;
    expect(name).toMatch(/^q-[0-9a-f]{4}$/);
    expect(file.public.id).toBe(name);
    const card = Object.values(file.public.card).join(' ');
    expect(card).not.toMatch(
      /riser|solder|open coil|short(ed|-circuit| circuit)|\bground(ed)?\b|bridg|reversed|insulation|\bsound\b|rivet|pigtail|\bworn\b|mica|\bjoint/i,
    );
  });
});

describe('a broken scenario file', () => {
  it('that is not this kind of file', () => {
    expect(issues(5)).toEqual([': Expected an object with format "slot-and-riser/scenario", but 5 came.']);
    expect(broken((f) => delete f.format)).toEqual([
      'format: Expected "slot-and-riser/scenario", but nothing came.',
    ]);
  });
  it('of another version', () => {
    expect(broken((f) => (f.version = 7))).toEqual([
      'version: Expected version 3 or an older one, but 7 came.',
    ]);
  });
  it('with a part type nobody knows', () => {
    expect(broken((f) => (f.public.armature = 'ring-99'))).toEqual([
      'public.armature: Expected a known part type (lap-24, lap-28, lap-28e, wave-23, wave-23f), but "ring-99" came.',
    ]);
  });
  it('with unknown and missing fields, all of them named', () => {
    expect(
      broken((f) => {
        f.public.hint = 'x';
        f.hidden.armature.faults[0].depth = 1;
        delete f.public.mode;
      }),
    ).toEqual([
      'public.mode: This is missing: expected "guided", "practice" or "assessed", nothing came.',
      'public.hint: No field of this name is known here: expected it left out.',
      'hidden.armature.faults[0].depth: No field of this name is known here: expected it left out.',
    ]);
  });
  it('with values out of range or of the wrong kind', () => {
    expect(
      broken((f) => {
        f.hidden.startRotationDeg = 360;
        f.hidden.seed = 1.5;
        f.hidden.armature.faults[0].ohm = 'closed';
        f.public.card.unit = '';
        f.public.minutes = 0;
        f.public.tests = ['look', 'smell'];
      }),
    ).toEqual([
      'public.card.unit: Expected text of at least 1 character, but "" came.',
      expect.stringMatching(/^public\.tests\[1\]: Expected "look", "spaced", .*, but "smell" came\.$/),
      'public.minutes: Expected a number of at least 1, but 0 came.',
      'hidden.armature.faults[0].ohm: Expected a number or "open", but "closed" came.',
      'hidden.startRotationDeg: Expected a number of less than 360, but 360 came.',
      'hidden.seed: Expected a whole number, but 1.5 came.',
    ]);
  });
  it('with a fault of a kind that does not exist', () => {
    const [issue] = broken((f) => (f.hidden.armature.faults[0] = { kind: 'haunted' }));
    expect(issue).toMatch(
      /^hidden\.armature\.faults\[0\]\.kind: Expected "openCoil", .*, but "haunted" came\.$/,
    );
  });
  it('with a test listed twice', () => {
    expect(broken((f) => (f.public.tests = ['look', 'strip', 'look']))).toEqual([
      'public.tests[2]: Expected each test once, but "look" came again.',
    ]);
  });
  it('with a false lead on a bar the part does not have', () => {
    expect(broken((f) => (f.hidden.falseLeads = [{ place: 'bar:23', clue: 'dirt' }]))).toEqual([
      'hidden.falseLeads[0].place: Expected a place on an armature of 23 bars (0 to 22), but "bar:23" came.',
    ]);
    expect(broken((f) => (f.hidden.falseLeads = [{ place: 'moon', clue: 'dirt' }]))[0]).toMatch(
      /^hidden\.falseLeads\[0\]\.place: Expected a place the lens can be put on/,
    );
  });
  it('does not drown the reader', () => {
    const many = broken((f) => {
      f.hidden.armature.faults = Array(500).fill({ kind: 'openCoil', coil: -1, a: 1 });
    });
    expect(many.length).toBeLessThanOrEqual(41);
  });
  it('cut off anywhere', () => {
    const text = texts.get('q-91d2')!;
    for (let at = 1; at < text.trimEnd().length; at += 37) {
      const read = parseScenarioText(text.slice(0, at), library);
      expect(read.ok).toBe(false);
      if (!read.ok) expect(read.issues[0]!.sentence).toMatch(/^The file ends too soon/);
    }
  });
  it('of 50 MB', () => {
    const read = parseScenarioText(' '.repeat(50_000_000), library);
    expect(read).toEqual({
      ok: false,
      issues: [{ path: '', sentence: 'Expected a scenario file of at most 1.0 MB, but 50.0 MB came.' }],
    });
  });
});

describe('two faults that contradict one another', () => {
  const joint = { kind: 'riserJoint', bar: 14, form: 'bar', ohm: 'open' };
  it.each([
    ['one joint twice', [joint, { ...joint, ohm: 0.02 }], 'the joint at bar 14'],
    [
      'a coil open and reversed',
      [
        { kind: 'openCoil', coil: 3 },
        { kind: 'reversedCoil', coil: 3 },
      ],
      'coil 3',
    ],
    [
      'a coil off its bar and open',
      [
        { ...joint, form: 'oneEnd' },
        { kind: 'openCoil', coil: 14 },
      ],
      'coil 14',
    ],
    [
      'both ends off and the coil that ends there open',
      [
        { ...joint, form: 'bothEnds' },
        { kind: 'openCoil', coil: 3 },
      ],
      'coil 3',
    ],
    [
      'one bridge twice',
      [
        { kind: 'bridgedBars', bar: 2, ohm: 0.001, by: 'copper' },
        { kind: 'bridgedBars', bar: 2, ohm: 1, by: 'carbon' },
      ],
      'the gap between bar 2 and the next',
    ],
    [
      'weak insulation beside a ground',
      [
        { kind: 'groundedBar', bar: 2, ohm: 1 },
        { kind: 'weakInsulation', ohm: 20_000, breakdownV: null },
      ],
      'the insulation, weak and gone at once',
    ],
  ])('%s', (_, faults, over) => {
    expect(broken((f) => (f.hidden.armature.faults = faults))).toEqual([
      `hidden.armature.faults[1]: Expected faults that can be true together, but this one and faults[0] both decide ${over}.`,
    ]);
  });
  it('but two that can stand together may', () => {
    expect(
      broken(
        (f) =>
          (f.hidden.armature.faults = [
            { kind: 'groundedBar', bar: 2, ohm: 1 },
            { kind: 'groundedBar', bar: 9, ohm: 1 },
            { kind: 'bridgedBars', bar: 2, ohm: 0.001, by: 'copper' },
          ]),
      ),
    ).toEqual([]);
  });
});

describe('a fault this armature cannot have', () => {
  it('on a bar that does not exist', () => {
    const [issue] = broken((f) => (f.hidden.armature.faults[0].bar = 23));
    expect(issue).toBe(
      'hidden.armature.faults[0].bar: Expected a bar from 0 to 22 (this armature has 23), but 23 came.',
    );
  });
  it('with more turns shorted than a coil has', () => {
    const faults = [{ kind: 'turnShort', coil: 1, turns: 2, ohm: 0.001 }];
    const [issue] = broken((f) => (f.hidden.armature.faults = faults));
    expect(issue).toMatch(/^hidden\.armature\.faults\[0\]\.turns: Expected .* but 2 came\.$/);
  });
  it('between coils that do not touch', () => {
    const faults = [{ kind: 'coilShort', topCoil: 1, bottomCoil: 2, ohm: 0.001 }];
    const [issue] = broken((f) => (f.hidden.armature.faults = faults));
    expect(issue).toMatch(
      /^hidden\.armature\.faults\[0\]\.bottomCoil: Expected a coil that lies under coil 1/,
    );
  });
});

describe('a part file', () => {
  const wave = () => ({ ...library.get('wave-23')! }) as Record<string, unknown>;
  it('with a length that is not one', () => {
    const read = parsePart({ ...wave(), outerRadius: 32 });
    expect(read.ok ? [] : read.issues).toEqual([
      { path: 'outerRadius', sentence: 'Expected a number of at most 0.5, but 32 came.' },
    ]);
  });
  it('with a winding that cannot exist', () => {
    // A simplex wave winding on four poles needs an odd number of bars (standard theory of drum windings).
    const read = parsePart({ ...wave(), bars: 24, slots: 24 });
    expect(read.ok ? [] : read.issues).toEqual([
      { path: 'bars', sentence: expect.stringMatching(/^A simplex wave winding on 4 poles needs/) },
    ]);
  });
  it('with an odd number of poles', () => {
    const read = parsePart({ ...wave(), poles: 3 });
    expect(read.ok ? [] : read.issues[0]).toEqual({
      path: 'poles',
      sentence: 'Expected an even number of poles, but 3 came.',
    });
  });
});
