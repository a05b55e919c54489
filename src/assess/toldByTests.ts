import type { Attempt } from '../attempt/entry.ts';
import { createSession, designOf, type Session } from '../attempt/session.ts';
import { type Action, BRUSHES, GAUGES } from '../bench/action.ts';
import { isMatTest, MAT_TESTS, type MatTest } from '../bench/matTests.ts';
import type { Observation } from '../bench/observation.ts';
import type { SheetLine } from '../bench/paper.ts';
import { type LeadId, type LeadSet, type Place, partOf } from '../bench/places.ts';
import { isMatPart } from '../bench/state.ts';
import { partOfBrush } from '../bench/touched.ts';
import type { PartLibrary, Scenario } from '../scenario/scenario.ts';
import { type LampShows, lampShows } from './evidence/reading.ts';

/**
 * What the tests that are not read on the ammeter tell of a part: each is done by a careful hand on a bench of its own,
 * on a sound part, on the part as it came in, and on the part as the learner's own remedies left it.
 */
export interface Told {
  /** The line as it would be written, without its result. */
  readonly about: SheetLine;
  readonly sound: Result;
  readonly cameIn: Result;
  /** Left out when nothing was done to a part. */
  readonly afterWork?: Result;
}

export type Result = Pick<
  SheetLine,
  'lamp' | 'megohms' | 'testVolt' | 'millivolts' | 'millimetres' | 'remark'
>;

/** @param attempt  of the entries only what was done to a part counts */
export function toldByTests(
  { scenario, entries }: Pick<Attempt, 'scenario' | 'entries'>,
  library: PartLibrary,
): readonly Told[] {
  const work = entries.flatMap(({ action, outcome }) =>
    action.type === 'remedy.do' && outcome.kind === 'done' ? [action] : [],
  );
  const about = linesOf(scenario);
  if (about.length === 0) return [];
  const read = (job: Scenario, first: readonly Action[]) => {
    const hand = new CarefulHand(job, library).works(first);
    return about.map((line) => hand.reads(line));
  };
  const sound = read(soundJob(scenario), []);
  const cameIn = read(goodBench(scenario), []);
  const afterWork = work.length > 0 ? read(goodBench(scenario), work) : null;
  return about.map((line, nth) => ({
    about: line,
    sound: sound[nth]!,
    cameIn: cameIn[nth]!,
    ...(afterWork ? { afterWork: afterWork[nth]! } : {}),
  }));
}

/** The same job on a bench with nothing the matter with it. */
function goodBench(scenario: Scenario): Scenario {
  const { bench: _, ...hidden } = scenario.hidden;
  return { ...scenario, hidden };
}

function soundJob(scenario: Scenario): Scenario {
  const { startRotationDeg, seed, supplyReference } = scenario.hidden;
  const hidden = { armature: { faults: [] }, startRotationDeg, seed, supplyReference };
  return { ...goodBench(scenario), hidden };
}

/** The lines such tests fill on the card's sheet, in the order of the card. */
function linesOf({ public: { tests, parts } }: Scenario): readonly SheetLine[] {
  return tests.flatMap((test): SheetLine[] => {
    if (isMatTest(test)) {
      const { part, to } = MAT_TESTS[test];
      return to.map((at) => ({ test, part, count: null, at }));
    }
    if (test === 'megohm') return megohmLines(parts);
    if (test === 'millivolt' && parts.includes('fieldFrame')) {
      const { to } = MAT_TESTS.fieldContinuity;
      return to.map((at) => ({ test, part: 'fieldFrame', count: null, at }));
    }
    return test === 'gauges' ? gaugeLines(parts) : [];
  });
}

type Parts = Scenario['public']['parts'];

function megohmLines(parts: Parts): SheetLine[] {
  const line = { test: 'megohm', count: null } as const;
  return [
    ...(parts.includes('armature') ? [line] : []),
    ...(parts.includes('fieldFrame') ? [{ ...line, part: 'fieldFrame' as const }] : []),
    ...(parts.includes('brushPlate')
      ? MAT_TESTS.plateInsulation.to.map((at) => ({ ...line, part: 'brushPlate' as const, at }))
      : []),
  ];
}

function gaugeLines(parts: Parts): SheetLine[] {
  const line = { test: 'gauges', count: null } as const;
  const commutator = GAUGES.filter((gauge) => gauge !== 'brushLength' && parts.includes('armature'));
  const brushes = BRUSHES.filter((brush) => parts.includes(partOfBrush(brush)));
  return [
    ...commutator.map((gauge) => ({ ...line, gauge })),
    ...brushes.map((brush) => ({ ...line, part: partOfBrush(brush), gauge: 'brushLength' as const, brush })),
  ];
}

/** Time for one act, for a filament to light, for one to go dark, and for the tester's display, ms. */
const ACT_MS = 400;
const LIGHT_MS = 1000;
const DARK_MS = 2600;
const TESTER_MS = 6000;

/** Someone who does each test as it should be done and puts everything away between two. */
class CarefulHand {
  private readonly session: Session;
  private atMs = 0;

  constructor(scenario: Scenario, library: PartLibrary) {
    this.session = createSession({ scenario, design: designOf(scenario, library), mode: 'practice' });
  }

  works(acts: readonly Action[]): this {
    if (acts.some(({ type }) => type === 'remedy.do')) this.front('brushPlate');
    return this.does(...acts);
  }

  reads(line: SheetLine): Result {
    if (isMatTest(line.test)) return this.lights(line.test, line.at!);
    this.clears();
    if (line.gauge !== undefined) return this.measures(line);
    if (line.test === 'megohm') return this.testsInsulation(line);
    return this.readsDrop(line);
  }

  private get sees(): Observation {
    return this.session.observe(this.atMs);
  }

  private does(...acts: readonly Action[]): this {
    for (const action of acts) {
      this.atMs += ACT_MS;
      this.session.act(action, this.atMs);
    }
    return this;
  }

  private waits(ms: number): this {
    this.atMs += ms;
    return this;
  }

  /** A part of the mat in front, the other put back; what the job has not is refused and changes nothing. */
  private front(part: 'fieldFrame' | 'brushPlate'): this {
    const other = part === 'fieldFrame' ? 'brushPlate' : 'fieldFrame';
    if (this.sees.mat[other] === 'forward') this.does({ type: 'part.putBack', part: other });
    if (this.sees.mat[part] === 'away') this.does({ type: 'part.takeUp', part });
    if (part === 'fieldFrame' && !this.sees.brushesApart) this.does({ type: 'brushes.part' });
    return this;
  }

  private tipsOn(set: LeadSet, one: Place, other: Place, isClipped: boolean): this {
    for (const [lead, place] of [
      [`${set}.1`, one],
      [`${set}.2`, other],
    ] as const) {
      this.does({ type: 'lead.take', lead: lead as LeadId, grip: 'handle' });
      this.does({ type: 'lead.touch', lead: lead as LeadId, place });
      if (isClipped) this.does({ type: 'lead.clamp', lead: lead as LeadId });
    }
    return this;
  }

  private hangsUp(set: LeadSet): this {
    return this.does({ type: 'lead.holster', lead: `${set}.1` }, { type: 'lead.holster', lead: `${set}.2` });
  }

  /** Bench off and armature out, as all but the lamp want it. */
  private clears(): void {
    if (this.sees.cradle === 'empty') return;
    this.does({ type: 'selector.turn', to: 'off' }, { type: 'armature.lift' });
  }

  private lights(test: MatTest, at: Place): Result {
    const { part, from } = MAT_TESTS[test];
    if (this.sees.cradle === 'empty') this.does({ type: 'armature.place' });
    this.front(part).does({ type: 'selector.turn', to: 'low' });
    this.tipsOn('lamp', from, at, false).waits(LIGHT_MS);
    const left = lampShows(this.sees.lamp.glow);
    const pressed = part === 'brushPlate' ? this.leansOn(left) : left;
    this.hangsUp('lamp');
    return pressed === left ? { lamp: left } : { lamp: left, remark: `${pressed} when leaned on` };
  }

  /** What the lamp does while its second probe is leaned on: a loose rivet makes or breaks. */
  private leansOn(left: LampShows): LampShows {
    this.does({ type: 'lead.lean', lead: 'lamp.2', on: true }).waits(left === 'dark' ? LIGHT_MS : DARK_MS);
    return lampShows(this.sees.lamp.glow);
  }

  private testsInsulation({ part = 'armature', at }: SheetLine): Result {
    if (isMatPart(part)) this.front(part);
    const [one, other]: readonly [Place, Place] =
      part === 'armature'
        ? ['shaft', 'bar:0']
        : part === 'fieldFrame'
          ? ['field:case', 'field:brush1']
          : ['plate:metal', at!];
    this.tipsOn('tester', one, other, true).does({ type: 'tester.press', on: true }).waits(TESTER_MS);
    const { megohms, over, volt } = this.sees.tester;
    this.does({ type: 'tester.press', on: false }, { type: 'tester.discharge' }).hangsUp('tester');
    return { megohms: over ? 'over' : (megohms ?? 0), testVolt: volt };
  }

  private readsDrop({ at }: SheetLine): Result {
    this.front('fieldFrame').does({ type: 'drop.feed', at: ['field:terminal', at!] });
    const { millivolts, over } = this.tipsOn('drop', 'field:terminal', at!, true).sees.drop;
    this.hangsUp('drop').does({ type: 'drop.feed', at: null });
    if (millivolts === null) return { remark: 'no drop: the feed finds no way' };
    return over ? { millivolts, remark: 'beyond the scale' } : { millivolts };
  }

  private measures({ gauge, brush }: SheetLine): Result {
    if (brush !== undefined && partOfBrush(brush) !== 'armature') {
      this.front(partOfBrush(brush) as 'fieldFrame' | 'brushPlate');
    }
    this.does({ type: 'gauge.read', gauge: gauge!, ...(brush === undefined ? {} : { brush }) });
    const { gauge: view } = this.sees;
    return view === null ? {} : { millimetres: view.mm };
  }
}

/** Whether a line the learner wrote is one of those. */
export function isAbout(line: SheetLine, about: SheetLine): boolean {
  const part = (one: SheetLine) => one.part ?? (one.at ? partOf(one.at) : 'armature') ?? 'armature';
  return (
    line.test === about.test &&
    part(line) === part(about) &&
    (about.at === undefined || line.at === about.at) &&
    line.gauge === about.gauge &&
    line.brush === about.brush
  );
}
