import type { FilledCell } from '../../worksheets/filledSheet';
import { button, element } from '../dom';

let made = 0;

/** Cells named in the question; of more, their number is said. */
const NAMED = 6;

/** Asks what becomes of readings that stand in the cells already. Escape leaves everything as it is. */
export function askAboutReadings(place: HTMLElement, cells: readonly FilledCell[], total: number): Promise<'replace' | 'empty' | 'leave'> {
  const id = `replace-${made += 1}`;
  const dialog = element('dialog', { class: 'rp-dialog', attributes: { 'aria-labelledby': `${id}-title`, 'aria-describedby': `${id}-words` } });
  let choice: 'replace' | 'empty' | 'leave' = 'leave';
  const way = (label: string, chosen: typeof choice, parts = {}): HTMLButtonElement => button(label, () => {
    choice = chosen;
    dialog.close();
  }, parts);
  const leave = way('Leave them all', 'leave');
  const named = cells.slice(0, NAMED).map(({ at, value }) => `${at}: ${typeof value === 'object' && value ? value.error : String(value)}`);
  dialog.append(
    element('h2', { attributes: { id: `${id}-title` }, children: [cells.length === 1 ? 'A reading stands there already' : `${cells.length} readings stand there already`] }),
    element('p', { attributes: { id: `${id}-words` }, children: [`${named.join(', ')}${cells.length > NAMED ? ` and ${cells.length - NAMED} more` : ''}. What you replace is gone from the sheet, until you undo.`] }),
    element('div', {
      class: 'rp-ways',
      children: [
        ...(cells.length < total ? [way('Fill the empty cells only', 'empty', { class: 'rp-main' })] : []),
        way(cells.length === 1 ? 'Replace it' : `Replace all ${cells.length}`, 'replace', { class: 'rp-grave' }),
        leave,
      ],
    }),
  );
  place.append(dialog);
  dialog.showModal();
  leave.focus();
  return new Promise((resolve) => {
    dialog.addEventListener('close', () => {
      dialog.remove();
      resolve(choice);
    }, { once: true });
  });
}
