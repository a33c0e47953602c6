/** Where the manifest in the repository says the add-in is served from. */
export const LOCAL_HOST = 'https://localhost:3000';

/**
 * Rewrites every address in the manifest to `host`, such as https://soap.example/ledger. Throws for a
 * host that Excel would not load from.
 */
export function manifestFor(manifest: string, host: string): string {
  const address = URL.canParse(host) ? new URL(host) : undefined;
  if (address?.protocol !== 'https:' || address.search !== '' || address.hash !== '') {
    throw new Error(`POUR_LEDGER_HOST is "${host}". Give an address that begins with https://`);
  }
  const base = address.href.replace(/\/+$/, '');
  return manifest
    .replaceAll(`<AppDomain>${LOCAL_HOST}</AppDomain>`, `<AppDomain>${address.origin}</AppDomain>`)
    .replaceAll(`"${LOCAL_HOST}/`, `"${base}/`);
}
