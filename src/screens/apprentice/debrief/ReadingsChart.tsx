import { term, type Vocabulary } from '../../shared/words.ts';
import type { PassReadings } from '../../shell.ts';
import { niceAxis, ticks } from './chartScale.ts';
import { useWidth } from './useWidth.ts';

const HIGH = 260;
const LEFT = 36;
const BOTTOM = 26;
const TOP = 10;
/** A number under a bar needs so much room, px. */
const LABEL = 20;

export interface ReadingsChartProps {
  readonly pass: PassReadings;
  readonly counted: boolean;
  readonly vocabulary: Vocabulary;
}

/** Sound part as a stepped line, this part as columns, own readings as ringed dots: told apart by shape. */
export function ReadingsChart({ pass, counted, vocabulary }: ReadingsChartProps) {
  const [frame, wide] = useWidth(720);
  const { own, sound, truth } = pass;
  const axis = niceAxis(Math.max(...truth, ...sound, ...own.map((reading) => reading ?? 0)));
  const room = (wide - LEFT) / truth.length;
  const y = (ampere: number) => TOP + (HIGH - TOP - BOTTOM) * (1 - Math.min(ampere, axis.top) / axis.top);
  const middle = (bar: number) => LEFT + room * (bar + 0.5);
  const every = Math.ceil(LABEL / room);
  return (
    <div class="chart" ref={frame}>
      <p class="chart-axis">Amperes</p>
      <svg
        width={wide}
        height={HIGH}
        role="img"
        aria-label="Readings as a chart; the table below says the same"
      >
        {ticks(axis).map((tick) => (
          <g key={tick} class="chart-grid">
            <line x1={LEFT} x2={wide} y1={y(tick)} y2={y(tick)} />
            <text x={LEFT - 6} y={y(tick) + 4} text-anchor="end">
              {tick}
            </text>
          </g>
        ))}
        {truth.map((ampere, bar) => (
          <g key={middle(bar)}>
            <rect
              class="chart-truth"
              x={middle(bar) - room * 0.34}
              width={room * 0.68}
              y={y(ampere)}
              height={y(0) - y(ampere)}
            />
            {bar % every === 0 ? (
              <text x={middle(bar)} y={HIGH - 8} text-anchor="middle">
                {bar}
              </text>
            ) : null}
          </g>
        ))}
        <path class="chart-sound" d={steps(sound, room, y)} />
        {own.map((reading, bar) =>
          reading === null ? null : (
            <circle key={middle(bar)} class="chart-own" cx={middle(bar)} cy={y(reading)} r={5} />
          ),
        )}
      </svg>
      <p class="chart-axis chart-under">
        {term('bars', vocabulary)} {counted ? 'counted from the chalk' : 'by the bench’s own numbers'}
      </p>
      <ul class="chart-key" aria-hidden="true">
        <li class="key-own">you read</li>
        <li class="key-sound">a sound part</li>
        <li class="key-truth">this part</li>
      </ul>
    </div>
  );
}

function steps(values: readonly number[], room: number, y: (ampere: number) => number): string {
  return values
    .map((value, bar) => {
      const left = LEFT + room * bar;
      return `${bar === 0 ? 'M' : 'L'}${left.toFixed(1)} ${y(value).toFixed(1)}H${(left + room).toFixed(1)}`;
    })
    .join('');
}
