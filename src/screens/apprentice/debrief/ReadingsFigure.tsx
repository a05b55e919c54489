import { capital, countWords, spoken, term, testWords, type Vocabulary } from '../../shared/words.ts';
import type { PassReadings } from '../../shell.ts';
import { ReadingsChart } from './ReadingsChart.tsx';

export interface ReadingsFigureProps {
  readonly pass: PassReadings;
  /** True when bars are counted from the learner's chalk. */
  readonly counted: boolean;
  readonly vocabulary: Vocabulary;
}

/** One ammeter pass bar by bar: what was read, what a sound part shows, what this part shows; as picture and as table. */
export function ReadingsFigure({ pass, counted, vocabulary }: ReadingsFigureProps) {
  const read = pass.own.filter((reading) => reading !== null).length;
  return (
    <figure class="readings">
      <figcaption>
        <h2>{testWords(pass.test, vocabulary)}: the readings</h2>
        <p>
          {capital(spoken(pass.caption, vocabulary))}. You read {read} of {pass.truth.length}{' '}
          {term('bars', vocabulary)}
          {counted
            ? '; they are counted from your chalk.'
            : '; nothing was chalked, so they carry the bench’s own numbers.'}
        </p>
      </figcaption>
      <ReadingsChart pass={pass} counted={counted} vocabulary={vocabulary} />
      <details class="readings-twin">
        <summary>The same as a table</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">{counted ? 'From chalk' : 'Bench no.'}</th>
              <th scope="col">You read, A</th>
              <th scope="col">Sound part, A</th>
              <th scope="col">This part, A</th>
            </tr>
          </thead>
          <tbody>
            {pass.truth.map((truth, bar) => (
              <tr key={countWords(bar)}>
                <th scope="row">{counted ? countWords(bar) : bar}</th>
                <td>{ampere(pass.own[bar])}</td>
                <td>{ampere(pass.sound[bar])}</td>
                <td>{ampere(truth)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
}

function ampere(value: number | null | undefined): string {
  return value === null || value === undefined ? 'not read' : value.toFixed(1);
}
