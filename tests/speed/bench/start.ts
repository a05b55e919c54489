import type { Browser, BrowserContext, CDPSession } from 'playwright-core';
import { quantile } from './trace.ts';

/** From asking for the address, in an empty profile, ms. */
export interface Start {
  /** Until a lifted probe is in the log and noted where it outlives the page. */
  readonly loggedMs: number;
  /** Until the database has said that it is on disk. */
  readonly diskMs: number;
}

export interface StartSpeed {
  readonly starts: readonly Start[];
  readonly median: Start;
  /** A page with nothing on it but a button, until a press is kept the same way. */
  readonly witness: Start;
  readonly throttled: number;
}

const JOB = 'q-7a16';
const PROBE = 'lead:ammeter.1:handle';
const RUNS = 5;
/** How many times slower the processor is made. */
const THROTTLED = 4;

/** What the page tells us, through a channel that puts nothing of its own on the page. */
const CHANNEL = 'tellStart';

/** Tells when a lifted probe, or the witness's press, has been noted, and when its write has reached the disk. */
function tellWrites(channel: string): void {
  const tell = (globalThis as unknown as Record<string, (text: string) => void>)[channel];
  const note = Storage.prototype.setItem;
  Storage.prototype.setItem = function (this: Storage, key: string, value: string) {
    note.call(this, key, value);
    if (value.includes('"lead.take"')) tell?.(JSON.stringify({ loggedMs: performance.now() }));
  };
  for (const way of ['add', 'put'] as const) {
    const real = IDBObjectStore.prototype[way];
    IDBObjectStore.prototype[way] = function (this: IDBObjectStore, value: unknown, key?: IDBValidKey) {
      const type = (value as { action?: { type?: string } })?.action?.type;
      if (type === 'lead.take')
        this.transaction.addEventListener('complete', () =>
          tell?.(JSON.stringify({ diskMs: performance.now() })),
        );
      return key === undefined ? real.call(this, value) : real.call(this, value, key);
    };
  }
}

/**
 * Presses the card and the way to the bench as soon as each has been shown, and tells where the probe hangs as soon as
 * the picture can be touched: no one's hand is being measured.
 */
function goToBench([channel, job, probe]: readonly [string, string, string]): void {
  const tell = (globalThis as unknown as Record<string, (text: string) => void>)[channel];
  // Asked with every picture, the page would draw more of them.
  const EVERY_MS = 15;
  const wanted = [`a[href="#/job/${job}"]`, 'main .button-main'];
  let soon = false;
  const look = new MutationObserver(() => {
    if (soon || !found()) return;
    soon = true;
    requestAnimationFrame(() => setTimeout(press));
  });
  function found(): HTMLElement | null {
    return wanted[0] === undefined ? null : document.querySelector<HTMLElement>(wanted[0]);
  }
  function press(): void {
    soon = false;
    const shown = found();
    if (!shown) return;
    wanted.shift();
    shown.click();
    if (wanted.length > 0) return;
    look.disconnect();
    setTimeout(seek, EVERY_MS);
  }
  look.observe(document, { childList: true, subtree: true });
  function seek(): void {
    const picture = document.querySelector<Picture>('.bench-picture');
    const place = picture?.places?.().find(({ id }) => id === probe);
    if (!picture || !place) return void setTimeout(seek, EVERY_MS);
    const box = picture.getBoundingClientRect();
    tell?.(JSON.stringify({ at: { x: box.x + place.x, y: box.y + place.y } }));
  }
  interface Picture extends HTMLElement {
    places?(): readonly { readonly id: string; readonly x: number; readonly y: number }[];
  }
}

const WITNESS = `<!doctype html><title>witness</title><button id="b" style="width:200px;height:200px">press</button><script>
const opening = indexedDB.open('witness', 1);
opening.onupgradeneeded = () => opening.result.createObjectStore('entries', { autoIncrement: true });
opening.onsuccess = () => {
  document.getElementById('b').addEventListener('pointerdown', () => {
    const entry = { action: { type: 'lead.take' } };
    localStorage.setItem('journal', JSON.stringify(entry));
    opening.result.transaction('entries', 'readwrite').objectStore('entries').add(entry);
  });
  ${CHANNEL}(JSON.stringify({ at: { x: 60, y: 60 } }));
};
</script>`;

/** Median of five cold starts and of the witness between them: what else the machine does falls on both. */
export async function startSpeed(browser: Browser, url: string): Promise<StartSpeed> {
  const starts: Start[] = [];
  const witnesses: Start[] = [];
  await once(browser, url);
  for (let run = 0; run < RUNS; run++) {
    starts.push(await once(browser, url));
    witnesses.push(await once(browser, `${url}witness.html`));
  }
  return { starts, median: medianOf(starts), witness: medianOf(witnesses), throttled: THROTTLED };
}

function medianOf(starts: readonly Start[]): Start {
  const of = (which: keyof Start) =>
    quantile(
      starts.map((start) => start[which]),
      0.5,
    );
  return { loggedMs: of('loggedMs'), diskMs: of('diskMs') };
}

type Told = { readonly at: { readonly x: number; readonly y: number } } | Partial<Start>;

/**
 * One cold start. The page is watched and pressed without the test library's own script in it, which would take a
 * good part of what is measured.
 */
async function once(browser: Browser, url: string): Promise<Start> {
  const context: BrowserContext = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  await context.route('**/witness.html', (route) =>
    route.fulfill({ contentType: 'text/html', body: WITNESS }),
  );
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Runtime.enable');
  await session.send('Runtime.addBinding', { name: CHANNEL });
  // The runner of this script keeps the names of functions that way, also of those that go into the page.
  await context.addInitScript('globalThis.__name = (named) => named');
  await context.addInitScript(tellWrites, CHANNEL);
  await context.addInitScript(goToBench, [CHANNEL, JOB, PROBE] as const);
  await session.send('Emulation.setCPUThrottlingRate', { rate: THROTTLED });
  const kept = new Promise<Start>((done, failed) => {
    let start: Partial<Start> = {};
    setTimeout(() => failed(new Error(`No probe was lifted on ${url} within a minute.`)), 60_000).unref();
    session.on('Runtime.bindingCalled', ({ payload }) => {
      const told = JSON.parse(payload) as Told;
      if ('at' in told) lift(session, told.at).catch(failed);
      else start = { ...start, ...told };
      const { loggedMs, diskMs } = start;
      if (loggedMs !== undefined && diskMs !== undefined) done({ loggedMs, diskMs });
    });
  });
  await page.goto(url, { waitUntil: 'commit' });
  const start = await kept;
  await context.close();
  return start;
}

/** Presses and draws away, as a hand does. */
async function lift(
  session: CDPSession,
  { x, y }: { readonly x: number; readonly y: number },
): Promise<void> {
  const mouse = (type: 'mouseMoved' | 'mousePressed', dx: number, dy: number, buttons: number) =>
    session.send('Input.dispatchMouseEvent', {
      type,
      x: x + dx,
      y: y + dy,
      button: buttons ? 'left' : 'none',
      buttons,
      clickCount: type === 'mousePressed' ? 1 : 0,
    });
  await mouse('mouseMoved', 0, 0, 0);
  await mouse('mousePressed', 0, 0, 1);
  await mouse('mouseMoved', -20, -30, 1);
}
