import type { Browser, BrowserContext, Page } from 'playwright-core';
import { Hand } from '../../browser/support/hand.ts';
import { quantile } from './trace.ts';

export interface StartSpeed {
  /** From asking for the address, in an empty profile, until a lifted probe is in the log on disk, ms. */
  readonly startMs: readonly number[];
  readonly medianMs: number;
  /** A page with nothing on it, until a press is on disk, the same way, ms. */
  readonly witnessMs: number;
  readonly throttled: number;
}

const JOB = 'q-7a16';
const RUNS = 5;
/** How many times slower the processor is made. */
const THROTTLED = 4;

/** Notes when a write of a lifted probe, or of the witness's press, has reached the disk. */
function noteWrites(): void {
  const noted = globalThis as { liftedMs?: number };
  for (const way of ['add', 'put'] as const) {
    const real = IDBObjectStore.prototype[way];
    IDBObjectStore.prototype[way] = function (this: IDBObjectStore, value: unknown, key?: IDBValidKey) {
      const type = (value as { action?: { type?: string } })?.action?.type;
      if (type === 'lead.take' && noted.liftedMs === undefined)
        this.transaction.addEventListener('complete', () => {
          noted.liftedMs ??= performance.now();
        });
      return key === undefined ? real.call(this, value) : real.call(this, value, key);
    };
  }
}

/** Presses the card and the way to the bench as soon as they are there: no one's hand is being measured. */
function goToBench(job: string): void {
  const wanted = [`a[href="#/job/${job}"]`, 'main .button-main'];
  const look = new MutationObserver(() => {
    const next = wanted[0] === undefined ? null : document.querySelector<HTMLElement>(wanted[0]);
    if (!next) return;
    wanted.shift();
    next.click();
    if (wanted.length === 0) look.disconnect();
  });
  look.observe(document, { childList: true, subtree: true });
}

const WITNESS = `<!doctype html><title>witness</title><button id="b" style="width:200px;height:200px">press</button><script>
const opening = indexedDB.open('witness', 1);
opening.onupgradeneeded = () => opening.result.createObjectStore('entries', { autoIncrement: true });
opening.onsuccess = () => {
  document.getElementById('b').addEventListener('pointerdown', () =>
    opening.result.transaction('entries', 'readwrite').objectStore('entries').add({ action: { type: 'lead.take' } }));
  globalThis.ready = true;
};
</script>`;

/** Median of five cold starts and of the witness between them: what else the machine does falls on both. */
export async function startSpeed(browser: Browser, url: string): Promise<StartSpeed> {
  const startMs: number[] = [];
  const witnessMs: number[] = [];
  await once(browser, url, liftProbe);
  for (let run = 0; run < RUNS; run++) {
    startMs.push(await once(browser, url, liftProbe));
    witnessMs.push(await once(browser, `${url}witness.html`, pressWitness));
  }
  return {
    startMs,
    medianMs: quantile(startMs, 0.5),
    witnessMs: quantile(witnessMs, 0.5),
    throttled: THROTTLED,
  };
}

async function once(browser: Browser, url: string, work: (page: Page) => Promise<void>): Promise<number> {
  const context: BrowserContext = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  await context.route('**/witness.html', (route) =>
    route.fulfill({ contentType: 'text/html', body: WITNESS }),
  );
  await context.addInitScript(noteWrites);
  await context.addInitScript(goToBench, JOB);
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: THROTTLED });
  await page.goto(url, { waitUntil: 'commit' });
  await work(page);
  const noted = await page.waitForFunction(() => (globalThis as { liftedMs?: number }).liftedMs, undefined, {
    polling: 20,
    timeout: 60_000,
  });
  const ms = await noted.jsonValue();
  await context.close();
  return ms ?? Number.NaN;
}

async function liftProbe(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector('.bench-picture canvas') !== null, undefined, {
    polling: 10,
    timeout: 60_000,
  });
  const hand = await new Hand(page).ready();
  const { x, y } = await hand.at('lead:ammeter.1:handle');
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x - 20, y - 30);
}

async function pressWitness(page: Page): Promise<void> {
  await page.waitForFunction(() => 'ready' in globalThis, undefined, { polling: 'raf' });
  await page.mouse.move(60, 60);
  await page.mouse.down();
}
