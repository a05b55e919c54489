import { useState } from 'preact/hooks';
import { Answered } from '../assessor/Answered.tsx';
import { DeedNotice } from '../assessor/DeedNotice.tsx';
import { type Deed, useDeed } from '../assessor/useDeed.ts';
import { Button } from '../shared/Button.tsx';
import { Dialog } from '../shared/Dialog.tsx';
import { PickFile } from '../shared/PickFile.tsx';
import { saveText } from '../shared/saveText.ts';
import { useLoaded } from '../shared/useLoaded.ts';
import { modeWords, spoken, type Vocabulary } from '../shared/words.ts';
import type { InstructorDesk, MadeJob } from './desk.ts';
import type { InstructorPageProps } from './InstructorScreens.tsx';
import { writeInstructorRoute } from './route.ts';

/** The jobs made here: all of them stand on the apprentices' board. */
export function JobsPage({ desk, settings: { vocabulary } }: InstructorPageProps) {
  const deed = useDeed();
  const [version, setVersion] = useState(0);
  const jobs = useLoaded(() => desk.jobs(), [desk, version]);
  const goTo = (id: string): undefined => {
    location.hash = writeInstructorRoute({ page: 'job', id });
  };
  const again = () => setVersion((count) => count + 1);
  return (
    <main class="in-page paper" aria-labelledby="in-title">
      <header class="in-head">
        <h1 id="in-title">Jobs made here</h1>
        <div class="acts">
          <Button
            kind="main"
            disabled={deed.busy}
            onPress={() => deed.run(() => desk.begin(desk.partTypes[0]?.view.typeId ?? ''), goTo)}
          >
            Make a job
          </Button>
          <PickFile onPick={(file) => deed.run(() => desk.open(file), goTo)}>Open a file…</PickFile>
        </div>
      </header>
      <DeedNotice deed={deed} />
      <Answered answer={jobs} waiting="Fetching the jobs…">
        {(all) =>
          all.length === 0 ? (
            <p>
              No job has been made in this browser yet. Make one: a part lies open, you hide a fault where you
              press, and see what every test will show. Each job saved here joins the apprentices’ board.
            </p>
          ) : (
            <JobsTable {...{ all, desk, deed, again, vocabulary }} />
          )
        }
      </Answered>
    </main>
  );
}

interface JobsTableProps {
  readonly all: readonly MadeJob[];
  readonly desk: InstructorDesk;
  readonly deed: Deed;
  readonly again: () => void;
  readonly vocabulary: Vocabulary;
}

function JobsTable({ all, desk, deed, again, vocabulary }: JobsTableProps) {
  const [going, setGoing] = useState<MadeJob | null>(null);
  const handOut = (id: string) =>
    deed.run(
      async () => {
        const job = await desk.job(id);
        return job.ok ? desk.file(job.value.scenario) : job;
      },
      ({ name, text }) => {
        saveText(name, text);
        return `${name} is ready to hand out.`;
      },
    );
  const copy = (id: string) =>
    deed.run(
      () => desk.duplicate(id),
      (made) => {
        again();
        return `Copied as job ${made}.`;
      },
    );
  return (
    <div class="in-table in-slips">
      <table>
        <caption>Newest first</caption>
        <thead>
          <tr>
            <th scope="col">Job</th>
            <th scope="col">Part</th>
            <th scope="col">Worked</th>
            <th scope="col">Faults</th>
            <th scope="col">To do</th>
          </tr>
        </thead>
        <tbody>
          {all.map((job) => (
            <tr key={job.id}>
              <th scope="row">
                <a class="in-link" href={writeInstructorRoute({ page: 'job', id: job.id })}>
                  {job.unit}
                </a>
                <span class="in-id">{job.id}</span>
              </th>
              <td data-head="Part">{spoken(job.partName, vocabulary)}</td>
              <td data-head="Worked">{modeWords(job.mode)}</td>
              <td data-head="Faults">{job.faults || 'sound'}</td>
              <td>
                <div class="acts">
                  <Button kind="quiet" label={`Hand out ${job.id}`} onPress={() => handOut(job.id)}>
                    Hand out
                  </Button>
                  <Button kind="quiet" label={`Duplicate ${job.id}`} onPress={() => copy(job.id)}>
                    Duplicate
                  </Button>
                  <Button kind="quiet" label={`Remove ${job.id}`} onPress={() => setGoing(job)}>
                    Remove
                  </Button>
                </div>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {going ? <RemoveDialog job={going} {...{ desk, deed, again }} onClose={() => setGoing(null)} /> : null}
    </div>
  );
}

function RemoveDialog(
  props: Omit<JobsTableProps, 'all' | 'vocabulary'> & { readonly job: MadeJob; readonly onClose: () => void },
) {
  const { job, desk, deed, again, onClose } = props;
  const remove = () => {
    onClose();
    deed.run(
      () => desk.remove(job.id),
      () => {
        again();
        return `Job ${job.id} was removed.`;
      },
    );
  };
  return (
    <Dialog title="Remove this job?" onClose={onClose}>
      <p>
        {job.unit}, {job.id}, leaves this desk and the apprentices’ board. Attempts already made at it stay.
      </p>
      <div class="dialog-acts">
        <Button kind="danger" onPress={remove}>
          Remove it
        </Button>
        <Button onPress={onClose}>Leave it</Button>
      </div>
    </Dialog>
  );
}
