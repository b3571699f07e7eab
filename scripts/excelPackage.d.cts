export const DEVELOPMENT_URL: string;
export function readBaseUrl(setting: string | undefined): string;
export function manifestFor(baseUrl: string, source: string): string;
export function metadataFor<T extends { readonly functions: readonly { readonly id: string; readonly options?: object }[] }>(
  baseUrl: string, metadata: T,
): T & { functions: (T['functions'][number] & { helpUrl: string; options: { requiresAddress: true } })[] };
