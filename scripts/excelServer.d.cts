import type { Server, ServerOptions } from 'node:https';

export function serveFolder(folder: string, certificate: ServerOptions, port: number): Promise<Server>;
