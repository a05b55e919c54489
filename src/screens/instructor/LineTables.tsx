import type { TestKind } from '../../bench/paper.ts';
import { lineWhere } from '../shared/lineWords.ts';
import { differs, resultWords } from '../shared/toldWords.ts';
import { spoken, testWords, type Vocabulary } from '../shared/words.ts';
import type { BenchEffect, Effects, LineEffect } from './desk.ts';
import type { Open } from './PartsForm.tsx';

export interface LineTablesProps {
  readonly effects: Effects;
  readonly open: Open;
  readonly allowed: readonly TestKind[];
  readonly vocabulary: Vocabulary;
}

/** What lamp, insulation tester, drop and gauges show line by line, and what the bench shows of itself. */
export function LineTables({ effects, open, allowed, vocabulary }: LineTablesProps) {
  const lines = effects.lines.filter(({ about }) => (about.part ?? 'armature') === open);
  return (
    <>
      {lines.length > 0 ? (
        <div class="in-table">
          <div class="table-scroll">
            <table>
              <caption>Read by a careful hand, on a bench in good order</caption>
              <thead>
                <tr>
                  <th scope="col">Test</th>
                  <th scope="col">Sound</th>
                  <th scope="col">Here</th>
                </tr>
              </thead>
              <tbody>
                {lines.map((line) => (
                  <LineRow key={keyOf(line)} {...{ line, allowed, vocabulary }} />
                ))}
              </tbody>
            </table>
          </div>
        </div>
      ) : null}
      {open === 'bench' && effects.bench.length > 0 ? (
        <BenchTable bench={effects.bench} vocabulary={vocabulary} />
      ) : null}
    </>
  );
}

const keyOf = ({ about: { test, part, at, gauge, brush } }: LineEffect) =>
  [test, part, at, gauge, brush].join(' ');

interface LineRowProps extends Pick<LineTablesProps, 'allowed' | 'vocabulary'> {
  readonly line: LineEffect;
}

function LineRow({ line: { about, sound, shows }, allowed, vocabulary }: LineRowProps) {
  const other = differs(sound, shows);
  const where = lineWhere(about, vocabulary);
  return (
    <tr>
      <th scope="row">
        {testWords(about.test, vocabulary)}
        {allowed.includes(about.test) ? '' : ' (not on the card)'}
        <span class="in-id">{where}</span>
      </th>
      <td>{resultWords({ ...about, ...sound })}</td>
      <td>
        {other ? '≠ ' : ''}
        {resultWords({ ...about, ...shows })}
      </td>
    </tr>
  );
}

function BenchTable({
  bench,
  vocabulary,
}: {
  readonly bench: readonly BenchEffect[];
  readonly vocabulary: Vocabulary;
}) {
  return (
    <div class="in-table">
      <div class="table-scroll">
        <table>
          <caption>What the bench shows of itself</caption>
          <thead>
            <tr>
              <th scope="col">Proof</th>
              <th scope="col">In good order</th>
              <th scope="col">Here</th>
            </tr>
          </thead>
          <tbody>
            {bench.map(({ what, sound, shows }) => (
              <tr key={what}>
                <th scope="row">{spoken(what, vocabulary)}</th>
                <td>{sound}</td>
                <td>
                  {sound === shows ? '' : '≠ '}
                  {shows}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}
