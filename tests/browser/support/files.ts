import type { Locator, Page } from 'playwright-core';

/** Presses something that hands a file to the browser, and reads the file. */
export async function savedBy(page: Page, button: Locator): Promise<{ name: string; text: string }> {
  const download = page.waitForEvent('download');
  await button.click();
  const saved = await download;
  const chunks: Buffer[] = [];
  for await (const chunk of await saved.createReadStream()) chunks.push(chunk as Buffer);
  return { name: saved.suggestedFilename(), text: Buffer.concat(chunks).toString('utf8') };
}

/** Hands a file over through the page's own picker. */
export async function handOver(page: Page, content: unknown, name = 'file.json'): Promise<void> {
  const text = typeof content === 'string' ? content : JSON.stringify(content);
  const file = { name, mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.locator('input[type=file]').first().setInputFiles(file);
}
