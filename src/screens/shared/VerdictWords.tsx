import type { Verdict } from '../../bench/paper.ts';
import { conditionWords, dispositionWords, foundPlaceWords, sureWords, type Vocabulary } from './words.ts';

export interface VerdictWordsProps {
  readonly verdict: Verdict;
  readonly bars: number;
  readonly vocabulary: Vocabulary;
}

/** A verdict as it was written, for reading. */
export function VerdictWords({ verdict, bars, vocabulary }: VerdictWordsProps) {
  const percent = Math.round(verdict.sure * 100);
  return (
    <>
      <ul>
        {verdict.findings.map(({ condition, place }) => {
          const where = place.kind === 'somewhere' ? '' : `, ${foundPlaceWords(place, bars, vocabulary)}`;
          const words = `${conditionWords(condition, verdict.part, vocabulary)}${where}`;
          return <li key={words}>{words}</li>;
        })}
      </ul>
      <p>
        {dispositionWords(verdict.disposition)}. How sure: {percent} %, {sureWords(verdict.sure)}.
      </p>
      {verdict.because ? <blockquote>{verdict.because}</blockquote> : null}
    </>
  );
}
