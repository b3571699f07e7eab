/** The files of the Excel package over https, for development. */
const https = require('node:https');
const sirv = require('sirv');

/**
 * Serves a folder at https://localhost:PORT/. Excel on the web reads functions.json from another origin, hence the
 * header; nothing is cached, so that a new build shows at the next reload.
 * @param {string} folder
 * @param {import('node:https').ServerOptions} certificate
 * @param {number} port 0 takes any free one
 * @returns {Promise<import('node:https').Server>} once it listens; rejects if the port is taken
 */
function serveFolder(folder, certificate, port) {
  const files = sirv(folder, {
    dev: true,
    setHeaders: (response) => {
      response.setHeader('Access-Control-Allow-Origin', '*');
      response.setHeader('Cache-Control', 'no-store');
    },
  });
  const server = https.createServer(certificate, (request, response) => {
    files(request, response, () => {
      response.writeHead(404, { 'Content-Type': 'text/plain' });
      response.end(`Not found: ${request.url}`);
    });
  });
  return new Promise((resolve, reject) => {
    server.once('error', (error) => {
      reject(error.code === 'EADDRINUSE' ? new Error(`Port ${port} is taken by another program; stop it and try again`) : error);
    });
    server.listen(port, 'localhost', () => resolve(server));
  });
}

module.exports = { serveFolder };
