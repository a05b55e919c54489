import { describe, expect, it } from 'vitest';
import type { Observation } from '../../src/bench/observation.ts';
import { caption, NOTHING_TOLD } from '../../src/sound/captions.ts';
import { humming, QUIET, withStrip } from './bench.ts';

/** All captions of a run of observations. */
function captions(run: readonly Observation[]): string[] {
  let told = NOTHING_TOLD;
  let before: Observation | null = null;
  return run.flatMap((seen) => {
    const said = caption(told, before, seen);
    told = said.told;
    before = seen;
    return said.lines;
  });
}

describe('captions', () => {
  it('say when the hum starts, swells, turns harsh and stops', () => {
    expect(captions([QUIET, humming(11, 2), humming(14, 3), humming(17, 7), humming(11, 2), QUIET])).toEqual([
      'A switch clicks',
      'The growler hums',
      'The growler hums louder',
      'The hum turns into a harsh growl',
      'The growl drops to a hum',
      'A switch clicks',
      'The hum stops',
    ]);
  });

  it('follow a slow change that no single step would show', () => {
    const slow = [11, 12, 13, 14, 15].map((level) => humming(level, 2));
    expect(captions(slow)).toEqual([
      'The growler hums',
      'The growler hums louder',
      'The growler hums louder',
    ]);
  });

  it('say nothing again and again while nothing changes, and do not chatter about the threshold', () => {
    expect(captions([humming(11), humming(11), humming(12), humming(11), humming(12)])).toHaveLength(1);
    expect(captions([4, 5, 4, 5, 4].map((harshness) => humming(11, harshness)))).toEqual([
      'The growler hums',
      'The hum turns into a harsh growl',
    ]);
  });

  it('say what the strip does', () => {
    const on = humming(11);
    expect(captions([on, withStrip(on, 1, 1), withStrip(on, 2, 4), withStrip(on, 4, 8), on])).toEqual([
      'The growler hums',
      'The strip buzzes faintly',
      'The strip buzzes harder',
      'The strip slaps on to the iron',
      'The strip rattles on the iron',
      'The strip falls silent',
    ]);
  });

  it('name every single sound in words', () => {
    const on = humming(11);
    expect(captions([on, { ...on, supply: 'cutOut', hum: { ...on.hum, level: 0 } }])).toContain(
      'The cut-out opens with a clack',
    );
  });
});
