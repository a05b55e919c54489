import type { Action } from '../../../../bench/action.ts';
import type { CommutatorGeometry } from '../../../../bench/geometry.ts';
import type { Observation } from '../../../../bench/observation.ts';
import type { Job } from '../../../../scenario/public/job.ts';
import type { Vocabulary } from '../../../shared/words.ts';

/** What every group of the panel works with. */
export interface GroupProps {
  readonly job: Job;
  readonly seen: Observation;
  readonly geometry: CommutatorGeometry;
  readonly vocabulary: Vocabulary;
  /** Does an act. @returns whether it went through */
  readonly send: (action: Action) => boolean;
}
