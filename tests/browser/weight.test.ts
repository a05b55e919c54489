import { afterAll, describe, expect, it } from 'vitest';
import { closeBrowser } from './support/page.ts';
import { openBench } from './support/screens.ts';
import { built, entryFiles, gzipped, withImports } from './support/weight.ts';

afterAll(closeBrowser);

/** Script a school's line must carry before anybody can work, bytes. */
const MOST_BYTES = 260_000;

const scene = () => withImports([...entryFiles(), built('scene'), built('paintingWorker')]);

describe('script loaded before the bench can be used', () => {
  it.each(['canvas', 'webgl'])('keeps within its band when the bench is drawn by %s', (drawing) => {
    const files = withImports([...scene(), built(drawing)]);
    const bytes = gzipped(files);
    console.log(
      `Bench drawn by ${drawing}: ${(bytes / 1000).toFixed(1)} kB of script in ${files.length} files.`,
    );
    expect(bytes).toBeGreaterThan(150_000);
    expect(bytes).toBeLessThanOrEqual(MOST_BYTES);
  });

  it('is what a browser really asks for, and no more', async () => {
    const { hand, requests, close } = await openBench('q-91d2');
    const asked = requests.filter((path) => path.endsWith('.js')).map((path) => path.split('/').at(-1)!);
    expect(await hand.within()).toContain('lead:lamp.1:handle');
    const counted = withImports([...scene(), built('canvas')]);
    expect([...new Set(asked)].filter((file) => file !== 'offline-worker.js').sort()).toEqual(counted);
    await close();
  });
});
