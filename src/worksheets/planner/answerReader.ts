import type { Answers, Problem } from '../question';

/** What a number must be. */
interface NumberRule {
  readonly above?: number;
  readonly least?: number;
  readonly greatest?: number;
  readonly whole?: boolean;
}

const PLAIN_NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** Reads typed answers, and gathers what cannot be read; a question refused reads as undefined. */
export class AnswerReader {
  readonly problems: Problem[] = [];

  constructor(private readonly answers: Answers) {}

  refuse(question: string, message: string): undefined {
    this.problems.push({ severity: 'refuse', question, message });
    return undefined;
  }

  warn(question: string, message: string): void {
    this.problems.push({ severity: 'warn', question, message });
  }

  typed(question: string): string {
    return (this.answers[question] ?? '').trim();
  }

  text(question: string, most: number): string | undefined {
    const text = this.typed(question);
    if (text === '') return this.refuse(question, 'Found nothing; expected a text.');
    if (text.length > most) return this.refuse(question, `Found ${text.length} characters; expected ${most} at most.`);
    return text;
  }

  /** A number; undefined also if nothing is typed and the question is optional. */
  number(question: string, rule: NumberRule & { readonly optional?: boolean } = {}): number | undefined {
    const text = this.typed(question);
    if (text === '' && rule.optional) return undefined;
    return this.oneNumber(question, text, rule);
  }

  /** A list of numbers, parted by commas, semicolons or blanks. */
  numbers(question: string, rule: NumberRule = {}): readonly number[] | undefined {
    const parts = this.typed(question).split(/[\s,;]+/).filter((part) => part !== '');
    if (parts.length === 0) return this.refuse(question, 'Found nothing; expected numbers, like 0, 50, 100.');
    const numbers: number[] = [];
    for (const part of parts) {
      const number = this.oneNumber(question, part, rule);
      if (number === undefined) return undefined;
      numbers.push(number);
    }
    return numbers;
  }

  /** A list of words, parted by commas; empty if nothing is typed. */
  words(question: string): readonly string[] {
    return this.typed(question).split(/[,;]/).map((word) => word.trim()).filter((word) => word !== '');
  }

  choice<T extends string>(question: string, allowed: readonly T[]): T | undefined {
    const typed = this.typed(question);
    const found = allowed.find((word) => word === typed);
    return found ?? this.refuse(question, `Found ${quoted(typed)}; expected ${allowed.map(quoted).join(' or ')}.`);
  }

  /** Some of the allowed words, each once, in the order of the allowed ones; at least one. */
  choices<T extends string>(question: string, allowed: readonly T[]): readonly T[] | undefined {
    const typed = this.words(question);
    const strange = typed.find((word) => !allowed.some((candidate) => candidate === word));
    if (strange !== undefined || typed.length === 0) {
      return this.refuse(question, `Found ${strange === undefined ? 'nothing' : quoted(strange)}; expected at least one of ${allowed.map(quoted).join(', ')}.`);
    }
    return allowed.filter((word) => typed.some((candidate) => candidate === word));
  }

  private oneNumber(question: string, text: string, { above, least, greatest, whole }: NumberRule): number | undefined {
    const number = PLAIN_NUMBER.test(text) ? Number(text) : NaN;
    const fits = Number.isFinite(number) && (above === undefined || number > above) && (least === undefined || number >= least)
      && (greatest === undefined || number <= greatest) && (!whole || Number.isInteger(number));
    return fits ? number : this.refuse(question, `Found ${text === '' ? 'nothing' : quoted(text)}; expected ${expectation({ above, least, greatest, whole })}.`);
  }
}

function expectation({ above, least, greatest, whole }: NumberRule): string {
  const bounds = [
    ...(above === undefined ? [] : [`above ${above}`]),
    ...(least === undefined ? [] : [`of ${least} or more`]),
    ...(greatest === undefined ? [] : [`of ${greatest} at most`]),
  ];
  return [whole ? 'a whole number' : 'a number with a decimal point', bounds.join(', ')].filter((part) => part !== '').join(' ');
}

function quoted(text: string): string {
  return `“${text}”`;
}
