import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { inject } from 'vitest';
import { launch } from './chromium.ts';
import './provided.ts';

let browser: Promise<Browser> | undefined;

export interface Opened {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Everything the page complained about: page errors and console errors. */
  readonly complaints: string[];
  /** Paths the page asked the server for, in order. */
  readonly requests: string[];
  close(): Promise<void>;
}

/** A fresh browser profile at the app's first screen. */
export async function openApp(
  options: BrowserContextOptions = {},
  hash = '',
  url = inject('appUrl'),
): Promise<Opened> {
  browser ??= launch(inject('chromium'));
  const context = await (await browser).newContext({ viewport: { width: 1440, height: 900 }, ...options });
  const page = await context.newPage();
  const complaints: string[] = [];
  const requests: string[] = [];
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  page.on('request', (request) => requests.push(new URL(request.url()).pathname));
  await page.goto(url + hash);
  return { page, context, complaints, requests, close: () => context.close() };
}

export async function closeBrowser(): Promise<void> {
  await (await browser)?.close();
  browser = undefined;
}
