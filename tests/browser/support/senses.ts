import type { Page } from 'playwright-core';

/** What the page says eyes and ears get: the plain-words twin of the picture. */
export class Senses {
  readonly page: Page;
  constructor(page: Page) {
    this.page = page;
  }

  async words(): Promise<string> {
    return (await this.page.locator('.sense-seen').textContent()) ?? '';
  }

  /** Waits until the words fit. */
  async until(fits: RegExp, timeoutMs = 15_000): Promise<string> {
    await this.page.waitForFunction(
      ([source, flags]) =>
        new RegExp(source as string, flags as string).test(
          document.querySelector('.sense-seen')?.textContent ?? '',
        ),
      [fits.source, fits.flags],
      { timeout: timeoutMs, polling: 60 },
    );
    return this.words();
  }

  /** The current the needle shows once it rests, A, read to the nearer stroke, as a person would write it down. */
  async needle(): Promise<number> {
    await this.page.waitForTimeout(350);
    const words = await this.until(/Needle (?!moving)/);
    if (/Needle at zero/.test(words)) return 0;
    const crowded = /off zero but below (\d+(?:\.\d+)?)/.exec(words);
    if (crowded) return Number(crowded[1]) / 2;
    const halfway = /halfway between (\d+(?:\.\d+)?) and (\d+(?:\.\d+)?)/.exec(words);
    if (halfway) return (Number(halfway[1]) + Number(halfway[2])) / 2;
    const read = /(?:nearer|Needle on|Needle at) (\d+(?:\.\d+)?)/.exec(words);
    if (!read) throw new Error(`No reading of the needle in: ${words}`);
    return Number(read[1]);
  }

  /** Bars from the chalk of an ammeter or lamp probe; 0 is the chalked bar. */
  async countUnder(lead: string): Promise<number> {
    const words = await this.words();
    const at = new RegExp(`${lead} on (?:the chalked|segment (\\d+) on from the chalk|bar (\\d+) on)`).exec(
      words,
    );
    if (!at) throw new Error(`${lead} is on no bar that can be counted: ${words}`);
    return Number(at[1] ?? at[2] ?? 0);
  }
}
