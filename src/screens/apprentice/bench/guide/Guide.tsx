import { useRef } from 'preact/hooks';
import type { Action } from '../../../../bench/action.ts';
import { linesThatCount } from '../../../../bench/guide/guide.ts';
import { Button } from '../../../shared/Button.tsx';
import { spoken, type Vocabulary } from '../../../shared/words.ts';
import { ON_THE_PICTURE, TOOL_NAMES, toolFor } from '../twin/kit.ts';
import { keyFor } from './keyFor.ts';
import { fold, type Known, NOTHING_KNOWN } from './known.ts';
import { nextStep } from './next.ts';
import type { Situation } from './step.ts';
import './guide.css';

/** How much is said: the step with its reason and key, the step alone, or nothing until it is asked for. */
export type GuideLevel = 'full' | 'short' | 'off';

export interface GuideProps extends Omit<Situation, 'known'> {
  readonly vocabulary: Vocabulary;
  readonly level: GuideLevel;
  readonly onLevel: (level: GuideLevel) => void;
}

/** Where an act is done: in a drawer under the picture, or on the picture where that wants saying. */
function whereTo(act: Action): string | null {
  const tool = toolFor(act);
  return tool === null ? (ON_THE_PICTURE[act.type] ?? null) : `Under the picture: ${TOOL_NAMES[tool]}.`;
}

/** The next step of a guided job, with its reason. */
export function Guide(props: GuideProps) {
  const { job, seen, lines, vocabulary, level, onLevel } = props;
  const known = useRef<Known>(NOTHING_KNOWN);
  known.current = fold(known.current, seen, job.armature);
  if (level === 'off') {
    return (
      <div class="guide">
        <Button kind="quiet" onPress={() => onLevel('short')}>
          What comes next?
        </Button>
      </div>
    );
  }
  const { remedies, verdicts } = props;
  const counting = linesThatCount(lines, remedies);
  const step = nextStep({ job, seen, lines: counting, remedies, verdicts, known: known.current });
  const key = step.act ? keyFor(step.act, seen) : step.write ? 'N' : null;
  const where = step.act ? whereTo(step.act) : null;
  return (
    <section class="guide" aria-label="Next step">
      <p class="guide-say" aria-live="polite">
        <strong>Next: </strong>
        {spoken(step.say, vocabulary)} {key && level === 'full' ? <kbd class="guide-key">{key}</kbd> : null}
        {where && level === 'full' ? <span class="guide-where"> {where}</span> : null}
      </p>
      {level === 'full' ? <p class="guide-why">{spoken(step.why, vocabulary)}</p> : null}
      <div class="guide-levels">
        <Button kind="quiet" onPress={() => onLevel(level === 'full' ? 'short' : 'full')}>
          {level === 'full' ? 'Say less' : 'Why?'}
        </Button>
        <Button kind="quiet" onPress={() => onLevel('off')}>
          Let me try alone
        </Button>
      </div>
    </section>
  );
}
