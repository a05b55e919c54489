import type { Issue } from '../scenario/scenario.ts';
import { Button } from './shared/Button.tsx';
import { Notice } from './shared/Notice.tsx';
import { saveText } from './shared/saveText.ts';
import type { StoredProblem } from './shell.ts';

export function IssueList(props: { readonly issues: readonly Issue[] }) {
  return (
    <ul class="issues">
      {props.issues.map((issue) => (
        <li key={`${issue.path} ${issue.sentence}`}>
          {issue.path ? <code>{issue.path}</code> : null} {issue.sentence}
        </li>
      ))}
    </ul>
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
          <span>{problem.where} could not be read. Nothing else was touched.</span>
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
