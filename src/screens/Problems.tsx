import type { Issue } from '../scenario/scenario.ts';
import { Button } from './shared/Button.tsx';
import { fileName, placeName } from './shared/issuePlace.ts';
import { Notice } from './shared/Notice.tsx';
import { saveText } from './shared/saveText.ts';
import { withDays } from './shared/time.ts';
import type { StoredProblem } from './shell.ts';

export function IssueList(props: { readonly issues: readonly Issue[] }) {
  return (
    <ul class="issues">
      {props.issues.map((issue) => (
        <li key={`${issue.path} ${issue.sentence}`}>
          <Placed place={issue.path} sentence={issue.sentence} />
        </li>
      ))}
    </ul>
  );
}

/** A sentence with the place it is about: its name in front, its exact path behind for whoever opens the file. */
export function Placed(props: { readonly place: string; readonly sentence: string }) {
  const name = placeName(props.place);
  return (
    <>
      {name ? `${name}: ` : ''}
      {withDays(props.sentence)} {props.place ? <code>{props.place}</code> : null}
    </>
  );
}

function Unread({ where }: Pick<StoredProblem, 'where'>) {
  const name = fileName(where);
  return (
    <span>
      {name} {name === where ? null : <code>{where}</code>} could not be read. Nothing else was touched.
    </span>
  );
}

export interface ProblemsProps {
  readonly problems: readonly StoredProblem[];
  readonly onDismiss: (problem: StoredProblem) => void;
}

/** Files and stored attempts that could not be read, each with its place and a way to keep the text. */
export function Problems(props: ProblemsProps) {
  return (
    <div class="problems" role="status">
      {props.problems.map((problem) => (
        <Notice
          key={`${problem.where} ${problem.issues[0]?.sentence}`}
          kind="problem"
          onDismiss={() => props.onDismiss(problem)}
        >
          <Unread where={problem.where} />
          <IssueList issues={problem.issues} />
          {problem.text === null ? null : (
            <Button kind="quiet" onPress={() => saveText(`${problem.where}.txt`, problem.text ?? '')}>
              Save its text as found
            </Button>
          )}
        </Notice>
      ))}
    </div>
  );
}
