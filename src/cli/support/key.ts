import { lampLit, nominalLoopOhm, nominalSetup } from '../../assess/diagnosis/shown.ts';
import {
  groundPaths,
  growlerCurrents,
  neighbourReadings,
  spacedReadings,
  stripPulls,
  type TestSetup,
} from '../../engine/answers.ts';
import { createArmatureSolver } from '../../engine/armatureBench.ts';
import { MAINS } from '../../engine/drive.ts';
import { armatureResistance } from '../../engine/instruments/armatureDc.ts';
import { neighbourDrops } from '../../engine/instruments/millivoltDrop.ts';
import { ROOM_C } from '../../engine/instruments/thermal.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import { JOB_PLATES } from '../../engine/parts/brushPlate.ts';
import { JOB_FRAMES } from '../../engine/parts/fieldFrameDesigns.ts';
import { freshWear, type Wear } from '../../engine/parts/wear.ts';
import type { BenchFault } from '../../scenario/hidden/benchFault.ts';
import type { Limits } from '../../scenario/public/job.ts';
import { limitsOf } from '../../scenario/public/limits.ts';
import type { PartLibrary, Scenario } from '../../scenario/scenario.ts';
import { type Answer, refused, withOneFile } from './command.ts';
import { issueLines, readScenario } from './files.ts';
import {
  dropShown,
  type FieldAnswers,
  fieldAnswers,
  megohmsOf,
  type PlateAnswers,
  plateAnswers,
} from './matAnswers.ts';

const USAGE = 'Usage: npm run -s key -- FILE.json (one scenario file)';

/**
 * What every test of the bench shows on the parts of a job, contact scatter off, as the `key` command prints it. The
 * armature is the one in the cradle, be it to be judged or the workshop's own.
 */
export interface AnswerKey {
  readonly scenario: string;
  readonly part: string;
  readonly mains: string;
  readonly neighbour_A: readonly number[];
  readonly spaced: { readonly spacing_bars: number; readonly reading_A: readonly number[] };
  readonly lamp: readonly { readonly bar: number; readonly lit: boolean }[];
  readonly strip: readonly {
    readonly strip_deg: number;
    readonly rotation_deg: number;
    readonly pull_N: number;
  }[];
  readonly growler: { readonly current_A: number; readonly empty_current_A: number };
  /** Insulation tester from the core to each bar, where the card asks for it; megohms at each test voltage. */
  readonly armature_megohms?: ReturnType<typeof megohmsOf>[];
  /** Millivolt drop from each bar to the next with the feed on the same two, where the card asks for it. */
  readonly armature_drop_mV?: readonly ReturnType<typeof dropShown>[];
  readonly field_frame?: { readonly type: string } & FieldAnswers;
  readonly brush_plate?: { readonly type: string } & PlateAnswers;
  /** What the gauges read and the card's limits, mm, where the card asks for them. */
  readonly gauges?: { readonly reads: Wear; readonly limits: Limits };
  /** What is the matter with the bench itself. */
  readonly bench?: readonly BenchFault[];
}

/** Nine digits: more than any instrument, fewer than rounding differs in between machines. */
const figure = (value: number) => Number(value.toPrecision(9)) + 0;

function setupOf(scenario: Scenario): TestSetup {
  const faults: readonly ArmatureFault[] = scenario.hidden.armature.faults;
  return { ...nominalSetup(MAINS[scenario.public.mains]), loopOhm: nominalLoopOhm(faults) };
}

export function answerKey(scenario: Scenario, library: PartLibrary): AnswerKey {
  const solver = createArmatureSolver(library.get(scenario.public.armature)!);
  const faults = scenario.hidden.armature.faults;
  const setup = setupOf(scenario);
  const spaced = spacedReadings(solver, faults, setup);
  const growler = growlerCurrents(solver, faults, setup);
  return {
    scenario: scenario.public.id,
    part: solver.design.id,
    mains: scenario.public.mains,
    neighbour_A: neighbourReadings(solver, faults, setup).map(figure),
    spaced: { spacing_bars: spaced.spacingBars, reading_A: spaced.readingA.map(figure) },
    lamp: groundPaths(solver, faults, setup.mains).map((ohm, bar) => ({
      bar,
      lit: lampLit(ohm, setup.mains),
    })),
    strip: stripPulls(solver, faults, setup).map(({ stripDeg, rotationDeg, pullN }) => ({
      strip_deg: figure(stripDeg),
      rotation_deg: figure(rotationDeg),
      pull_N: figure(pullN),
    })),
    growler: { current_A: figure(growler.currentA), empty_current_A: figure(growler.emptyCurrentA) },
    ...railAnswers(scenario, solver.design),
    ...matKey(scenario),
    ...(scenario.hidden.bench === undefined ? {} : { bench: scenario.hidden.bench.faults }),
  };
}

/** The tools of the rail on the armature, as far as the card asks for them. */
function railAnswers(
  { public: shown, hidden }: Scenario,
  design: ArmatureDesign,
): Pick<AnswerKey, 'armature_megohms' | 'armature_drop_mV' | 'gauges'> {
  const { faults } = hidden.armature;
  const about = shown.parts.includes('armature');
  const bars = Array.from({ length: design.bars }, (_, bar) => bar);
  const leak = (bar: number) => (peakV: number) =>
    armatureResistance(design, faults, bar, 'core', { peakV, tempC: ROOM_C });
  const drops = () => neighbourDrops(design, faults).map(dropShown);
  const reads = { ...freshWear(design.commutatorRadius), ...hidden.wear };
  return {
    ...(about && shown.tests.includes('megohm')
      ? { armature_megohms: bars.map((bar) => megohmsOf(leak(bar))) }
      : {}),
    ...(about && shown.tests.includes('millivolt') ? { armature_drop_mV: drops() } : {}),
    ...(shown.tests.includes('gauges') ? { gauges: { reads, limits: limitsOf(shown, design) } } : {}),
  };
}

/** Field frame and brush plate, where the job has them. */
function matKey({ public: shown, hidden }: Scenario): Pick<AnswerKey, 'field_frame' | 'brush_plate'> {
  const frame = JOB_FRAMES.get(shown.fieldFrame ?? '');
  const plate = JOB_PLATES.get(shown.brushPlate ?? '');
  const fieldFaults = hidden.fieldFrame?.faults ?? [];
  const plateFaults = hidden.brushPlate?.faults ?? [];
  return {
    ...(frame === undefined
      ? {}
      : { field_frame: { type: frame.id, ...fieldAnswers(frame, fieldFaults, shown.mains) } }),
    ...(plate === undefined
      ? {}
      : { brush_plate: { type: plate.id, ...plateAnswers(plate, plateFaults, shown.mains) } }),
  };
}

/** Prints the answer key of one scenario as JSON. */
export function key(args: readonly string[]): Answer {
  return withOneFile(args, USAGE, (file, library) => {
    const scenario = readScenario(file, library);
    if (!scenario.ok) return refused(issueLines(file, scenario.issues));
    return { out: [JSON.stringify(answerKey(scenario.value, library), null, 2)], err: [], code: 0 };
  });
}
