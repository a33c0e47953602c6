import { describe, expect, it } from 'vitest';
import { usePane, walkTo } from '../pane-steps.ts';

const openPane = usePane();

describe('what the browser tells a screen reader', () => {
  it('names ticks with the amount, and moves to the heading of each step', async () => {
    const page = await openPane();
    await walkTo(page, 'weigh');
    const client = await page.context().newCDPSession(page);
    const { nodes } = await client.send('Accessibility.getFullAXTree');
    const ticks = nodes
      .filter((node) => node.role?.value === 'checkbox')
      .map((node) => node.name?.value);
    const inFocus = nodes.find(
      (node) =>
        node.properties?.some(({ name, value }) => name === 'focused' && value.value === true) &&
        node.role?.value === 'heading',
    );
    expect(ticks).toHaveLength(12);
    expect(ticks[0]).toMatch(/Blue leftover\s+melt this first\s+12 g/u);
    expect(inFocus?.name?.value).toBe('Weigh out');
  });
});
