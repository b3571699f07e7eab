import './workbench.css';
import { Loading } from './loading';

/** The small first part of the page: shows progress while the large part, with the grid, is on its way. */
const loading = new Loading();

import(/* webpackChunkName: "grid" */ './bench')
  .then(({ openBench }) => openBench(loading))
  .catch((error: unknown) => loading.fail(error));
