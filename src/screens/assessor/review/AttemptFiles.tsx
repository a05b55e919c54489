import { Button } from '../../shared/Button.tsx';
import { saveText } from '../../shared/saveText.ts';
import { DeedNotice } from '../DeedNotice.tsx';
import type { AssessorDesk, AttemptForm } from '../desk.ts';
import { useDeed } from '../useDeed.ts';

export interface AttemptFilesProps {
  readonly desk: AssessorDesk;
  readonly attempt: string;
}

const FORMS: readonly (readonly [AttemptForm, string])[] = [
  ['sealed', 'The attempt, sealed'],
  ['log', 'Its log as a table'],
  ['marks', 'Its marks as a table'],
  ['statements', 'xAPI statements'],
];

/** The attempt in the player as files, whether or not it is ever signed for. */
export function AttemptFiles({ desk, attempt }: AttemptFilesProps) {
  const deed = useDeed();
  const save = (form: AttemptForm) =>
    deed.run(
      () => desk.attemptFile(attempt, form),
      (file) => {
        saveText(file.name, file.text);
        return `${file.name} was handed to the browser to save.`;
      },
    );
  return (
    <details class="as-compare">
      <summary>This attempt as files</summary>
      <div class="acts">
        {FORMS.map(([form, words]) => (
          <Button key={form} kind="quiet" disabled={deed.busy} onPress={() => save(form)}>
            {words}
          </Button>
        ))}
      </div>
      <DeedNotice deed={deed} />
    </details>
  );
}
