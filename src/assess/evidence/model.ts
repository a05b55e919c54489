import type { TestKind } from '../../bench/paper.ts';
import type { MainsId } from '../../engine/drive.ts';
import type { GrowlerDesign } from '../../engine/growler.ts';
import { LEAST_OHM } from '../../engine/instruments/insulationTester.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { Dictionary } from './dictionary.ts';
import { DropTables } from './drops.ts';
import { type InsulationSuspect, listInsulation } from './insulation.ts';
import { familyOf, type JobFamily, PRIORS, type Priors } from './priors.ts';
import { listSuspects, type Suspects } from './suspects.ts';

/**
 * Everything the evidence engine may know: the type of part, the supply, the tests the job allows and what such jobs
 * usually bring. The fault hidden in a scenario is no part of it.
 */
export interface EvidenceModel {
  readonly design: ArmatureDesign;
  readonly tests: readonly TestKind[];
  readonly priors: Priors;
  readonly suspects: Suspects;
  readonly insulation: readonly InsulationSuspect[];
  readonly dictionary: Dictionary;
  readonly drops: DropTables;
}

export interface EvidenceInput {
  readonly design: ArmatureDesign;
  readonly mains: MainsId;
  readonly tests: readonly TestKind[];
  /** Left out: told from the winding. */
  readonly family?: JobFamily;
  /** What is believed otherwise than of the family's parts; for trials of the engine itself. */
  readonly believed?: Partial<Priors>;
  readonly growler?: GrowlerDesign;
  /** Least reading of the insulation tester that the card allows, megohms; left out: the usual. */
  readonly leastMohm?: number;
}

/** Costs some tens of milliseconds and keeps what it works out: make one for a part type and supply. */
export function createEvidence(input: EvidenceInput): EvidenceModel {
  const { design, mains, tests, family, believed, growler, leastMohm = LEAST_OHM / 1e6 } = input;
  const priors = { ...PRIORS[family ?? familyOf(design)], ...believed };
  const suspects = listSuspects(design, priors);
  const dictionary = new Dictionary(suspects, mains, growler);
  const insulation = listInsulation(
    design,
    dictionary.mains,
    priors,
    tests.includes('megohm') ? leastMohm : null,
  );
  const drops = new DropTables(dictionary);
  return { design, tests, priors, suspects, insulation, dictionary, drops };
}
