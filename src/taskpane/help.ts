import { createFunctionHelp } from './functionHelp';
import './page.css';
import './pane.css';

/** The help as a page of its own; `help.html#FIT` opens FIT, and the browser's Back works. */
function start(root: HTMLElement): void {
  const help = createFunctionHelp(root, (id) => { window.location.hash = id ?? ''; });
  const follow = (): void => {
    const id = window.location.hash.slice(1).toUpperCase();
    help.open(id === '' ? undefined : id);
    document.title = id === '' ? 'Provingsheet functions' : `PROVE.${id} – Provingsheet functions`;
  };
  window.addEventListener('hashchange', follow);
  follow();
}

const root = document.getElementById('help');
if (!root) throw new Error('help.html: no element with the id "help"');
start(root);
