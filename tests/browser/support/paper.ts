import type { Locator, Page } from 'playwright-core';

export interface Decision {
  readonly condition: RegExp;
  readonly where?: RegExp;
  readonly count?: number;
  readonly next: RegExp;
  readonly because: string;
}

/** Writes the verdict and hands the job in, through the form. */
export async function decideAndHandIn(page: Page, decision: Decision): Promise<void> {
  await page.getByRole('tab', { name: 'Verdict' }).click();
  const condition = page.getByLabel('Condition');
  await condition.waitFor();
  const label = (await condition.locator('option').allTextContents()).find((text) =>
    decision.condition.test(text),
  );
  await condition.selectOption({ label: label ?? '' });
  if (decision.where) await page.getByLabel(decision.where).check();
  if (decision.count !== undefined)
    await page.getByLabel(/Counted from the chalk/).fill(String(decision.count));
  await page.getByLabel(decision.next).check();
  await page.getByLabel('Because').fill(decision.because);
  await page.getByRole('button', { name: /Hand the job in/ }).click();
  await page.getByRole('button', { name: 'Hand it in' }).click();
  await page
    .getByRole('heading', { level: 1 })
    .filter({ hasText: /debrief/i })
    .waitFor({ timeout: 30_000 });
}

/** Writes one line on the test sheet. */
export async function writeLine(
  page: Page,
  test: RegExp,
  count: number | null,
  fill: () => Promise<void>,
): Promise<void> {
  await page.getByRole('tab', { name: 'Test sheet' }).click();
  const choice = page.getByLabel('Test', { exact: true });
  const label = (await choice.locator('option').allTextContents()).find((text) => test.test(text));
  await choice.selectOption({ label: label ?? '' });
  if (count !== null) await page.getByLabel('From the chalk').fill(String(count));
  await fill();
  await page.getByRole('button', { name: 'Write the line' }).click();
}

/** Asks from the bench to write down what is there: the place comes with it, the reading is one's own. */
export async function writeDown(page: Page, fill: () => Promise<void>): Promise<void> {
  await page.getByRole('button', { name: 'Write this down' }).click();
  await fill();
  await page.getByRole('button', { name: 'Write the line' }).click();
}

/** The words of something as they are shown: what a style sheet hides is not among them. */
export function shownText(what: Locator): Promise<string> {
  // biome-ignore lint/performance/useDomNodeTextContent: what is hidden must not count
  return what.evaluate((element: HTMLElement) => element.innerText);
}

/** The job record as a printer would get it: its words, and the file. */
export async function printed(page: Page): Promise<{ readonly words: string; readonly pdf: Buffer }> {
  await page.emulateMedia({ media: 'print' });
  const words = await shownText(page.locator('main'));
  const pdf = await page.pdf();
  await page.emulateMedia({ media: 'screen' });
  return { words, pdf };
}
