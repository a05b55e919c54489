import type { TestKind } from '../../bench/paper.ts';
import type { FieldFrameView } from '../../scenario/public/job.ts';
import type { Parsed } from '../../scenario/scenario.ts';
import { IssueList } from '../Problems.tsx';
import { Notice } from '../shared/Notice.tsx';
import { testWords, type Vocabulary } from '../shared/words.ts';
import type { Effects, PartType } from './desk.ts';
import { LineTables } from './LineTables.tsx';
import type { Open } from './PartsForm.tsx';
import { effectWords, findingWords, HARDNESS_WORDS, lookalikeWords } from './say.ts';

export interface EffectsTableProps {
  /** Null until there is a first answer. */
  readonly answer: Parsed<Effects> | null;
  /** The part has been changed since, and is being solved again. */
  readonly stale: boolean;
  /** What lies open: its tests are shown. */
  readonly open: Open;
  readonly part: PartType;
  readonly frame: FieldFrameView | null;
  readonly allowed: readonly TestKind[];
  readonly vocabulary: Vocabulary;
}

/** What each test will show the apprentice, and how hard that is to find. */
export function EffectsTable({ answer, stale, ...rest }: EffectsTableProps) {
  return (
    <section class="in-effects" aria-labelledby="in-effects-title" aria-busy={stale}>
      <h2 id="in-effects-title">What the tests will show</h2>
      <p role="status" class="in-state">
        {stale || answer === null ? 'Solving the part…' : answer.ok ? summary(answer.value) : ''}
      </p>
      {answer?.ok ? (
        <Shown effects={answer.value} {...rest} />
      ) : answer ? (
        <Notice kind="problem">
          <IssueList issues={answer.issues} />
        </Notice>
      ) : null}
    </section>
  );
}

const summary = ({ hardness, because }: Effects) => `${HARDNESS_WORDS[hardness]}. ${because}`;

interface ShownProps extends Pick<EffectsTableProps, 'open' | 'part' | 'frame' | 'allowed' | 'vocabulary'> {
  readonly effects: Effects;
}

function Shown({ effects, open, part, frame, allowed, vocabulary }: ShownProps) {
  return (
    <>
      <GrowlerTable {...{ effects, open, allowed, vocabulary }} />
      <LineTables {...{ effects, open, allowed, vocabulary }} />
      {effects.foundBy.length > 0 ? (
        <>
          <h3>Which tests find which fault</h3>
          <ul>
            {effects.foundBy.map((finding) => {
              const words = findingWords(finding, part, frame, vocabulary);
              const found = finding.tests.map((test) => testWords(test, vocabulary)).join('; ');
              return (
                <li key={words}>
                  <strong>{words}:</strong> {found || 'no test the card allows'}
                </li>
              );
            })}
          </ul>
          {effects.foundBy.some(({ part: one, fault }) => one === 'armature' && fault.kind !== 'worn') ? (
            <p>{lookalikeWords(effects)}</p>
          ) : null}
        </>
      ) : null}
    </>
  );
}

/** Looking over, and the tests on the growler where an armature lies open. */
function GrowlerTable(props: Omit<ShownProps, 'part' | 'frame'>) {
  const { effects, open, allowed, vocabulary } = props;
  const tests = effects.tests.filter(({ test }) =>
    test === 'look' ? open !== 'bench' : open === 'armature',
  );
  if (tests.length === 0) return null;
  return (
    <div class="table-scroll">
      <table>
        <caption>All faults together, contact scatter off</caption>
        <thead>
          <tr>
            <th scope="col">Test</th>
            <th scope="col">Shows it</th>
            <th scope="col">Stands out at</th>
          </tr>
        </thead>
        <tbody>
          {tests.map((effect) => (
            <tr key={effect.test}>
              <th scope="row">
                {testWords(effect.test, vocabulary)}
                {allowed.includes(effect.test) ? '' : ' (not on the card)'}
              </th>
              <td>{effect.seen ? '✓ seen' : '– not seen'}</td>
              <td>{effectWords(effect, vocabulary)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
