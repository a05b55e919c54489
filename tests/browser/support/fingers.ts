import type { CDPSession, Page } from 'playwright-core';
import type { Hand } from './hand.ts';

interface Touch {
  readonly id: number;
  x: number;
  y: number;
}

/** Where the finger is when the tip is there: the bench carries tips above the finger, so that it hides nothing. */
export function below(tip: { readonly x: number; readonly y: number }): { x: number; y: number } {
  return { x: tip.x + 26, y: tip.y + 40 };
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

  async tap(x: number, y: number): Promise<void> {
    await this.press(1, x, y);
    await this.lift(1);
  }

  /** One finger takes a lead by its handle and brings its tip on to something. */
  async carry(hand: Hand, from: string, to: string, view?: string): Promise<void> {
    const a = await hand.at(from);
    await this.press(1, a.x, a.y);
    await this.move({ 1: { x: a.x - 9, y: a.y - 9 } }, 2);
    await this.move({ 1: below(await hand.at(to, view)) });
    await this.lift(1);
  }

  /** One finger takes a thing to another and lets go. */
  async drag(hand: Hand, from: string, to: string): Promise<void> {
    const a = await hand.at(from);
    await this.press(1, a.x, a.y);
    await this.move({ 1: { x: a.x + 9, y: a.y - 9 } }, 2);
    await this.move({ 1: await hand.at(to) });
    await this.lift(1);
  }
}
