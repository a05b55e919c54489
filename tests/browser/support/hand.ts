import type { Page } from 'playwright-core';

interface Spot {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly view: string;
}

const PICTURE = '.bench-picture';

/** A person with a mouse in front of the canvas: presses, drags and waits, and knows only what lies where. */
export class Hand {
  readonly page: Page;
  constructor(page: Page) {
    this.page = page;
  }

  /** Waits until the picture of the bench hangs and can be touched. */
  async ready(): Promise<this> {
    await this.page.waitForFunction(
      (picture) => {
        const host = document.querySelector(picture) as (Element & { places?: () => unknown[] }) | null;
        return (host?.places?.().length ?? 0) > 0;
      },
      PICTURE,
      { timeout: 60_000 },
    );
    return this;
  }

  private spots(): Promise<Spot[]> {
    return this.page.evaluate((picture) => {
      const host = document.querySelector(picture) as Element & { places(): Spot[] };
      return host.places();
    }, PICTURE);
  }

  /** Ids of everything that can be touched now. */
  async within(view?: string): Promise<string[]> {
    return (await this.spots()).filter((spot) => !view || spot.view === view).map(({ id }) => id);
  }

  /** Middle of a touchable thing in page coordinates; the end-on view when asked for and shown there. */
  async at(id: string, view?: string): Promise<{ x: number; y: number }> {
    const found = (await this.spots()).filter((spot) => spot.id === id);
    const spot = found.find((one) => one.view === view) ?? found[0];
    if (!spot) throw new Error(`Nothing on the bench is called ${id} now.`);
    const box = await this.page.locator(PICTURE).boundingBox();
    return { x: (box?.x ?? 0) + spot.x, y: (box?.y ?? 0) + spot.y };
  }

  async press(id: string, view?: string): Promise<void> {
    const { x, y } = await this.at(id, view);
    await this.page.mouse.click(x, y);
  }

  /** Presses on one thing, moves to another as a hand does, and lets go there. */
  async drag(from: string, to: string, view?: string): Promise<void> {
    const a = await this.at(from);
    await this.page.mouse.move(a.x, a.y);
    await this.page.mouse.down();
    // A target such as the holding stand may only show itself once something is in the hand.
    await this.page.mouse.move(a.x + 6, a.y - 6, { steps: 2 });
    const b = await this.at(to, view);
    await this.page.mouse.move(b.x, b.y, { steps: 6 });
    await this.page.mouse.up();
  }

  async wait(ms: number): Promise<void> {
    await this.page.waitForTimeout(ms);
  }
}
