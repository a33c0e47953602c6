import type { NewChart } from './new-chart.ts';
import { CHART, DECLARATION, DRAWING, OFFICE_LINKS, SHEET_DRAWING } from '../parts/namespaces.ts';
import { escapeXml } from '../xml/xml-text.ts';

/** The drawing part that places a sheet's charts over its cells. */
export function drawingXml(charts: readonly NewChart[], ids: readonly string[]): string {
  const anchors = charts.map((chart, index) => anchorXml(chart, index + 1, ids[index] ?? ''));
  return `${DECLARATION}<xdr:wsDr xmlns:xdr="${SHEET_DRAWING}" xmlns:a="${DRAWING}">${anchors.join('')}</xdr:wsDr>`;
}

function anchorXml({ place, title, description }: NewChart, number: number, id: string): string {
  return (
    `<xdr:twoCellAnchor>${cornerXml('from', place.startRow, place.startColumn)}` +
    `${cornerXml('to', place.endRow + 1, place.endColumn + 1)}` +
    '<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr>' +
    `<xdr:cNvPr id="${number + 1}" name="${escapeXml(title)}" descr="${escapeXml(description)}"/><xdr:cNvGraphicFramePr/>` +
    '</xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>' +
    `<a:graphic><a:graphicData uri="${CHART}"><c:chart xmlns:c="${CHART}" xmlns:r="${OFFICE_LINKS}" r:id="${id}"/></a:graphicData></a:graphic>` +
    '</xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor>'
  );
}

function cornerXml(name: string, row: number, column: number): string {
  return `<xdr:${name}><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${name}>`;
}
