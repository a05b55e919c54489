import type { ComponentChildren } from 'preact';
import type { Check } from '../../../records/verify.ts';
import { Placed } from '../../Problems.tsx';
import type { CheckedFile } from '../desk.ts';

const WHAT_WORDS: Readonly<Record<Check['what'], string>> = {
  seal: 'Seal',
  signature: 'Signature',
  belongs: 'Belongs together',
  key: 'Key',
};
const SIGNS: Readonly<Record<Check['verdict'], string>> = { holds: '✓', broken: '✕', unknown: '?' };
const VERDICTS: Readonly<Record<Check['verdict'], string>> = {
  holds: 'holds',
  broken: 'broken',
  unknown: 'cannot be told',
};

/** Every check that was made, with the place in the file. */
export function CheckList({ checked }: { readonly checked: CheckedFile }) {
  const { verification, replays, attempts } = checked;
  const nameOf = (id: string) => {
    const found = attempts.find((attempt) => attempt.id === id);
    return found ? `${found.learner.trim() || 'No name given'}, ${found.job}` : id;
  };
  return (
    <table class="as-checks">
      <caption>What was checked</caption>
      <thead>
        <tr>
          <th scope="col">Check</th>
          <th scope="col">Result</th>
          <th scope="col">What was found</th>
        </tr>
      </thead>
      <tbody>
        {verification.checks.map((check) => (
          <Line key={`${check.what} ${check.where}`} name={WHAT_WORDS[check.what]} verdict={check.verdict}>
            <Placed place={check.verdict === 'broken' ? check.where : ''} sentence={check.sentence} />
          </Line>
        ))}
        {replays.map((again) => (
          <Line key={again.attempt} name="Done again" verdict={again.agreed ? 'holds' : 'broken'}>
            {nameOf(again.attempt)}: {again.sentence}
          </Line>
        ))}
      </tbody>
    </table>
  );
}

interface LineProps {
  readonly name: string;
  readonly verdict: Check['verdict'];
  readonly children: ComponentChildren;
}

function Line({ name, verdict, children }: LineProps) {
  return (
    <tr class={`as-check as-check-${verdict}`}>
      <th scope="row">{name}</th>
      <td>
        {SIGNS[verdict]} {VERDICTS[verdict]}
      </td>
      <td>{children}</td>
    </tr>
  );
}
