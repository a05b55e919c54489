import { useState } from 'preact/hooks';
import { type Agreement, agreement, kappaWords } from '../../assess/agreement.ts';
import type { SignedRecord } from '../../records/sign.ts';
import { SelectField } from '../shared/Field.tsx';
import { useLoaded } from '../shared/useLoaded.ts';
import { Answered } from './Answered.tsx';
import type { AssessorPageProps } from './AssessorScreens.tsx';
import { assessorsOf, compare, type Pair } from './pairs.ts';

/** Two assessors on the same attempts: where they agree, and how much of that chance would have given. */
export function AgreementPage({ desk }: AssessorPageProps) {
  const records = useLoaded(() => desk.records(), [desk]);
  return (
    <main class="as-page paper" aria-labelledby="as-title">
      <h1 id="as-title">Two assessors on the same attempts</h1>
      <p>
        Records of different people over the very same attempts are laid side by side. Take in a colleague’s
        record under “Check a file”.
      </p>
      <Answered answer={records} waiting="Fetching the records…">
        {(all) => <Choice records={all} />}
      </Answered>
    </main>
  );
}

function Choice({ records }: { readonly records: readonly SignedRecord[] }) {
  const people = assessorsOf(records);
  const [first, setFirst] = useState(people[0]?.key ?? '');
  const [second, setSecond] = useState(people[1]?.key ?? '');
  if (people.length < 2)
    return (
      <p>{people.length === 0 ? 'No record is here yet.' : 'So far only one assessor’s records are here.'}</p>
    );
  const options = people.map(({ key, name }) => ({ value: key, label: `${name}, ${key.slice(0, 9)}…` }));
  const compared = compare(records, first, second);
  return (
    <>
      <div class="as-filter">
        <SelectField label="First" value={first} options={options} onChange={setFirst} />
        <SelectField label="Second" value={second} options={options} onChange={setSecond} />
      </div>
      {first === second ? (
        <p>Choose two different assessors.</p>
      ) : (
        <>
          <Table
            title="Decisions"
            pairs={compared.outcomes}
            categories={OUTCOMES}
            first={compared.first}
            second={compared.second}
          />
          <Table
            title="Single criteria"
            pairs={compared.criteria}
            categories={MET}
            first={compared.first}
            second={compared.second}
          />
        </>
      )}
    </>
  );
}

const OUTCOMES = { competent: 'competent', notYet: 'not yet' } as const;
const MET = { met: 'met', notYet: 'not yet', notSeen: 'not seen' } as const;

interface TableProps {
  readonly title: string;
  readonly pairs: readonly Pair[];
  readonly categories: Readonly<Record<string, string>>;
  readonly first: string;
  readonly second: string;
}

function Table({ title, pairs, categories, first, second }: TableProps) {
  const found = agreement(
    pairs.map((pair) => [pair.first, pair.second] as const),
    Object.keys(categories),
  );
  const apart = pairs.filter((pair) => pair.first !== pair.second);
  const say = (category: string) => categories[category] ?? category;
  return (
    <section class="as-agreement" aria-label={title}>
      <h2>{title}</h2>
      <p>{kappaSentence(found)}</p>
      <table>
        <caption>
          {first} down, {second} across
        </caption>
        <thead>
          <tr>
            <th scope="col">
              <span class="visually-hidden">{first}</span>
            </th>
            {found.categories.map((category) => (
              <th key={category} scope="col">
                {say(category)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {found.counts.map((row, nth) => (
            <tr key={found.categories[nth]}>
              <th scope="row">{say(found.categories[nth]!)}</th>
              {row.map((count, column) => (
                <td key={found.categories[column]} class={nth === column ? 'as-agreed' : undefined}>
                  {count}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {apart.length > 0 ? (
        <>
          <h3>Where they part</h3>
          <ul>
            {apart.map((pair) => (
              <li key={pair.about}>
                {pair.about}: {first} {say(pair.first)}, {second} {say(pair.second)}
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </section>
  );
}

function kappaSentence({ judged, observed, expected, kappa }: Agreement): string {
  if (judged === 0 || observed === null || expected === null) return 'Nothing was judged by both.';
  const percent = (share: number) => `${Math.round(share * 100)} %`;
  const base = `${judged} judged by both; they agree on ${percent(observed)}, chance alone would give ${percent(expected)}.`;
  if (kappa === null)
    return `${base} Both always said the same one thing, so Cohen’s kappa says nothing here.`;
  return `${base} Cohen’s kappa is ${kappa.toFixed(2)}: ${kappaWords(kappa)} agreement in the words of Landis and Koch (1977).`;
}
