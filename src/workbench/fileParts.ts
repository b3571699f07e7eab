import type { PaneParts } from '../taskpane/pane';
import { download } from './download';

/** What the pane reads, makes and hands over files with; the parts that do it are large, so they come when they are asked for. */
export const fileParts: Pick<PaneParts, 'readWorkbook' | 'issueCopy' | 'deliver'> = {
  readWorkbook: async (bytes) => (await import(/* webpackChunkName: "read" */ '../hosts/file/readWorkbook')).readWorkbook(bytes),
  issueCopy: async (bytes) => (await import(/* webpackChunkName: "read" */ '../hosts/file/issueCopy')).issueCopy(bytes),
  deliver: async (name, bytes) => download(name, bytes),
};
