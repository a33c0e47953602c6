import type { Mosaic } from '../sheets/mosaic-sheet.ts';

const [slate, amber, foam] = ['Slate', 'Amber', 'Foam'] as const;

/** A lantern in the dark: the tiles of one Lantern Quay bar. */
export const lanternMosaic: Mosaic = {
  pattern: [
    [slate, slate, amber, slate, slate],
    [slate, foam, foam, foam, slate],
    [slate, amber, amber, amber, slate],
    [foam, amber, amber, amber, foam],
    [foam, amber, amber, amber, foam],
    [slate, amber, amber, amber, slate],
    [slate, foam, foam, foam, slate],
    [slate, slate, slate, slate, slate],
  ],
  shades: {
    Slate: { fill: '#4A5B6C', color: '#FFFFFF' },
    Teal: { fill: '#2F7F86', color: '#FFFFFF' },
    Amber: { fill: '#E0A63C', color: '#3A2A08' },
    Driftwood: { fill: '#C2AC91', color: '#3A2E20' },
    Foam: { fill: '#EEF4F2', color: '#3B4A4C' },
    Rockpool: { fill: '#3A6F7C', color: '#FFFFFF' },
    Dusk: { fill: '#98846A', color: '#FFFFFF' },
  },
};
