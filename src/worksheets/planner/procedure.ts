import type { SheetPlan } from '../plan';
import type { Answers, Question } from '../question';
import type { AnswerReader } from './answerReader';

/** What a kind of template can do: ask, read the answers, and plan a sheet. A new kind of procedure is one of these. */
export interface Procedure<T, S> {
  /** The questions in the order of the form; units follow what is answered. */
  questions(template: T, answers: Answers): readonly Question[];
  /** The answers that the template suggests, for every question. */
  suggested(template: T): Answers;
  /** The answers read and checked together; undefined if one cannot be read. What is odd goes to the reader. */
  read(reader: AnswerReader, template: T): S | undefined;
  plan(template: T, setup: S): SheetPlan;
  /** The template with the answers as its own. */
  changed(template: T, setup: S): T;
}
