import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core'), 'utf8');

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** Everything axe finds against WCAG 2.2 A and AA and its own good practice, one line each. */
export async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(on: Document, how: object): Promise<{ violations: Violation[] }> };
    };
    const { violations } = await axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    });
    return violations.map(
      ({ id, nodes }) =>
        `${id}: ${nodes
          .map(({ html }) => html.slice(0, 140))
          .slice(0, 3)
          .join(' | ')}`,
    );
  });
}

/** How far the page can be pushed sideways, px. */
export function spill(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/**
 * Things to press that are less than 24 px wide or high and have another within 24 px of their middle (WCAG 2.5.8);
 * links within a sentence are excepted.
 */
export function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const seen = [
      ...document.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary'),
    ]
      .map((node) => {
        const label =
          node instanceof HTMLInputElement && /radio|checkbox/.test(node.type) ? node.labels?.[0] : null;
        return { node, box: (label ?? node).getBoundingClientRect() };
      })
      .filter(({ node, box }) => box.width > 0 && box.height > 0 && node.checkVisibility());
    const small = seen.filter(({ node, box }) => {
      const inSentence = node.matches('p a, li a, td a') && getComputedStyle(node).display === 'inline';
      return !inSentence && (box.width < 24 || box.height < 24);
    });
    return small
      .filter(({ box }) => {
        const x = box.x + box.width / 2;
        const y = box.y + box.height / 2;
        return seen.some(({ box: other }) => {
          if (other === box) return false;
          const dx = Math.max(other.x - x, 0, x - other.right);
          const dy = Math.max(other.y - y, 0, y - other.bottom);
          return Math.hypot(dx, dy) < 12;
        });
      })
      .map(
        ({ node, box }) =>
          `${Math.round(box.width)}×${Math.round(box.height)} ${node.outerHTML.slice(0, 120)}`,
      );
  });
}

/** Goes through the page with the Tab key; what took the focus and showed nothing of it. */
export async function unseenFocus(page: Page, presses = 25): Promise<string[]> {
  const unseen: string[] = [];
  for (let press = 0; press < presses; press++) {
    await page.keyboard.press('Tab');
    const found = await page.evaluate(() => {
      const at = document.activeElement;
      if (!at || at === document.body) return null;
      const shows = (node: Element, pseudo?: string) => {
        const style = getComputedStyle(node, pseudo);
        return (
          (style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) > 0) || style.boxShadow !== 'none'
        );
      };
      const around = [at, at.parentElement, at.closest('label, li, article')].filter((node) => node !== null);
      return around.some((node) => shows(node) || shows(node, '::after')) ? null : at.outerHTML.slice(0, 120);
    });
    if (found) unseen.push(found);
  }
  return unseen;
}
