import type { Page } from 'playwright-core';

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
