import type { SheetPlan } from '../../worksheets/plan';
import type { Answers } from '../../worksheets/question';
import type { Template } from '../../worksheets/template';

/** A sheet that is to be built from a template, from the list of templates or as a step of a job. */
export interface Building {
  readonly template: Template;
  /** What is filled in at first. */
  readonly answers: Answers;
  /** Under which key the answers are kept until the sheet is built. */
  readonly draft: string;
  /** The step of a job that it is built for; without it, it stands for itself. */
  readonly step?: {
    /** Item and step, like "Cell A: as found". */
    readonly title: string;
    /** Puts the sheet in its place within the job before it is written. */
    readonly link: (plan: SheetPlan) => SheetPlan;
    /** Tells the job of the sheet that was written. */
    readonly written: (plan: SheetPlan) => Promise<void>;
    /** Opens the job again. */
    readonly back: () => void;
  };
}
