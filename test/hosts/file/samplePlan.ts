/** The sample of test/hosts as a sheet of a file. */
import type { FileSheet } from '../../../src/hosts/file/writeWorkbook';
import { plan, VALUES } from '../samplePlan';

export { plan, VALUES } from '../samplePlan';

/** The sample with its values. */
export const sample: FileSheet = { plan, values: (at) => VALUES[at] ?? null };
