import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

interface AxeFinding {
  readonly id: string;
  readonly nodes: readonly { readonly html: string }[];
}

const axe = readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/**
 * What keeps someone from reading, reaching or pressing the page shown: axe's findings, controls
 * without a name, text cut off or sticking out to the side, targets too small.
 */
export async function accessFindings(page: Page): Promise<readonly string[]> {
  return [
    ...(await axeFindings(page, await axe)),
    ...(await withoutName(page)),
    ...(await page.evaluate(tooWideOrSmall)),
  ];
}

async function axeFindings(page: Page, axe: string): Promise<string[]> {
  // The pane's policy allows no script from text; the page's own tool door does.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe);
  return page.evaluate(async () => {
    const { violations } = await (
      window as unknown as { axe: { run(options: object): Promise<{ violations: AxeFinding[] }> } }
    ).axe.run({ resultTypes: ['violations'] });
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' | ')}`);
  });
}

/** Controls that a screen reader would have no name for. */
async function withoutName(page: Page): Promise<string[]> {
  const client = await page.context().newCDPSession(page);
  const { nodes } = await client.send('Accessibility.getFullAXTree');
  await client.detach();
  const roles = ['button', 'checkbox', 'textbox', 'combobox', 'Date', 'DisclosureTriangle', 'tab'];
  return nodes
    .filter((node) => roles.includes(String(node.role?.value)) && !node.ignored)
    .filter((node) => String(node.name?.value ?? '').trim() === '')
    .map((node) => `no name: ${String(node.role?.value)}`);
}

/** Runs in the page: what is cut off or sticks out to the side, and targets under 24 px (WCAG 2.2, 2.5.8). */
function tooWideOrSmall(): string[] {
  const found: string[] = [];
  const overflow = document.documentElement.scrollWidth - innerWidth;
  if (overflow > 0) found.push(`scrolls sideways by ${String(overflow)} px`);
  const targets = 'a, button, fluent-button, select, input, textarea, summary, .check';
  const visit = (root: Document | ShadowRoot): void => {
    for (const element of root.querySelectorAll('*')) {
      const { right, width, height } = element.getBoundingClientRect();
      const shown = element.outerHTML.slice(0, 80);
      if (width > 1 && right > innerWidth + 0.5) found.push(`wide: ${shown}`);
      const hides = getComputedStyle(element).overflowX !== 'visible' && width > 1;
      const isText = !element.matches('select, input, textarea');
      if (hides && isText && element.scrollWidth > element.clientWidth + 1)
        found.push(`cut off: ${shown}`);
      const isSmall = width < 24 || height < 24;
      if (isSmall && element.matches(targets) && element.checkVisibility())
        found.push(`small: ${shown}`);
      if (element.shadowRoot && !element.localName.startsWith('fluent-')) visit(element.shadowRoot);
    }
  };
  visit(document);
  return found;
}

/** Presses Tab until the control of that id has the focus; each stop on the way must show that it has it. */
export async function tabTo(page: Page, id: string): Promise<void> {
  for (let stops = 0; stops < 60; stops += 1) {
    await page.keyboard.press('Tab');
    const stop = await page.evaluate(() => {
      let active = document.activeElement;
      while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
      if (active === null || active === document.body) return { id: '', isSeen: true };
      const looks = [getComputedStyle(active), getComputedStyle(active, '::after')];
      const isSeen = looks.some(
        ({ outlineStyle, boxShadow, borderTopColor, content }, index) =>
          outlineStyle !== 'none' ||
          boxShadow !== 'none' ||
          (index === 1 && content !== 'none' && borderTopColor !== 'rgba(0, 0, 0, 0)'),
      );
      return { id: active.id, isSeen };
    });
    expect(stop).toMatchObject({ isSeen: true });
    if (stop.id === id) return;
  }
  throw new Error(`Tab never came to ${id}.`);
}
