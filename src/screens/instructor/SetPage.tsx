import { useState } from 'preact/hooks';
import type { PartKind } from '../../bench/action.ts';
import type { Difficulty } from '../../scenario/generate.ts';
import type { FieldFrameView } from '../../scenario/public/job.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { DeedNotice } from '../assessor/DeedNotice.tsx';
import { useDeed } from '../assessor/useDeed.ts';
import { Button } from '../shared/Button.tsx';
import { RadioField, SelectField, TextField } from '../shared/Field.tsx';
import { saveText } from '../shared/saveText.ts';
import { mainsWords, modeWords, spoken, type Vocabulary } from '../shared/words.ts';
import type { PartType, SetWish } from './desk.ts';
import type { InstructorPageProps } from './InstructorScreens.tsx';
import { otherFaults } from './partEdits.ts';
import { HARDNESS_WORDS, kindWords, otherFaultWords, severityWords, spotWords } from './say.ts';
import { spotOf } from './spots.ts';

const FIRST: Omit<SetWish, 'part'> = {
  ...{ seed: 'monday', seats: 12, perRow: 4 },
  ...{ about: ['armature'], difficulty: 'medium', mains: '230V50Hz', mode: 'practice' },
};

/** Jobs for a whole class from one seed: whoever sits near has another kind of fault, of like difficulty. */
export function SetPage({ desk, settings }: InstructorPageProps) {
  const deed = useDeed();
  const [wish, setWish] = useState<SetWish>({ ...FIRST, part: desk.partTypes[0]?.view.typeId ?? '' });
  const [set, setSet] = useState<readonly Scenario[]>([]);
  const part = desk.partTypes.find(({ view }) => view.typeId === wish.part);
  const change = (some: Partial<SetWish>) => {
    setWish({ ...wish, ...some });
    setSet([]);
  };
  const make = () =>
    deed.run(
      async () => desk.makeSet(wish),
      (made) => {
        setSet(made);
        return `${made.length} jobs laid out, bench by bench. Nothing is kept yet.`;
      },
    );
  const keepAll = () =>
    deed.run(
      () => desk.keepAll(set),
      () => `${set.length} jobs stand on the apprentices’ board.`,
    );
  const handOut = (scenario: Scenario) => {
    const file = desk.file(scenario);
    if (file.ok) saveText(file.value.name, file.value.text);
  };
  return (
    <main class="in-page paper" aria-labelledby="in-title">
      <h1 id="in-title">A set for a class</h1>
      <p>
        One job for every bench, all of like difficulty: whoever sits beside, in front or behind has another
        kind of fault.
      </p>
      {part ? (
        <WishForm vocabulary={settings.vocabulary} {...{ desk, wish, part }} onChange={change} />
      ) : null}
      <div class="acts">
        <Button kind="main" disabled={deed.busy} onPress={make}>
          Lay out the set
        </Button>
        <Button disabled={deed.busy || set.length === 0} onPress={keepAll}>
          Put all on the board
        </Button>
        <Button disabled={set.length === 0} onPress={() => set.forEach(handOut)}>
          Hand out all as files
        </Button>
      </div>
      <DeedNotice deed={deed} />
      {part && set.length > 0 ? (
        <SeatTable
          {...{ set, part, handOut }}
          frames={desk.frameTypes}
          perRow={wish.perRow}
          vocabulary={settings.vocabulary}
        />
      ) : null}
    </main>
  );
}

const ABOUT: readonly (readonly [words: string, about: readonly PartKind[]])[] = [
  ['Armature', ['armature']],
  ['Field frame', ['fieldFrame']],
  ['Brush plate', ['brushPlate']],
  ['Whole unit', ['armature', 'fieldFrame', 'brushPlate']],
];

/** A field frame or brush plate of this workshop belongs to a four-pole unit. */
const fits = (about: readonly PartKind[], poles: number) => poles === 4 || about.join() === 'armature';

interface WishFormProps {
  readonly desk: InstructorPageProps['desk'];
  readonly wish: SetWish;
  readonly part: PartType;
  readonly vocabulary: Vocabulary;
  readonly onChange: (some: Partial<SetWish>) => void;
}

function WishForm({ desk, wish, part, vocabulary, onChange }: WishFormProps) {
  const figure = (text: string) => (text.trim() === '' ? 0 : Number(text));
  const fitting = desk.partTypes.filter(({ view }) => fits(wish.about, view.poles));
  const changeAbout = (value: string) => {
    const about = ABOUT.find(([words]) => words === value)?.[1] ?? ['armature'];
    const first = desk.partTypes.find(({ view }) => fits(about, view.poles))?.view.typeId ?? wish.part;
    const stays = fits(about, part.view.poles);
    onChange({ about, ...(stays ? {} : { part: first }) });
  };
  const changePart = (typeId: string) => {
    const offered = desk.partTypes.find(({ view }) => view.typeId === typeId)?.difficulties ?? [];
    const difficulty = offered.includes(wish.difficulty) ? wish.difficulty : (offered[0] ?? 'easy');
    onChange({ part: typeId, difficulty });
  };
  return (
    <>
      <div class="in-row">
        <TextField
          label="Seed"
          hint="The same seed gives the same set anywhere."
          value={wish.seed}
          onInput={(seed) => onChange({ seed })}
        />
        <TextField
          label="Benches"
          inputMode="numeric"
          value={String(wish.seats || '')}
          onInput={(text) => onChange({ seats: figure(text) })}
        />
        <TextField
          label="Benches in a row"
          inputMode="numeric"
          value={String(wish.perRow || '')}
          onInput={(text) => onChange({ perRow: figure(text) })}
        />
      </div>
      <div class="in-row">
        <SelectField
          label="To be judged"
          value={ABOUT.find(([, about]) => about.join() === wish.about.join())?.[0] ?? ''}
          options={ABOUT.map(([words]) => ({ value: words, label: words }))}
          onChange={changeAbout}
        />
        <SelectField
          label={wish.about.includes('armature') ? 'Armature' : 'Armature in the cradle'}
          value={wish.part}
          options={fitting.map(({ view }) => ({ value: view.typeId, label: spoken(view.name, vocabulary) }))}
          onChange={changePart}
        />
      </div>
      <div class="in-row">
        <SelectField
          label="How hard"
          value={wish.difficulty}
          options={part.difficulties.map((level: Difficulty) => ({
            value: level,
            label: HARDNESS_WORDS[level],
          }))}
          onChange={(difficulty) => onChange({ difficulty })}
        />
        <SelectField
          label="Mains"
          value={wish.mains}
          options={(['230V50Hz', '120V60Hz'] as const).map((mains) => ({
            value: mains,
            label: mainsWords(mains),
          }))}
          onChange={(mains) => onChange({ mains })}
        />
      </div>
      <RadioField
        label="How it is worked"
        value={wish.mode}
        options={(['guided', 'practice', 'assessed'] as const).map((mode) => ({
          value: mode,
          label: modeWords(mode),
        }))}
        onChange={(mode) => onChange({ mode })}
      />
    </>
  );
}

interface SeatTableProps {
  readonly set: readonly Scenario[];
  readonly part: PartType;
  readonly frames: readonly FieldFrameView[];
  readonly perRow: number;
  readonly vocabulary: Vocabulary;
  readonly handOut: (scenario: Scenario) => void;
}

function SeatTable({ set, part, frames, perRow, vocabulary, handOut }: SeatTableProps) {
  const frameOf = (job: Scenario) => frames.find(({ typeId }) => typeId === job.public.fieldFrame) ?? null;
  return (
    <div class="in-table in-slips">
      <table>
        <caption>For the instructor alone: who gets what</caption>
        <thead>
          <tr>
            <th scope="col">Row, bench</th>
            <th scope="col">Job</th>
            <th scope="col">Card</th>
            <th scope="col">Hidden</th>
            <th scope="col">File</th>
          </tr>
        </thead>
        <tbody>
          {set.map((scenario, seat) => (
            <tr key={scenario.public.id}>
              <th scope="row">
                <span class="in-slip-word">Row and bench </span>
                {Math.floor(seat / perRow) + 1}, {(seat % perRow) + 1}
              </th>
              <td data-head="Job">{scenario.public.id}</td>
              <td data-head="Card">{scenario.public.card.unit}</td>
              <td data-head="Hidden">{hiddenWords(scenario, part, frameOf(scenario), vocabulary)}</td>
              <td>
                <Button
                  kind="quiet"
                  label={`Hand out ${scenario.public.id}`}
                  onPress={() => handOut(scenario)}
                >
                  Hand out
                </Button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function hiddenWords(
  scenario: Scenario,
  part: PartType,
  frame: FieldFrameView | null,
  vocabulary: Vocabulary,
): string {
  const armature = scenario.hidden.armature.faults.map((fault) =>
    [
      kindWords(fault.kind, vocabulary),
      spotWords(spotOf(fault, part), part.view.bars, vocabulary),
      severityWords(fault),
    ]
      .filter(Boolean)
      .join(', '),
  );
  const others = (['fieldFrame', 'brushPlate'] as const).flatMap((other) =>
    otherFaults(scenario, other).map((fault) => otherFaultWords(fault, other, frame, vocabulary)),
  );
  const words = [...armature, ...others];
  return words.length > 0 ? words.join('; ') : 'Nothing: sound';
}
