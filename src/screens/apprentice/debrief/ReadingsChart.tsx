import type { PassReadings } from '../../shell.ts';
import { niceAxis, ticks } from './chartScale.ts';

const WIDE = 720;
const HIGH = 260;
const LEFT = 44;
const BOTTOM = 40;
const TOP = 10;

/** Sound part as a stepped line, this part as bars, own readings as ringed dots: told apart by shape, not only colour. */
export function ReadingsChart({ pass }: { readonly pass: PassReadings }) {
  const { own, sound, truth } = pass;
  const axis = niceAxis(Math.max(...truth, ...sound, ...own.map((reading) => reading ?? 0)));
  const slot = (WIDE - LEFT) / truth.length;
  const y = (ampere: number) => TOP + (HIGH - TOP - BOTTOM) * (1 - Math.min(ampere, axis.top) / axis.top);
  const middle = (bar: number) => LEFT + slot * (bar + 0.5);
  return (
    <div class="chart">
      <svg
        viewBox={`0 0 ${WIDE} ${HIGH}`}
        role="img"
        aria-label="Readings by bar; the table below holds the same figures"
      >
        {ticks(axis).map((tick) => (
          <g key={tick} class="chart-grid">
            <line x1={LEFT} x2={WIDE} y1={y(tick)} y2={y(tick)} />
            <text x={LEFT - 6} y={y(tick) + 4} text-anchor="end">
              {tick}
            </text>
          </g>
        ))}
        {truth.map((ampere, bar) => (
          <g key={middle(bar)}>
            <rect
              class="chart-truth"
              x={middle(bar) - slot * 0.34}
              width={slot * 0.68}
              y={y(ampere)}
              height={y(0) - y(ampere)}
            />
            {bar % 2 === 0 || slot > 26 ? (
              <text class="chart-bar" x={middle(bar)} y={HIGH - 22} text-anchor="middle">
                {bar}
              </text>
            ) : null}
          </g>
        ))}
        <path class="chart-sound" d={steps(sound, slot, y)} />
        {own.map((reading, bar) =>
          reading === null ? null : (
            <circle key={middle(bar)} class="chart-own" cx={middle(bar)} cy={y(reading)} r={5} />
          ),
        )}
        <text class="chart-axis" x={LEFT} y={HIGH - 4}>
          bars from the chalk; readings in ampere
        </text>
      </svg>
      <ul class="chart-key" aria-hidden="true">
        <li class="key-own">you read</li>
        <li class="key-sound">a sound part</li>
        <li class="key-truth">this part</li>
      </ul>
    </div>
  );
}

function steps(values: readonly number[], slot: number, y: (ampere: number) => number): string {
  return values
    .map((value, bar) => {
      const left = LEFT + slot * bar;
      return `${bar === 0 ? 'M' : 'L'}${left.toFixed(1)} ${y(value).toFixed(1)}H${(left + slot).toFixed(1)}`;
    })
    .join('');
}
