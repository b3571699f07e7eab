import type { Log } from '../../worksheets/logger/log';
import type { LogWishes } from '../../worksheets/logger/logForm';
import { LogReading } from '../../worksheets/logger/readLog';

/** Lines read before the page gets its turn. */
const PIECE = 20_000;
/** Greatest size of a log, in bytes: 300 MB. */
export const GREATEST_LOG = 300_000_000;

/**
 * Reads a log in pieces, so that the page stays at hand.
 * @param onShare told the share that is read
 * @param isStale true once another log is wanted: this one is given up
 * @returns undefined if it was given up
 * @throws LogError
 */
export async function readInPieces(text: string, wishes: LogWishes, onShare: (share: number) => void, isStale: () => boolean): Promise<Log | undefined> {
  const reading = new LogReading(text, wishes);
  while (!reading.advance(PIECE)) {
    onShare(reading.share);
    await new Promise((resolve) => { setTimeout(resolve); });
    if (isStale()) return undefined;
  }
  return reading.log();
}

/** The text of a file: UTF-8, or UTF-16 as some loggers write it. */
export async function textOf(file: File): Promise<string> {
  const text = await file.text();
  const zero = text.slice(0, 200).indexOf('\0');
  // Of Latin text in UTF-16 every second byte is zero.
  const isWide = zero >= 0 && zero < 5 && !text.startsWith('PK') && /\0[^\0]\0/.test(text.slice(0, 200));
  return isWide ? decoded(file, zero % 2 === 0 ? 'utf-16be' : 'utf-16le') : text;
}

function decoded(file: File, encoding: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.addEventListener('load', () => resolve(String(reader.result)));
    reader.addEventListener('error', () => reject(reader.error ?? new Error('the file could not be read')));
    reader.readAsText(file, encoding);
  });
}
