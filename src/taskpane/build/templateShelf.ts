import type { Template } from '../../worksheets/template';
import type { PaneMemory } from '../memory';
import { reasonOf } from '../reason';
import type { Planning } from './planning';

const KEY = 'templates';

/** A template that the user loaded, as its text is kept; without a template if this version cannot read it. */
export interface OwnTemplate {
  readonly text: string;
  readonly template?: Template;
  readonly problem?: string;
}

/** What became of a template that was added. */
export interface Added {
  /** It took the place of one with the same id. */
  readonly replaced: boolean;
  /** False if it is forgotten with the page. */
  readonly kept: boolean;
}

/** The templates to choose from: those that come with the program, and the user's own. */
export class TemplateShelf {
  readonly builtIn: readonly Template[];

  constructor(private readonly planning: Planning, private readonly memory: PaneMemory) {
    this.builtIn = planning.builtInTemplates();
  }

  own(): readonly OwnTemplate[] {
    return this.texts().map((text) => {
      try {
        return { text, template: this.planning.readTemplate(text) };
      } catch (error) {
        return { text, problem: reasonOf(error) };
      }
    });
  }

  /** Keeps a template; one of the user's own with the same id gives way. */
  add(template: Template): Added {
    const others = this.own().filter((own) => own.template?.id !== template.id);
    const replaced = others.length < this.own().length;
    const kept = this.keep([...others.map(({ text }) => text), this.planning.templateText(template)]);
    return { replaced, kept };
  }

  remove(text: string): void {
    this.keep(this.texts().filter((other) => other !== text));
  }

  private texts(): string[] {
    try {
      const stored: unknown = JSON.parse(this.memory.get(KEY) ?? '[]');
      return Array.isArray(stored) ? stored.filter((text) => typeof text === 'string') : [];
    } catch {
      return [];
    }
  }

  private keep(texts: readonly string[]): boolean {
    return this.memory.set(KEY, JSON.stringify(texts));
  }
}
