import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Attempt } from '../../src/attempt/entry.ts';
import type { Answer } from '../../src/cli/support/command.ts';
import { type AnswerKey, answerKey, key } from '../../src/cli/support/key.ts';
import { replayFile } from '../../src/cli/support/replay.ts';
import { validate } from '../../src/cli/support/validate.ts';
import type { FieldFrameFault } from '../../src/engine/parts/fieldFrame.ts';
import { expertAttempt, library, scenarioWith } from '../assess/attempts.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const scenarioFile = (id: string) => join(root, 'scenarios', `${id}.json`);
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'slot-and-riser-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}
const keyOf = (id: string) => JSON.parse(key([scenarioFile(id)]).out.join('\n')) as AnswerKey;

/** Files that are wrong in the ways files are, each with the one sentence it must get. */
const wrongFiles = (): [string, string, RegExp][] => [
  [
    'a file that is not there',
    join(folder, 'none.json'),
    /^none\.json: Expected a file here, but there is none\.$/,
  ],
  ['a folder', folder, /: Expected a file, but this is a folder\.$/],
  ['an empty file', file('empty.json', ''), /^empty\.json: Expected .* file, but the file is empty\.$/],
  [
    'no JSON',
    file('prose.json', 'Dear Sir'),
    /^prose\.json: line 1, column 1: This is not JSON: expected a value/,
  ],
  ['cut off', file('cut.json', '{"format": "slot'), /^cut\.json: line 1, column \d+: The file ends too soon/],
  [
    'something else',
    file('else.json', [1, 2]),
    /^else\.json: Expected an object with format .*, but a list of 2 came\.$/,
  ],
  [
    'another version',
    file('v9.json', { format: 'slot-and-riser/scenario', version: 9 }),
    /^v9\.json: (version|format): Expected /,
  ],
  [
    '50 MB',
    file('large.json', ' '.repeat(50_000_000)),
    /^large\.json: Expected .* of at most .* MB, but 50\.0 MB came\.$/,
  ],
];

describe.each([
  ['key', key],
  ['replay', replayFile],
  ['validate', validate],
] as [string, (args: readonly string[]) => Answer | Promise<Answer>][])(
  '%s, given a wrong file',
  (_, command) => {
    it('says one clear sentence and fails', async () => {
      for (const [, path, sentence] of wrongFiles()) {
        const { out, err, code } = await command([path]);
        expect([...out, ...err]).toEqual([expect.stringMatching(sentence)]);
        expect(code).toBe(1);
      }
    });
    it('and given none, says how it is used', async () => {
      expect(await command([])).toMatchObject({
        code: 2,
        err: [expect.stringMatching(/^Usage: npm run -s /)],
      });
    });
  },
);

describe('key', () => {
  it('prints what each test shows, a figure per bar', () => {
    const answer = keyOf('q-91d2');
    expect(Object.keys(answer)).toEqual([
      'scenario',
      'part',
      'mains',
      'neighbour_A',
      'spaced',
      'lamp',
      'strip',
      'growler',
    ]);
    expect(answer).toMatchObject({ scenario: 'q-91d2', part: 'wave-23', mains: '230V50Hz' });
    expect(answer.neighbour_A).toHaveLength(23);
    expect(answer.spaced.reading_A).toHaveLength(23);
    expect(answer.lamp.map(({ bar }) => bar)).toEqual(Array.from({ length: 23 }, (_, bar) => bar));
    expect(Object.keys(answer.strip[0]!)).toEqual(['strip_deg', 'rotation_deg', 'pull_N']);
  });
  it('prints what a bench of its own shows: the same figures lamp, tester and millivoltmeter give in a session', () => {
    const frame = { parts: ['fieldFrame'], fieldFrame: 'field-two-branches' } as const;
    const tests = ['fieldContinuity', 'fieldInsulation', 'megohm', 'millivolt'] as const;
    const faults: readonly FieldFrameFault[] = [
      { kind: 'shortedTurns', coil: 3, share: 0.4, ohm: 1e-5 },
      { kind: 'weakInsulation', coil: 0, ohm: 300e3, breakdownV: null },
    ];
    const scenario = scenarioWith([], { ...frame, tests }, { fieldFrame: { faults } });
    const answer = answerKey(scenario, library).field_frame!;
    const { notes } = expertAttempt(scenario);
    const lit = (from: string) => answer.lamp.filter((one) => one.from === from).map((one) => one.lit);
    expect(notes.continuity.map(({ lamp }) => lamp === 'lit')).toEqual(lit('field:terminal'));
    expect(notes.fieldInsulation.map(({ lamp }) => lamp === 'lit')).toEqual(lit('field:case'));
    expect(notes.drops.map(({ millivolts }) => millivolts)).toEqual(answer.drop_mV.map(({ mV }) => mV));
    expect(notes.megohms.map(({ megohms }) => megohms)).toEqual(answer.megohms.map((one) => one[250]));
  });
  it('tells an open branch that touching brushes hide, and a rivet that makes when leant on', () => {
    const open = keyOf('q-17c4').field_frame!.lamp.filter(({ from }) => from === 'field:terminal');
    expect(open.map(({ lit }) => lit)).toEqual([false, true]);
    expect(open.every((one) => one.lit_brushes_touching)).toBe(true);
    const moved = keyOf('q-7e03').brush_plate!.lamp.filter((one) => one.lit !== one.lit_leant_on);
    expect(moved).toEqual([{ holder: 'plate:insulated1', lit: false, lit_leant_on: true }]);
  });
  it('adds the rail, the gauges and the bench where the card or the bench has them', () => {
    expect(keyOf('q-d8f1').armature_megohms!.every((one) => Number(one[250]) < 1)).toBe(true);
    const drops = keyOf('q-de40').armature_drop_mV!.map(Number);
    expect(drops.indexOf(Math.min(...drops))).toBe(6);
    const { reads, limits } = keyOf('q-d2b8').gauges!;
    expect(reads.undercutMm).toBeLessThan(limits.undercutMm);
    expect(keyOf('q-45f8').bench).toEqual([{ kind: 'blownLamp' }]);
  });
  it('drops out at a riser off its bar and nowhere else', () => {
    const { neighbour_A: amps } = keyOf('q-91d2');
    expect(amps.flatMap((a, bar) => (a < 0.5 * amps[0]! ? [bar] : []))).toEqual([13, 14]);
  });
  it('is even and dark on a sound armature, whose empty cradle draws several times its current', () => {
    const { neighbour_A: amps, lamp, strip, growler } = keyOf('q-4c7f');
    expect(Math.max(...amps) / Math.min(...amps)).toBeLessThan(1 + 1e-9);
    expect(lamp.some(({ lit }) => lit)).toBe(false);
    expect(Math.max(...strip.map(({ pull_N }) => pull_N))).toBeLessThan(0.05);
    expect(growler.empty_current_A / growler.current_A).toBeGreaterThan(2.5);
  });
  it('lights at every bar of a grounded armature and pulls the strip at a bridge', () => {
    expect(keyOf('q-e3b9').lamp.every(({ lit }) => lit)).toBe(true);
    expect(Math.max(...keyOf('q-d053').strip.map(({ pull_N }) => pull_N))).toBeGreaterThan(0.5);
  });
});

describe('replay', () => {
  let attempt: Attempt;
  beforeAll(() => {
    attempt = expertAttempt(scenarioWith([{ kind: 'openCoil', coil: 9 }])).attempt;
  });
  it('prints the marks and that it agreed', async () => {
    const { out, err, code } = await replayFile([file('good.json', attempt)]);
    expect({ err, code, last: out.at(-1) }).toEqual({
      err: [],
      code: 0,
      last: 'The replay agreed with the record.',
    });
    expect(out).toContainEqual(expect.stringMatching(/^Marks: (\d+) of \1\./));
    expect(out).toContainEqual(
      expect.stringMatching(/15 of 15 {2}Condition named: Right: open coil\. \[\d+\]$/),
    );
  });
  it('names the first place where the record was altered, and fails', async () => {
    const entries = attempt.entries.map((entry) =>
      entry.n === 200 ? { ...entry, before: { ...entry.before, lamp: { glow: 5 } } } : entry,
    );
    const { err, code } = await replayFile([file('altered.json', { ...attempt, entries })]);
    expect(code).toBe(1);
    expect(err).toEqual([
      expect.stringMatching(
        /^The replay does not agree with the record: at entry 200, before\.lamp\.glow is 5 in the record, but the replay came to 0\.$/,
      ),
    ]);
  });
  it('says what stopped an attempt', async () => {
    const at = attempt.entries.findIndex(
      ({ action }) => action.type === 'selector.turn' && action.to === 'high',
    );
    const log = attempt.entries.slice(0, at + 1);
    const lift = { ...log[at]!, n: at + 1, atMs: log[at]!.atMs + 500, action: { type: 'armature.lift' } };
    const { out } = await replayFile([
      file('stopped.json', { ...attempt, entries: [...log, lift], endMs: lift.atMs }),
    ]);
    expect(out).toContainEqual(
      expect.stringMatching(/^Stopped at entry \d+, so the outcome is not yet: The armature was lifted out/),
    );
  });
});

describe('on the command line', () => {
  const run = (command: string, ...args: string[]) =>
    spawnSync('npm', ['run', '-s', command, '--', ...args], { cwd: root, encoding: 'utf8' });
  it('key prints JSON and nothing else', () => {
    const out = execFileSync('npm', ['run', '-s', 'key', '--', 'scenarios/q-4c7f.json'], {
      cwd: root,
      encoding: 'utf8',
    });
    expect(JSON.parse(out)).toMatchObject({ scenario: 'q-4c7f' });
  });
  it('validate gives a line per file and fails when one is wrong', () => {
    const { stdout, status } = run(
      'validate',
      'scenarios/q-4c7f.json',
      'scenarios/q-91d2.json',
      'package.json',
    );
    expect(status).toBe(1);
    expect(stdout.trim().split('\n')).toEqual([
      'q-4c7f.json: in order',
      'q-91d2.json: in order',
      expect.stringMatching(
        /^package\.json: format: Expected "slot-and-riser\/scenario", but nothing came\.$/,
      ),
    ]);
  });
  it('replay fails with a sentence, never a stack trace', () => {
    const { stdout, stderr, status } = run('replay', 'scenarios/q-4c7f.json');
    expect(status).toBe(1);
    expect(stdout).toBe('');
    expect(stderr.trim()).toMatch(/^q-4c7f\.json: format: Expected "slot-and-riser\/attempt", .* came\.$/);
  });
});
