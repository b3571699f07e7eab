import { SpreadsheetSkeleton } from '@univerjs/engine-render';
import { WIDEST_PADDING } from './roleStyles';

/**
 * Lets text that fits its cell but for the padding run on into the free cell beside it: the grid measures the text alone, and
 * would cut its last letter.
 */
export function mendOverflow(): void {
  const { getOverflowPosition } = SpreadsheetSkeleton.prototype;
  SpreadsheetSkeleton.prototype.getOverflowPosition = function withPadding(size, ...place) {
    return getOverflowPosition.call(this, size && { ...size, width: size.width + WIDEST_PADDING }, ...place);
  };
}
