import { Button } from '../../shared/Button.tsx';
import { saveText } from '../../shared/saveText.ts';
import { useLoaded } from '../../shared/useLoaded.ts';
import { Answered } from '../Answered.tsx';
import type { AssessorPageProps } from '../AssessorScreens.tsx';
import { DeedNotice } from '../DeedNotice.tsx';
import type { RecordForm } from '../desk.ts';
import { useDeed } from '../useDeed.ts';
import { PrintedRecord } from './PrintedRecord.tsx';

export interface RecordPageProps extends AssessorPageProps {
  readonly recordId: string;
}

const FORMS: readonly (readonly [RecordForm, string])[] = [
  ['evidence', 'Save it with the attempts, to hand over'],
  ['table', 'Save the marks as a table'],
  ['statements', 'Save as xAPI statements'],
];

/** A signed record as it is printed, and the files it can be handed over as. */
export function RecordPage({ recordId, desk, settings }: RecordPageProps) {
  const deed = useDeed();
  const signed = useLoaded(() => desk.record(recordId), [desk, recordId]);
  const save = (form: RecordForm) =>
    deed.run(
      () => desk.recordFile(recordId, form),
      (file) => {
        saveText(file.name, file.text);
        return `${file.name} was handed to the browser to save.`;
      },
    );
  return (
    <main class="as-record">
      <div class="acts no-print">
        <Button kind="main" onPress={() => print()}>
          Print the record
        </Button>
        {FORMS.map(([form, words]) => (
          <Button key={form} kind="quiet" disabled={deed.busy} onPress={() => save(form)}>
            {words}
          </Button>
        ))}
      </div>
      <DeedNotice deed={deed} />
      <Answered answer={signed} waiting="Fetching the record…">
        {({ record }) => <PrintedRecord record={record} vocabulary={settings.vocabulary} />}
      </Answered>
    </main>
  );
}
