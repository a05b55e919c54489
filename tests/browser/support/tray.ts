import type { Page } from 'playwright-core';

/** The tray under the picture: a drawer is opened by its name, and what is in it is pressed. */
export class Tray {
  readonly page: Page;
  constructor(page: Page) {
    this.page = page;
  }

  private get region() {
    return this.page.getByRole('region', { name: 'Beside the growler' });
  }

  async open(name: string): Promise<void> {
    const drawer = this.region.getByRole('button', { name, exact: true });
    if ((await drawer.getAttribute('aria-expanded')) !== 'true') await drawer.click();
    await this.settled();
  }

  async close(name: string): Promise<void> {
    await this.region.getByRole('button', { name: `Close: ${name}` }).click();
    await this.settled();
  }

  /** A drawer takes room from the picture: wait until it is drawn anew, so that nothing is pressed where it no longer is. */
  settled(): Promise<void> {
    return this.page.waitForTimeout(400);
  }

  async press(name: RegExp | string): Promise<void> {
    await this.region.getByRole('button', { name }).first().click();
  }

  /** Chooses in a field of the open drawer by the words shown. */
  async choose(field: RegExp, words: RegExp): Promise<void> {
    const choice = this.region.getByLabel(field);
    const label = (await choice.locator('option').allTextContents()).find((text) => words.test(text));
    await choice.selectOption({ label: label ?? `none of ${String(words)}` });
  }

  /** Clip on a place, left there. */
  async clip(name: string, place: RegExp): Promise<void> {
    await this.choose(new RegExp(`^${name} (goes|is)`), place);
    await this.press(new RegExp(`^(Clip on|Move): ${name}`));
  }

  async says(): Promise<string> {
    return (await this.region.locator('.tray-head .group-state').textContent()) ?? '';
  }

  /** Everything that is seen to before power. */
  async prepare(): Promise<void> {
    await this.open('Before power');
    for (const what of PREPARATIONS) await this.press(what);
    await this.close('Before power');
  }
}

const PREPARATIONS = [
  /rings and watch/,
  /eye protection/,
  /floor is dry/,
  /second person/,
  /emergency stop/,
  /supply is protected/,
  /test label/,
  /leads and handles/,
];
