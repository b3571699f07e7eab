import design from '@univerjs/design/locale/en-US';
import docsUi from '@univerjs/docs-ui/locale/en-US';
import sheets from '@univerjs/sheets/locale/en-US';
import sheetsFormula from '@univerjs/sheets-formula/locale/en-US';
import sheetsFormulaUi from '@univerjs/sheets-formula-ui/locale/en-US';
import sheetsNumfmtUi from '@univerjs/sheets-numfmt-ui/locale/en-US';
import sheetsUi from '@univerjs/sheets-ui/locale/en-US';
import ui from '@univerjs/ui/locale/en-US';
import { mergeLocales } from '@univerjs/core';

/** The grid's own words, in English. */
export const english = mergeLocales(design, ui, docsUi, sheets, sheetsUi, sheetsFormula, sheetsFormulaUi, sheetsNumfmtUi);
