import { chartCellsXml } from './chart-cells.ts';
import type { NewAxis, NewChart, NewSeries } from './new-chart.ts';
import type { NewWorkbook } from './new-workbook.ts';
import { CHART, DECLARATION, DRAWING, OFFICE_LINKS } from '../parts/namespaces.ts';
import { escapeXml } from '../xml/xml-text.ts';

/** Series colours that stay apart in grey and for the colour-blind (after Okabe and Ito, 2008; from memory). */
const COLORS = ['#0072B2', '#E69F00', '#009E73', '#CC79A7', '#56B4E9', '#D55E00', '#6E6E6E'];

/** Beyond so many points, rings on a line would hide it. */
const MOST_MARKED = 40;

/** One chart part, with the numbers it draws cached so that it shows before any recalculation. */
export function chartXml(chart: NewChart, book: NewWorkbook): string {
  const legend =
    chart.legend ?? (chart.series.length > 1 || chart.kind === 'doughnut' ? 'bottom' : 'none');
  return (
    `${DECLARATION}<c:chartSpace xmlns:c="${CHART}" xmlns:a="${DRAWING}" xmlns:r="${OFFICE_LINKS}"><c:roundedCorners val="0"/>` +
    `<c:chart>${titleXml(chart.title, 1400)}<c:autoTitleDeleted val="0"/>` +
    `<c:plotArea><c:layout/>${plotXml(chart, book)}</c:plotArea>` +
    `${legend === 'none' ? '' : `<c:legend><c:legendPos val="${legend === 'right' ? 'r' : 'b'}"/><c:overlay val="0"/></c:legend>`}` +
    '<c:plotVisOnly val="0"/><c:dispBlanksAs val="gap"/></c:chart></c:chartSpace>'
  );
}

function plotXml(chart: NewChart, book: NewWorkbook): string {
  const series = chart.series.map((each, index) => seriesXml(chart, each, index, book)).join('');
  const axes = '<c:axId val="1"/><c:axId val="2"/>';
  switch (chart.kind) {
    case 'column':
    case 'bar': {
      const grouping = chart.stacked ? 'stacked' : 'clustered';
      const overlap = chart.stacked ? '<c:overlap val="100"/>' : '';
      const lies = chart.kind === 'bar';
      return `<c:barChart><c:barDir val="${lies ? 'bar' : 'col'}"/><c:grouping val="${grouping}"/><c:varyColors val="0"/>${series}<c:gapWidth val="60"/>${overlap}${axes}</c:barChart>${axesXml(chart, lies)}`;
    }
    case 'line':
      return `<c:lineChart><c:grouping val="${chart.stacked ? 'stacked' : 'standard'}"/><c:varyColors val="0"/>${series}<c:marker val="1"/>${axes}</c:lineChart>${axesXml(chart, false)}`;
    case 'scatter':
      return `<c:scatterChart><c:scatterStyle val="lineMarker"/><c:varyColors val="0"/>${series}${axes}</c:scatterChart>${axesXml(chart, false)}`;
    case 'doughnut':
      return `<c:doughnutChart><c:varyColors val="1"/>${series}<c:firstSliceAng val="0"/><c:holeSize val="55"/></c:doughnutChart>`;
  }
}

function seriesXml(chart: NewChart, series: NewSeries, index: number, book: NewWorkbook): string {
  const color = series.color ?? COLORS[index % COLORS.length] ?? '#0072B2';
  const head =
    `<c:ser><c:idx val="${index}"/><c:order val="${index}"/>` +
    `<c:tx><c:v>${escapeXml(series.name)}</c:v></c:tx>${lookXml(chart, color)}`;
  const categories = chartCellsXml(
    book,
    series.categories,
    chart.kind === 'scatter' ? 'number' : 'text',
  );
  const values = chartCellsXml(book, series.values, 'number');
  if (chart.kind === 'scatter') {
    return `${head}<c:xVal>${categories}</c:xVal><c:yVal>${values}</c:yVal><c:smooth val="0"/></c:ser>`;
  }
  const end = chart.kind === 'line' ? '<c:smooth val="0"/>' : '';
  return `${head}<c:cat>${categories}</c:cat><c:val>${values}</c:val>${end}</c:ser>`;
}

function lookXml(chart: NewChart, color: string): string {
  const paint = fillXml(color);
  switch (chart.kind) {
    case 'column':
    case 'bar':
      return `<c:spPr>${paint}</c:spPr><c:invertIfNegative val="0"/>`;
    case 'line':
    case 'scatter': {
      const drawn = chart.kind === 'line' || chart.lines;
      const line = drawn ? `<a:ln w="28575">${paint}</a:ln>` : '<a:ln w="19050"><a:noFill/></a:ln>';
      const marker =
        pointCount(chart) > MOST_MARKED
          ? '<c:symbol val="none"/>'
          : `<c:symbol val="circle"/><c:size val="5"/><c:spPr>${paint}</c:spPr>`;
      return `<c:spPr>${line}</c:spPr><c:marker>${marker}</c:marker>`;
    }
    case 'doughnut':
      return COLORS.slice(0, pointCount(chart))
        .map(
          (each, point) =>
            `<c:dPt><c:idx val="${point}"/><c:bubble3D val="0"/><c:spPr>${fillXml(each)}</c:spPr></c:dPt>`,
        )
        .join('');
  }
}

function pointCount({ series }: NewChart): number {
  const range = series[0]?.values.range;
  return range ? range.endRow - range.startRow + range.endColumn - range.startColumn + 1 : 0;
}

function fillXml(color: string): string {
  return `<a:solidFill><a:srgbClr val="${color.slice(1).toUpperCase()}"/></a:solidFill>`;
}

/** The two axes; in a lying bar chart the categories run down the side, first on top. */
function axesXml(chart: NewChart, lies: boolean): string {
  const categoryAxis = lies ? chart.verticalAxis : chart.horizontalAxis;
  const valueAxis = lies ? chart.horizontalAxis : chart.verticalAxis;
  const [categorySide, valueSide] = lies ? (['l', 'b'] as const) : (['b', 'l'] as const);
  if (chart.kind === 'scatter') {
    return (
      axisXml('valAx', 1, 2, 'b', categoryAxis, '<c:crossBetween val="midCat"/>') +
      axisXml('valAx', 2, 1, 'l', valueAxis, '<c:crossBetween val="midCat"/>')
    );
  }
  return (
    axisXml('catAx', 1, 2, categorySide, categoryAxis, '<c:noMultiLvlLbl val="0"/>', lies) +
    axisXml('valAx', 2, 1, valueSide, valueAxis, '<c:crossBetween val="between"/>', lies)
  );
}

function axisXml(
  element: 'catAx' | 'valAx',
  id: number,
  crosses: number,
  side: 'b' | 'l',
  axis: NewAxis = {},
  end = '',
  lies = false,
): string {
  const minimum = axis.minimum === undefined ? '' : `<c:min val="${axis.minimum}"/>`;
  const grid =
    element === 'valAx' && side === 'l'
      ? `<c:majorGridlines><c:spPr><a:ln w="9525">${fillXml('#D9D9D9')}</a:ln></c:spPr></c:majorGridlines>`
      : '';
  const format = `<c:numFmt formatCode="${escapeXml(axis.numberFormat ?? 'General')}" sourceLinked="0"/>`;
  return (
    `<c:${element}><c:axId val="${id}"/><c:scaling><c:orientation val="${lies && element === 'catAx' ? 'maxMin' : 'minMax'}"/>${minimum}</c:scaling>` +
    `<c:delete val="0"/><c:axPos val="${side}"/>${grid}${axis.title ? titleXml(axis.title, 1000) : ''}${format}` +
    `<c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="${element === 'catAx' ? 'low' : 'nextTo'}"/>` +
    `<c:crossAx val="${crosses}"/><c:crosses val="${lies && element === 'valAx' ? 'max' : 'autoZero'}"/>${end}</c:${element}>`
  );
}

function titleXml(text: string, size: number): string {
  return (
    `<c:title><c:tx><c:rich><a:bodyPr/><a:p><a:pPr><a:defRPr sz="${size}" b="0"/></a:pPr>` +
    `<a:r><a:rPr lang="en" sz="${size}" b="0"/><a:t>${escapeXml(text)}</a:t></a:r></a:p></c:rich></c:tx><c:overlay val="0"/></c:title>`
  );
}
