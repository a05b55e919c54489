import type { CDPSession, Page } from 'playwright-core';
import type { Hand } from './hand.ts';

interface Touch {
  readonly id: number;
  x: number;
  y: number;
}

/** Fingers on a touch screen, each down until it is lifted. */
export class Fingers {
  private readonly session: CDPSession;
  private readonly page: Page;
  private readonly down: Touch[] = [];

  private constructor(page: Page, session: CDPSession) {
    this.page = page;
    this.session = session;
  }

  static async of(page: Page): Promise<Fingers> {
    return new Fingers(page, await page.context().newCDPSession(page));
  }

  private async tell(type: 'touchStart' | 'touchMove' | 'touchEnd'): Promise<void> {
    await this.session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: this.down.map(({ id, x, y }) => ({ id, x, y, radiusX: 6, radiusY: 6, force: 1 })),
    });
  }

  async press(id: number, x: number, y: number): Promise<void> {
    this.down.push({ id, x, y });
    await this.tell('touchStart');
  }

  /** Moves fingers at the same time, in small steps. @param to goals by finger */
  async move(to: Readonly<Record<number, { x: number; y: number }>>, steps = 6): Promise<void> {
    const from = this.down.map((touch) => ({ ...touch }));
    for (let step = 1; step <= steps; step++) {
      for (const [i, touch] of this.down.entries()) {
        const goal = to[touch.id];
        const start = from[i]!;
        if (!goal) continue;
        touch.x = start.x + ((goal.x - start.x) * step) / steps;
        touch.y = start.y + ((goal.y - start.y) * step) / steps;
      }
      await this.tell('touchMove');
      await this.page.waitForTimeout(16);
    }
  }

  async lift(id: number): Promise<void> {
    const at = this.down.findIndex((touch) => touch.id === id);
    if (at >= 0) this.down.splice(at, 1);
    // Only the last finger ends the touch; one of several is lifted by leaving it out.
    await this.tell(this.down.length === 0 ? 'touchEnd' : 'touchMove');
  }

  async tap(x: number, y: number, id = 1): Promise<void> {
    await this.press(id, x, y);
    await this.lift(id);
  }

  /** One finger takes a thing to another and lets go. */
  async drag(hand: Hand, from: string, to: string, view?: string, id = 1): Promise<void> {
    const a = await hand.at(from);
    await this.press(id, a.x, a.y);
    await this.move({ [id]: { x: a.x + 9, y: a.y - 9 } }, 2);
    await this.move({ [id]: await hand.at(to, view) });
    await this.lift(id);
  }
}
