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
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import type { PartLibrary, Scenario } from '../../scenario/scenario.ts';
import { type Answer, refused, withOneFile } from './command.ts';
import { issueLines, readScenario } from './files.ts';

const USAGE = 'Usage: npm run -s key -- FILE.json (one scenario file)';

/** What every test of the bench shows on a part, contact scatter off, as the `key` command prints it. */
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
