import { useEffect, useState } from 'preact/hooks';
import type { Observation } from '../../../bench/observation.ts';
import { humWords, sayObservation } from '../../../bench/words.ts';
import type { Job } from '../../../scenario/public/job.ts';
import { Button } from '../../shared/Button.tsx';
import { spoken, type Vocabulary } from '../../shared/words.ts';
import type { BenchViewProps, Eye } from './BenchView.tsx';
import { Spoken } from './Spoken.tsx';

/** What eyes and fingers get from the bench, one sentence per thing; what ears get stands in the caption. */
export function seenWords(job: Job, seen: Observation, vocabulary: Vocabulary): readonly string[] {
  const humming = humWords(seen.hum);
  return sayObservation(job.armature, seen)
    .filter((line) => line !== humming)
    .map((line) => spoken(line, vocabulary));
}

/** The caption under the picture, and a voice for whoever cannot see it. */
export function Senses(props: BenchViewProps & { readonly eye: Eye }) {
  const { seen } = props.bench;
  const heard = useCaption(props);
  const lines = seenWords(props.job, seen, props.vocabulary);
  return (
    <div class="bench-senses">
      <p class="sense-heard">
        <span class="sense-mark" aria-hidden="true">
          ♪{' '}
        </span>
        <span class="visually-hidden">Heard: </span>
        {[...new Set([heard, humWords(seen.hum)])].filter((line) => line !== '').join(' ') || 'Quiet.'}
      </p>
      <Button kind="quiet" keyHint="Z" onPress={props.eye.turn}>
        {props.eye.closer ? 'Whole bench' : 'Look closer'}
      </Button>
      <Button keyHint="N" onPress={props.onNote}>
        Write this down
      </Button>
      <Spoken lines={heard === '' ? lines : [...lines, heard]} settled={seen.needle.atRest} />
    </div>
  );
}

/** How long a passing sound stays in the caption, ms. */
const CAPTION_MS = 4000;

/** The last sound that was told, until it is old. */
function useCaption({ captions }: BenchViewProps): string {
  const [heard, setHeard] = useState('');
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | null = null;
    const stop = captions((line) => {
      setHeard(`${line}.`);
      if (timer !== null) clearTimeout(timer);
      timer = setTimeout(() => setHeard(''), CAPTION_MS);
    });
    return () => {
      stop();
      if (timer !== null) clearTimeout(timer);
    };
  }, [captions]);
  return heard;
}
