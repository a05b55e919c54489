import type { SheetLine, TestKind } from '../../../bench/paper.ts';
import { countWords, spoken, term, testResultWords, testWords, type Vocabulary } from '../../shared/words.ts';
import { PLACE_NAMES } from './ResultField.tsx';
import { doubt, PLACES_OF, standing } from './sheetEntry.ts';

export interface SheetTableProps {
  readonly test: TestKind;
  readonly lines: readonly SheetLine[];
  readonly bars: number;
  readonly vocabulary: Vocabulary;
  /** A row's bar was chosen to be written next. */
  readonly onPick: (count: number) => void;
}

/** One row per bar, counted from the chalk; an empty row is a bar not tested yet. */
export function SheetTable(props: SheetTableProps) {
  return isOfBars(props.test) ? <BarTable {...props} /> : <LineTable {...props} />;
}

function isOfBars(test: TestKind): boolean {
  return !PLACES_OF[test] && test !== 'megohm' && test !== 'millivolt' && test !== 'gauges';
}

/** Tests that are not counted round a commutator: every line as it was written, the newest last. */
function LineTable({ test, lines, bars, vocabulary }: SheetTableProps) {
  const written = lines.filter((line) => line.test === test);
  return (
    <table class="sheet-table">
      <caption>
        {testWords(test, vocabulary)}: {written.length} written
      </caption>
      <tbody>
        {written.map((line, nth) => (
          <Row
            key={nth}
            head={spoken((line.at && PLACE_NAMES[line.at]) ?? `line ${nth + 1}`, vocabulary)}
            test={test}
            line={line}
            bars={bars}
          />
        ))}
      </tbody>
    </table>
  );
}

function BarTable(props: SheetTableProps) {
  const { test, bars, vocabulary } = props;
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
      <thead>
        <tr>
          <th scope="col">From chalk</th>
          <th scope="col">{testResultWords(test)}</th>
          {test === 'look' ? null : <th scope="col">Remark</th>}
        </tr>
      </thead>
      <tbody>
        {whole ? <Row head="whole part" test={test} line={whole} bars={bars} /> : null}
        {[...counts, ...beyond].map((count) => (
          <Row
            key={count}
            head={countWords(count)}
            test={test}
            line={latest.get(count)}
            bars={bars}
            onPick={() => props.onPick(count)}
          />
        ))}
      </tbody>
    </table>
  );
}

interface RowProps {
  readonly head: string;
  readonly test: TestKind;
  readonly line: SheetLine | undefined;
  readonly bars: number;
  readonly onPick?: () => void;
}

function Row({ head, test, line, bars, onPick }: RowProps) {
  const odd = line ? doubt(line, bars) : null;
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
      <td>{line ? <Result line={line} /> : <span class="row-none">not yet</span>}</td>
      {test === 'look' ? null : (
        <td>
          {line?.remark}
          {odd ? <span class="row-odd">⚠ {odd}</span> : null}
        </td>
      )}
    </tr>
  );
}

/** The result of a line as it stands on the sheet; a look has nothing but its remark. */
function Result({ line }: { readonly line: SheetLine }) {
  if (line.readingA !== undefined) {
    return (
      <>
        {line.readingA} A
        {line.rangeA === undefined ? null : <small class="row-range"> on {line.rangeA}</small>}
      </>
    );
  }
  if (line.megohms !== undefined) return <>{line.megohms === 'over' ? 'over' : `${line.megohms} MΩ`}</>;
  if (line.millivolts !== undefined) return <>{line.millivolts} mV</>;
  if (line.millimetres !== undefined) return <>{line.millimetres} mm</>;
  return <>{line.lamp ?? line.strip ?? (line.test === 'look' ? line.remark : 'see remark')}</>;
}
