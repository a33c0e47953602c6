/** Text for an XML attribute or element. */
export function escapeXml(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

/**
 * Cell text as a workbook stores it: characters that XML cannot hold become `_xHHHH_`, and text that
 * already looks like such a code is protected, so that what was typed comes back exactly.
 */
export function storeText(text: string): string {
  return escapeXml(
    text
      .replace(/_(?=x[0-9a-fA-F]{4}_)/g, '_x005F_')
      // eslint-disable-next-line no-control-regex -- these are the characters XML 1.0 forbids
      .replace(/[\u0000-\u0008\u000b-\u001f\ufffe\uffff]|\p{Surrogate}/gu, encode),
  );
}

/** The reverse of `storeText`, entities already resolved by the parser. */
export function typedText(stored: string): string {
  if (!stored.includes('_x')) return stored;
  return stored.replace(/_x([0-9a-fA-F]{4})_/g, (_match, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
}

/** A `<t>` or `<v>`-like element around cell text, keeping outer spaces and line ends. */
export function textElement(name: string, text: string): string {
  const space = /^\s|\s$|[\n\t]| {2}/.test(text) ? ' xml:space="preserve"' : '';
  return `<${name}${space}>${storeText(text)}</${name}>`;
}

function encode(character: string): string {
  return `_x${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`;
}
