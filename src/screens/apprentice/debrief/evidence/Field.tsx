import type { EvidenceStory, KindStory } from '../../../../assess/evidence/story/shape.ts';
import { percentWords } from '../../../../assess/words.ts';
import { type Calling, kindWords } from './evidenceWords.ts';

export interface FieldProps {
  readonly story: EvidenceStory;
  readonly calling: Calling;
}

/** What was still possible, reading by reading: one band for each kind of fault, as high as it was likely. */
export function Field({ story, calling }: FieldProps) {
  const { kinds, steps, openBefore } = story;
  const left = steps.at(-1)?.open ?? openBefore;
  const runs = runsOf(steps);
  return (
    <figure class="possible">
      <figcaption>
        <h3>What was still possible</h3>
        <p>
          Before the first reading {openBefore} things were possible, place by place; after{' '}
          {steps.length === 1 ? 'one reading' : `${steps.length} readings`},{' '}
          {left === 1 ? 'one is' : `${left} are`}. Each band runs from your first reading to your last and is
          as high as the fault was likely.
        </p>
      </figcaption>
      <div class="table-scroll">
        <table>
          <thead>
            <tr>
              <th scope="col">Kind</th>
              <th scope="col">At first</th>
              <th scope="col" class="possible-band">
                First reading to last
                <Tests runs={runs} />
              </th>
              <th scope="col">In the end</th>
              <th scope="col">Places left</th>
            </tr>
          </thead>
          <tbody>
            {kinds.map((kind) => (
              <tr key={kind.what}>
                <th scope="row">{kindWords(kind, calling)}</th>
                <td>{percentWords(kind.chances[0]!)}</td>
                <td class="possible-band">
                  <Band chances={kind.chances} runs={runs} />
                </td>
                <td>{percentWords(kind.chances.at(-1)!)}</td>
                <td>{placesWords(kind)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </figure>
  );
}

/** Readings of one test taken one after another. */
interface Run {
  readonly name: string;
  readonly from: number;
  readonly count: number;
}

function runsOf(steps: EvidenceStory['steps']): Run[] {
  const runs: Run[] = [];
  steps.forEach(({ reading }, from) => {
    const name = RUN_NAMES[reading.kind];
    const last = runs.at(-1);
    if (last?.name === name) runs[runs.length - 1] = { ...last, count: last.count + 1 };
    else runs.push({ name, from, count: 1 });
  });
  return runs;
}
const RUN_NAMES = {
  look: 'lens',
  meter: 'ammeter',
  lamp: 'lamp',
  strip: 'strip',
  stripPass: 'strip',
  megohm: 'tester',
  drop: 'millivolts',
} as const;

/** Which instrument was in hand, over the bands; too short a run goes without its name. */
function Tests({ runs }: { readonly runs: readonly Run[] }) {
  const total = runs.reduce((sum, { count }) => sum + count, 0);
  return (
    <span class="possible-tests" aria-hidden="true">
      {runs.map(({ name, from, count }) => (
        <span key={from} style={{ left: `${(100 * from) / total}%`, width: `${(100 * count) / total}%` }}>
          <span>{name}</span>
        </span>
      ))}
    </span>
  );
}

function placesWords({ places }: KindStory): string {
  return places === null ? '–' : `${places[1]} of ${places[0]}`;
}

const WIDE = 300;
const HIGH = 30;

/** Height is the chance, 0 to 1; every reading takes the same width. */
function Band({ chances, runs }: Pick<KindStory, 'chances'> & { readonly runs: readonly Run[] }) {
  const step = WIDE / Math.max(1, chances.length - 1);
  const y = (chance: number) => (HIGH * (1 - chance)).toFixed(2);
  const line = chances
    .map((chance, n) => `${n === 0 ? 'M' : 'L'}${(n * step).toFixed(2)} ${y(chance)}`)
    .join('');
  return (
    <svg
      class="band"
      viewBox={`0 0 ${WIDE} ${HIGH}`}
      preserveAspectRatio="none"
      aria-hidden="true"
      focusable="false"
    >
      <path class="band-area" d={`${line}L${WIDE} ${HIGH}L0 ${HIGH}Z`} />
      {runs.slice(1).map(({ from }) => (
        <path key={from} class="band-cut" d={`M${(from * step).toFixed(2)} 0V${HIGH}`} />
      ))}
      <path class="band-line" d={line} />
    </svg>
  );
}
