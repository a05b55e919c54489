import type { SheetLine } from '../../../bench/paper.ts';
import { lineWhere } from '../../shared/lineWords.ts';
import { differs, resultWords, unlike } from '../../shared/toldWords.ts';
import { testWords, type Vocabulary } from '../../shared/words.ts';
import type { ToldByTest } from '../../shell.ts';

export interface ToldTableProps {
  readonly told: readonly ToldByTest[];
  readonly vocabulary: Vocabulary;
}

/** Lamp, insulation, drop and gauges: what was written, what a sound part shows, what this one shows before and after work. */
export function ToldTable({ told, vocabulary }: ToldTableProps) {
  if (told.length === 0) return null;
  const worked = told.some(({ afterWork }) => afterWork !== undefined);
  return (
    <section aria-labelledby="told-title">
      <h2 id="told-title">What the other tests tell</h2>
      <div class="table-scroll">
        <table class="told">
          <caption>Beside a sound part, each test done as it should be on a bench in good order</caption>
          <thead>
            <tr>
              <th scope="col">Test</th>
              <th scope="col">Where</th>
              <th scope="col">You wrote</th>
              <th scope="col">Sound part</th>
              <th scope="col">This part, as it came in</th>
              {worked ? <th scope="col">After your work</th> : null}
            </tr>
          </thead>
          <tbody>
            {told.map((one, nth) => (
              <Row key={nth} one={one} before={told[nth - 1]} worked={worked} vocabulary={vocabulary} />
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

interface RowProps {
  readonly one: ToldByTest;
  readonly before: ToldByTest | undefined;
  readonly worked: boolean;
  readonly vocabulary: Vocabulary;
}

function Row({ one, before, worked, vocabulary }: RowProps) {
  const { about, own, sound, cameIn, afterWork } = one;
  const name = about.test === before?.about.test ? '' : testWords(about.test, vocabulary);
  const shows = (result: Partial<SheetLine>) => resultWords({ ...about, ...result });
  const cured = afterWork !== undefined && unlike(cameIn, afterWork);
  return (
    <tr>
      <th scope="row">
        {name === '' ? <span class="visually-hidden">{testWords(about.test, vocabulary)}</span> : name}
      </th>
      <td class="told-where">{lineWhere(about, vocabulary)}</td>
      <td data-head="You wrote">{own.map(resultWords).join(', then ') || 'not written'}</td>
      <td data-head="Sound part">{shows(sound)}</td>
      <td data-head="As it came in" class={differs(sound, cameIn) ? 'told-differs' : undefined}>
        {differs(sound, cameIn) ? <span aria-hidden="true">≠ </span> : null}
        {shows(cameIn)}
      </td>
      {worked ? (
        <td data-head="After your work">{cured ? <strong>{shows(afterWork)}</strong> : 'the same'}</td>
      ) : null}
    </tr>
  );
}
