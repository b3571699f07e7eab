import dataValidation from '@univerjs/data-validation/locale/en-US';
import design from '@univerjs/design/locale/en-US';
import docsUi from '@univerjs/docs-ui/locale/en-US';
import sheets from '@univerjs/sheets/locale/en-US';
import sheetsDataValidation from '@univerjs/sheets-data-validation/locale/en-US';
import sheetsDataValidationUi from '@univerjs/sheets-data-validation-ui/locale/en-US';
import sheetsFormula from '@univerjs/sheets-formula/locale/en-US';
import sheetsFormulaUi from '@univerjs/sheets-formula-ui/locale/en-US';
import sheetsNumfmtUi from '@univerjs/sheets-numfmt-ui/locale/en-US';
import sheetsUi from '@univerjs/sheets-ui/locale/en-US';
import ui from '@univerjs/ui/locale/en-US';
import { mergeLocales } from '@univerjs/core';

const own = sheetsUi['sheets-ui'];

/** The words of the sheets, with what deleting one does, which the grid does not say. */
const sheetWords = {
  'sheets-ui': {
    ...own,
    sheetConfig: {
      ...own.sheetConfig,
      deleteSheet: 'Delete the sheet shown?',
      deleteSheetContent: 'Formulas on other sheets that refer to it will show #REF!. Undo brings the sheet and these formulas back.',
      deleteLargeSheetContent: 'This sheet is too large for undo: it cannot be brought back. Formulas on other sheets that refer to it will show #REF!.',
    },
  },
};

const ofValidation = sheetsDataValidationUi['sheets-data-validation-ui'];

/** The words of refused entries, whose dialog is headed "Error" only. */
const validationWords = {
  'sheets-data-validation-ui': { ...ofValidation, alert: { ...ofValidation.alert, title: 'This cell takes something else' } },
};

/** The grid's own words, in English. */
export const english = mergeLocales(
  design, ui, docsUi, sheets, sheetWords, sheetsFormula, sheetsFormulaUi, sheetsNumfmtUi, dataValidation, sheetsDataValidation, validationWords,
);
