import { cpus, loadavg } from 'node:os';
import { benchLines, benchSpeed } from './bench/report.ts';
import { speedReport } from './suite.ts';
import { ratioLines, rowLine } from './table.ts';

/**
 * `npm run speed`: measures everything in one run and prints a table; `-- --json` prints it for machines instead,
 * `-- --bench` measures the bench in the browser alone.
 */
const json = process.argv.includes('--json');
const benchOnly = process.argv.includes('--bench');
const unknown = process.argv.slice(2).filter((word) => word !== '--json' && word !== '--bench');
if (unknown.length > 0) {
  console.error(`Expected --json, --bench or nothing, but "${unknown.join(' ')}" came.`);
  process.exitCode = 2;
} else await measure();

async function measure(): Promise<void> {
  const told = json ? () => {} : (row: Parameters<typeof rowLine>[0]) => console.log(rowLine(row));
  if (!json && !benchOnly) console.log('Medians of one run, processor time of this process.');
  const bench = await benchSpeed();
  const report = benchOnly ? { rows: [], ratios: [] } : await speedReport({ told });
  const machine = {
    node: process.version,
    processor: cpus()[0]?.model ?? 'unknown',
    cores: cpus().length,
    load: loadavg()[0],
  };
  if (json) console.log(JSON.stringify({ machine, bench, ...report }, null, 2));
  else {
    if (!benchOnly) for (const line of ratioLines(report.ratios)) console.log(line);
    for (const line of benchLines(bench)) console.log(line);
    const { node, processor, cores } = machine;
    console.log(`Node ${node} on ${processor}, ${cores} cores, load ${machine.load?.toFixed(1)}.`);
  }
}
