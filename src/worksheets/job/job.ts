/** The way of an item through the bench, in order. */
export const STEPS = ['received', 'inspected', 'as_found', 'adjusted', 'as_left', 'decided', 'certificate', 'reviewed'] as const;
export type Step = (typeof STEPS)[number];

/** A cell of the job sheet, and what it holds; undefined while it is empty or holds something of another kind. */
export interface JobCell<T = string | number> {
  /** Address within the sheet, like "C7". */
  readonly at: string;
  readonly value: T | undefined;
}

/** What is said once for the whole job. Its cells are named `job_<field>`. */
export interface JobFields {
  readonly number: JobCell<string>;
  readonly laboratory: JobCell<string>;
  readonly laboratory_address: JobCell<string>;
  readonly customer: JobCell<string>;
  readonly customer_address: JobCell<string>;
  readonly order: JobCell<string>;
  readonly place: JobCell<string>;
  /** Limits of the room's temperature during runs, °C. */
  readonly temperature_least: JobCell<number>;
  readonly temperature_greatest: JobCell<number>;
  /** Title of the template that the customer's procedure is run by. */
  readonly procedure: JobCell<string>;
  /** Greatest deviation allowed, a fraction of the output at capacity. */
  readonly tolerance: JobCell<number>;
  /** Class required: AA, A, 00, 0.5, 1, 2. */
  readonly class: JobCell<string>;
  /** "simple" or "guarded". */
  readonly decision_rule: JobCell<string>;
  /** Least and greatest interval, months. */
  readonly least_interval: JobCell<number>;
  readonly greatest_interval: JobCell<number>;
  readonly remarks: JobCell<string>;
}

/** A transducer, a bridge of one, or a direction: what is calibrated on its own. Its cells stand in one column, in rows named `item_<field>`. */
export interface JobItem {
  /** Which of the columns, from 0. */
  readonly index: number;
  /** What it is called within the job; it begins the names of its sheets. */
  readonly name: JobCell<string>;
  /** Make, type and serial number, as on its plate. */
  readonly identification: JobCell<string>;
  readonly direction: JobCell<string>;
  readonly capacity: JobCell<number>;
  readonly unit: JobCell<string>;
  readonly output_unit: JobCell<string>;
  readonly resolution: JobCell<number>;
  readonly rated_output: JobCell<number>;
  /** Id of the standard used, as in the table of standards. */
  readonly standard: JobCell<string>;
  /** Date, as a spreadsheet counts days. */
  readonly received: JobCell<number>;
  readonly condition: JobCell<string>;
  /** Date of the last calibration. */
  readonly last_calibrated: JobCell<number>;
  /**
   * What stands at each step, in rows named `way_<step>`: the name of a sheet, "skipped: reason", or words on what was done.
   * "received" has no row: it follows from date and condition.
   */
  readonly way: Readonly<Record<Exclude<Step, 'received'>, JobCell<string>>>;
}

/** A standard. Its cells stand in one row, in columns named `standards_<field>`. */
export interface JobStandard {
  readonly id: JobCell<string>;
  readonly description: JobCell<string>;
  readonly verified_from: JobCell<number>;
  readonly verified_to: JobCell<number>;
  readonly unit: JobCell<string>;
  /** Relative expanded uncertainty, k = 2, a fraction. */
  readonly uncertainty: JobCell<number>;
  /** Date to which it is calibrated. */
  readonly due: JobCell<number>;
  /** Its certificate, and who issued it. */
  readonly certificate: JobCell<string>;
}

/** A job as its sheet holds it. */
export interface Job {
  /** Name of the sheet. */
  readonly sheet: string;
  readonly fields: JobFields;
  /** The items that have a name. */
  readonly items: readonly JobItem[];
  /** The standards that have an id. */
  readonly standards: readonly JobStandard[];
}

/** How far a step has come. */
export interface StepState {
  readonly step: Step;
  /** "waiting": an earlier step comes first. "open": can be done now. */
  readonly state: 'done' | 'skipped' | 'open' | 'waiting';
  /** Why it is skipped, or what was done, in the words of the sheet. */
  readonly words?: string;
  /** The sheet that belongs to it, if it is there. */
  readonly sheet?: string;
  /** What is missing before it is done. */
  readonly missing: readonly Missing[];
}

/** Something that is missing, and where it belongs. */
export interface Missing {
  readonly sheet: string;
  readonly at: string;
  readonly message: string;
}
