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

/** A file by its path, or one made up here. */
export type Handed = string | { readonly name: string; readonly mimeType: string; readonly buffer: Buffer };

/** Presses what asks for a file, and gives it one. */
export async function giveFile(page: Page, button: Locator, file: Handed): Promise<void> {
  const asked = page.waitForEvent('filechooser');
  await button.click();
  await (await asked).setFiles(file);
}

/** What is kept or written in a file of that name. */
export function jsonFile(content: unknown, name: string): Handed {
  const text = typeof content === 'string' ? content : JSON.stringify(content);
  return { name, mimeType: 'application/json', buffer: Buffer.from(text) };
}
