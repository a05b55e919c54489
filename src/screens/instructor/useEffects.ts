import { useEffect, useState } from 'preact/hooks';
import type { Parsed, Scenario } from '../../scenario/scenario.ts';
import type { Effects, InstructorDesk } from './desk.ts';

/** Pause after the last change before the part is solved again, ms. */
const PAUSE_MS = 200;

/** What the tests show of a job as it is being changed; the last answer stays in sight until the next has come. */
export function useEffects(
  desk: InstructorDesk,
  scenario: Scenario,
): { readonly answer: Parsed<Effects> | null; readonly stale: boolean } {
  const [answer, setAnswer] = useState<Parsed<Effects> | null>(null);
  const [solved, setSolved] = useState('');
  const { public: shown, hidden } = scenario;
  const key = JSON.stringify([
    shown.parts,
    shown.armature,
    shown.fieldFrame,
    shown.brushPlate,
    shown.mains,
    shown.tests,
    shown.limits,
    hidden,
  ]);
  useEffect(() => {
    let wanted = true;
    const pause = setTimeout(() => {
      void desk.effects(scenario).then((got) => {
        if (!wanted) return;
        setAnswer(got);
        setSolved(key);
      });
    }, PAUSE_MS);
    return () => {
      wanted = false;
      clearTimeout(pause);
    };
  }, [desk, key]);
  return { answer, stale: solved !== key };
}
