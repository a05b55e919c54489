import type { EvidenceStory } from '../../../../assess/evidence/story/shape.ts';
import { percentWords } from '../../../../assess/words.ts';
import { type Calling, nextWords, readingWords } from './evidenceWords.ts';

export interface NextReadingProps {
  readonly story: EvidenceStory;
  readonly calling: Calling;
  readonly onShow: (entries: readonly number[]) => void;
}

/** The reading that told most, and one thing to do next. */
export function NextReading({ story: { next, steps }, calling, onShow }: NextReadingProps) {
  const best = steps.reduce<(typeof steps)[number] | null>(
    (most, step) => (step.settled > (most?.settled ?? 0) ? step : most),
    null,
  );
  return (
    <div class="next-reading">
      <h3>One thing to do next</h3>
      {next === null ? (
        <p>Nothing at the bench: no single reading that this job allows would settle anything more.</p>
      ) : (
        <p>
          <strong>{nextWords(next, calling)}.</strong> Of all readings you could still take, that one is
          expected to tell most: about {percentWords(next.share)} of the doubt that is left.
        </p>
      )}
      {best === null ? null : (
        <p>
          Of those you took, this one settled most: {readingWords(best, calling)}.{' '}
          <button type="button" class="entry-link no-print" onClick={() => onShow([best.reading.entry])}>
            show the moment
          </button>
        </p>
      )}
    </div>
  );
}
