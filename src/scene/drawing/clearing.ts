import { Ticker } from 'pixi.js';

/** Left to itself the library asks for one frame after another, only to look what it could clear away. */
export function clearOnlyWhenAsked(): void {
  Ticker.system.autoStart = false;
  Ticker.system.stop();
}

/** Clears away what has not been drawn for a while; asked for beside a picture, at any rate often enough. */
export function clearAway(nowMs: number): void {
  Ticker.system.update(nowMs);
}
