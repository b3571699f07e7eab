/**
 * What a build changes in the Excel package: the address it is served from. CommonJS, since the webpack configuration
 * and the tests load it too.
 */

/** The address in the source manifest. */
const DEVELOPMENT_URL = 'https://localhost:3000/';

/**
 * The base address of a build, ending in one slash.
 * @param {string | undefined} setting the environment's BASE_URL; development's address if empty.
 * @throws {Error} if it is not a plain https address.
 */
function readBaseUrl(setting) {
  const text = (setting ?? '').trim();
  if (text === '') return DEVELOPMENT_URL;
  const expected = 'expected an https address like https://lab.example/provingsheet/';
  let url;
  try {
    url = new URL(text);
  } catch {
    throw new Error(`BASE_URL: found "${text}"; ${expected}`);
  }
  if (url.protocol !== 'https:') throw new Error(`BASE_URL: found "${text}", which is not https; ${expected} (Excel loads nothing else)`);
  if (url.search || url.hash || url.username || url.password) {
    throw new Error(`BASE_URL: found "${text}"; ${expected}, without query, fragment or user name`);
  }
  return `${url.origin}${url.pathname.replace(/\/+$/, '')}/`;
}

/** The manifest with every address moved to the base address. */
function manifestFor(baseUrl, source) {
  if (!source.includes(DEVELOPMENT_URL)) throw new Error(`manifest.xml: no address starts with ${DEVELOPMENT_URL}; nothing to move to ${baseUrl}`);
  const inXml = baseUrl.replace(/&/g, '&amp;').replace(/"/g, '&quot;').replace(/</g, '&lt;');
  return source.replaceAll(DEVELOPMENT_URL, () => inXml).replace(/<!-- Base address of development[^>]*-->\n/, '');
}

/**
 * The function metadata for Excel: with the help page of each function, and with the request that Excel names the
 * calling cell, so that the pane can show a failed cell's message.
 */
function metadataFor(baseUrl, metadata) {
  return {
    ...metadata,
    functions: metadata.functions.map((entry) => ({
      ...entry,
      helpUrl: `${baseUrl}help.html#${entry.id}`,
      options: { ...entry.options, requiresAddress: true },
    })),
  };
}

module.exports = { DEVELOPMENT_URL, readBaseUrl, manifestFor, metadataFor };
