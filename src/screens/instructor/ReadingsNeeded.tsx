import { useEffect, useRef, useState } from 'preact/hooks';
import type { Scenario } from '../../scenario/scenario.ts';
import { Button } from '../shared/Button.tsx';
import type { InstructorDesk } from './desk.ts';

export interface ReadingsNeededProps {
  readonly desk: InstructorDesk;
  readonly scenario: Scenario;
}

type Answer = 'none' | 'counting' | 'failed' | { readonly count: number | null };

/** How hard the armature is, by the readings it takes to prove what is the matter; counted when asked for, it takes a while. */
export function ReadingsNeeded({ desk, scenario }: ReadingsNeededProps) {
  const [answer, setAnswer] = useState<Answer>('none');
  const latest = useRef(scenario);
  latest.current = scenario;
  // What was counted is of the job as it stood.
  useEffect(() => setAnswer('none'), [scenario]);
  const count = async () => {
    setAnswer('counting');
    const got = await desk.readingsToProve(scenario);
    if (latest.current === scenario) setAnswer(got.ok ? { count: got.value } : 'failed');
  };
  return (
    <div class="in-readings">
      <Button onPress={() => void count()}>Count the readings that prove it</Button>
      <p role="status">{answerWords(answer)}</p>
    </div>
  );
}

function answerWords(answer: Answer): string {
  if (answer === 'none') return '';
  if (answer === 'counting') return 'Counting…';
  if (answer === 'failed') return 'The job as it stands cannot be solved: see what is wrong with it.';
  const { count } = answer;
  if (count === null)
    return 'Not to be proven by the tests the card allows, however well the readings are chosen: the best verdict stays a likely one.';
  const readings = count === 1 ? 'one reading' : `${count} readings`;
  return `At the least ${readings}, each the one that tells most, prove what is the matter with the armature. Apprentices need more.`;
}
