import { isMatTest, MAT_TESTS } from '../../../bench/matTests.ts';
import type { SheetLine, TestKind } from '../../../bench/paper.ts';
import { lineResult, lineScale, lineWhere, matPlaceWords } from '../../shared/lineWords.ts';
import {
  capital,
  countWords,
  spoken,
  term,
  testResultWords,
  testWords,
  type Vocabulary,
} from '../../shared/words.ts';
import { doubt, type Known } from './doubt.ts';
import { isOfBars } from './entryKinds.ts';
import { type EntryDraft, standing } from './sheetEntry.ts';

export interface SheetTableProps {
  readonly test: TestKind;
  readonly lines: readonly SheetLine[];
  readonly armature: Known;
  readonly vocabulary: Vocabulary;
  /** A row's bar, brush or holder was chosen to be written next. */
  readonly onPick: (place: Partial<EntryDraft>) => void;
}

/** What stands on the sheet for one test: a row for each bar, each brush or holder, or each line. */
export function SheetTable(props: SheetTableProps) {
  return isOfBars(props.test) ? <BarTable {...props} /> : <LineTable {...props} />;
}

/** Lines that are not counted round a commutator, as they were written, the newest last; then places not yet tested. */
function LineTable({ test, lines, armature, vocabulary, onPick }: SheetTableProps) {
  const written = lines.filter((line) => line.test === test);
  const left = (isMatTest(test) ? MAT_TESTS[test].to : []).filter(
    (place) => !written.some(({ at }) => at === place),
  );
  return (
    <table class="sheet-table">
      <caption>
        {testWords(test, vocabulary)}: {written.length === 0 ? 'nothing' : written.length} written
      </caption>
      {written.length + left.length === 0 ? null : <Heads test={test} first="Where" />}
      <tbody>
        {written.map((line, nth) => (
          <Row
            key={nth}
            head={lineWhere(line, vocabulary)}
            test={test}
            line={line}
            armature={armature}
            vocabulary={vocabulary}
          />
        ))}
        {left.map((place) => (
          <Row
            key={place}
            head={capital(matPlaceWords(place, vocabulary))}
            test={test}
            line={undefined}
            armature={armature}
            vocabulary={vocabulary}
            onPick={() => onPick({ at: place })}
          />
        ))}
      </tbody>
    </table>
  );
}

/** One row per bar, counted from the chalk; an empty row is a bar not tested yet. */
function BarTable(props: SheetTableProps) {
  const { test, armature, vocabulary } = props;
  const { bars } = armature;
  const latest = standing(props.lines, test);
  const counts = Array.from({ length: bars }, (_, count) => count);
  const beyond = [...latest.keys()].filter((count): count is number => count !== null && count >= bars);
  const whole = latest.get(null);
  const done = counts.filter((count) => latest.has(count)).length;
  return (
    <table class="sheet-table">
      <caption>
        {testWords(test, vocabulary)}: {done} of {bars} {term('bars', vocabulary)} written
      </caption>
      <Heads test={test} first="From chalk" />
      <tbody>
        {whole ? (
          <Row head="whole part" test={test} line={whole} armature={armature} vocabulary={vocabulary} />
        ) : null}
        {[...counts, ...beyond].map((count) => (
          <Row
            key={count}
            head={countWords(count)}
            test={test}
            line={latest.get(count)}
            armature={armature}
            vocabulary={vocabulary}
            onPick={() => props.onPick({ count: String(count) })}
          />
        ))}
      </tbody>
    </table>
  );
}

function Heads({ test, first }: { readonly test: TestKind; readonly first: string }) {
  return (
    <thead>
      <tr>
        <th scope="col">{first}</th>
        <th scope="col">{testResultWords(test)}</th>
        {test === 'look' ? null : <th scope="col">Remark</th>}
      </tr>
    </thead>
  );
}

interface RowProps {
  readonly head: string;
  readonly test: TestKind;
  readonly line: SheetLine | undefined;
  readonly armature: Known;
  readonly vocabulary: Vocabulary;
  readonly onPick?: () => void;
}

function Row({ head, test, line, armature, vocabulary, onPick }: RowProps) {
  const odd = line ? doubt(line, armature) : null;
  const remark = (
    <>
      {line?.remark}
      {odd ? <span class="row-odd">⚠ {spoken(odd, vocabulary)}</span> : null}
    </>
  );
  return (
    <tr class={line ? 'row-written' : 'row-empty'}>
      <th scope="row">
        {onPick ? (
          <button type="button" class="row-pick" onClick={onPick}>
            {head}
          </button>
        ) : (
          head
        )}
      </th>
      {test === 'look' ? (
        <td>{remark}</td>
      ) : (
        <>
          <td>{line ? <Result line={line} /> : <span class="row-none">not yet</span>}</td>
          <td>{remark}</td>
        </>
      )}
    </tr>
  );
}

/** The result of a line as it stands on the sheet, with the range or voltage it was read on. */
function Result({ line }: { readonly line: SheetLine }) {
  const scale = lineScale(line);
  return (
    <>
      {lineResult(line) || 'see remark'}
      {scale === '' ? null : <small class="row-range"> {scale}</small>}
    </>
  );
}
