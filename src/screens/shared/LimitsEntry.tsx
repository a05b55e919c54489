import type { Job } from '../../scenario/public/job.ts';
import { limitWords } from './limitWords.ts';
import { capital, spoken, type Vocabulary } from './words.ts';

/** The card's limits as an entry of its list; nothing where the job goes by none. */
export function LimitsEntry({ job, vocabulary }: { readonly job: Job; readonly vocabulary: Vocabulary }) {
  const limits = limitWords(job);
  if (limits.length === 0) return null;
  return (
    <>
      <dt>Limits</dt>
      <dd>{spoken(capital(limits.join('; ')), vocabulary)}</dd>
    </>
  );
}
