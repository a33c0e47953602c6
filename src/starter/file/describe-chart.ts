import type { NewChart } from '../../xlsx/write/new-chart.ts';
import type { StarterChart } from '../cells/sheet.ts';
import { seriesColors } from './starter-looks.ts';

const kinds = { curve: 'scatter', bars: 'bar', columns: 'column', lines: 'line' } as const;

/** A starter sheet's chart in the words of the xlsx writer. */
export function describeChart(sheet: string, chart: StarterChart): NewChart {
  const { kind, title, description, place, series, across, up } = chart;
  const lies = kind === 'bars';
  return {
    kind: kinds[kind],
    ...(kind === 'curve' ? { lines: true } : {}),
    title,
    description,
    place,
    series: series.map(({ name, along, values }, index) => ({
      name,
      categories: { sheet, range: along },
      values: { sheet, range: values },
      color: seriesColors[index % seriesColors.length] ?? '#000000',
    })),
    horizontalAxis: { title: across, ...(lies ? { numberFormat: '0' } : {}) },
    verticalAxis: { title: up, ...(lies ? {} : { numberFormat: '0' }) },
  };
}
