import { build } from 'vite';
import { serveBuild } from '../../../src/cli/support/serveBuild.ts';
import { findChromium, launch } from '../../browser/support/chromium.ts';
import type { Used } from '../../browser/support/rest.ts';
import { type FrameSpeed, frameSpeed } from './frames.ts';
import { type Start, type StartSpeed, startSpeed } from './start.ts';

export interface BenchSpeed {
  readonly frames: FrameSpeed;
  readonly start: StartSpeed;
}

/** Longest times wished for, ms. */
const FRAME_MEDIAN_MS = 4;
const FRAME_P95_MS = 8;
const START_MS = 1500;

/** Builds the app and measures the bench in a headless browser. */
export async function benchSpeed(): Promise<BenchSpeed> {
  await build({ logLevel: 'error' });
  const served = await serveBuild(0);
  const browser = await launch(await findChromium());
  try {
    return { frames: await frameSpeed(browser, served.url), start: await startSpeed(browser, served.url) };
  } finally {
    await browser.close();
    await served.close();
  }
}

export function benchLines({ frames, start }: BenchSpeed): string[] {
  const met = (ms: number, aim: number) => `aim ${aim} ms: ${ms <= aim ? 'met' : 'missed'}`;
  const ms = (value: number) => `${value.toPrecision(3)} ms`;
  const times = (which: keyof Start) => (start.median[which] / start.witness[which]).toFixed(1);
  return [
    'The bench in a headless browser.',
    `  script per frame, armature turning under the strip, ${frames.frames} frames, processor time:`,
    `    median ${ms(frames.medianMs)} (${met(frames.medianMs, FRAME_MEDIAN_MS)}), 95th percentile ${ms(frames.p95Ms)} (${met(frames.p95Ms, FRAME_P95_MS)})`,
    `    a fixed sum in the same page ${ms(frames.witnessMs)}: ${(frames.witnessMs / frames.medianMs).toFixed(0)} median frames`,
    `  3 s of rest: ${usedWords(frames.idleOff)} with the bench off, ${usedWords(frames.idleOn)} on HIGH`,
    `  cold start, processor ${start.throttled} times slower, median of ${start.starts.length}:`,
    `    a lifted probe in the log ${ms(start.median.loggedMs)} (${met(start.median.loggedMs, START_MS)}), ${times('loggedMs')} times an empty page with one button (${ms(start.witness.loggedMs)})`,
    `    and on disk ${ms(start.median.diskMs)}, ${times('diskMs')} times that page (${ms(start.witness.diskMs)})`,
  ];
}

function usedWords({ pictures, frames }: Used): string {
  return `${pictures} pictures drawn and ${frames} frames asked for`;
}
