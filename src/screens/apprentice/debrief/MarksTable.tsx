import type { Mark } from '../../../assess/mark.ts';
import { spoken, type Vocabulary } from '../../shared/words.ts';

export interface MarksTableProps {
  readonly marks: readonly Mark[];
  readonly vocabulary: Vocabulary;
  readonly onShow: (entries: readonly number[]) => void;
}

const GROUPS: readonly (readonly [Mark['group'], string])[] = [
  ['procedure', 'How you worked'],
  ['diagnosis', 'What you found'],
];

/** Every mark with its reason and the moments that earned or lost it. */
export function MarksTable(props: MarksTableProps) {
  return (
    <section aria-labelledby="marks-title">
      <h2 id="marks-title">Marks and where each came from</h2>
      {GROUPS.map(([group, title]) => (
        <GroupTable
          key={group}
          title={title}
          {...props}
          marks={props.marks.filter((mark) => mark.group === group)}
        />
      ))}
    </section>
  );
}

function GroupTable({ title, marks, vocabulary, onShow }: MarksTableProps & { readonly title: string }) {
  if (marks.length === 0) return null;
  const earned = marks.reduce((sum, mark) => sum + mark.earned, 0);
  const of = marks.reduce((sum, mark) => sum + mark.of, 0);
  return (
    <table class="marks">
      <caption>
        {title}: {tidy(earned)} of {tidy(of)}
      </caption>
      <thead>
        <tr>
          <th scope="col">For</th>
          <th scope="col">Marks</th>
          <th scope="col">Why</th>
        </tr>
      </thead>
      <tbody>
        {marks.map((mark) => (
          <tr key={mark.id}>
            <th scope="row">{spoken(mark.title, vocabulary)}</th>
            <td class="marks-number">
              <span aria-hidden="true">{signOf(mark)} </span>
              {tidy(mark.earned)} of {tidy(mark.of)}
            </td>
            <td>
              {spoken(mark.sentence, vocabulary)}{' '}
              {mark.entries.length > 0 ? (
                <button
                  type="button"
                  class="entry-link no-print"
                  aria-label={`${momentWords(mark)} behind “${spoken(mark.title, vocabulary)}”`}
                  onClick={() => onShow(mark.entries)}
                >
                  {momentWords(mark)}
                </button>
              ) : null}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function momentWords({ entries }: Mark): string {
  return entries.length === 1 ? 'show the moment' : `show ${entries.length} moments`;
}

function signOf({ earned, of }: Mark): string {
  return earned >= of ? '●' : earned > 0 ? '◐' : '○';
}

function tidy(value: number): string {
  return String(Number(value.toFixed(1)));
}
