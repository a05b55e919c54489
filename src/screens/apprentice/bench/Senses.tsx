import { useEffect, useState } from 'preact/hooks';
import { humWords, sayObservation } from '../../../bench/words.ts';
import { Button } from '../../shared/Button.tsx';
import { spoken } from '../../shared/words.ts';
import type { BenchViewProps } from './BenchView.tsx';
import { Spoken } from './Spoken.tsx';

/** What eyes and ears get from the bench, in words: to read under the picture, and said to whoever cannot see it. */
export function Senses(props: BenchViewProps) {
  const { seen } = props.bench;
  const heard = useCaption(props);
  const humming = humWords(seen.hum);
  const say = (line: string) => spoken(line, props.vocabulary);
  const lines = sayObservation(props.job.armature, seen)
    .filter((line) => line !== humming)
    .map(say);
  return (
    <div class="bench-senses">
      <p class="sense-seen">{lines.join(' ')}</p>
      <div class="sense-side">
        <p class="sense-heard">
          <span class="sense-mark" aria-hidden="true">
            ♪{' '}
          </span>
          <span class="visually-hidden">Heard: </span>
          {[heard, humming].filter((line) => line !== '').join(' ') || 'Quiet.'}
        </p>
        <Button keyHint="N" onPress={props.onNote}>
          Write this down
        </Button>
      </div>
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
