import type { Problem, Question } from '../../worksheets/question';
import { element } from '../dom';

let made = 0;

/** A question of the form with its field. */
export interface QuestionField {
  readonly element: HTMLElement;
  /** The unit and the help can follow other answers. */
  update(question: Question): void;
  setProblems(problems: readonly Problem[]): void;
  focus(): void;
}

/** The part of a field that takes the answer: its element, the thing that takes the focus, and what is marked when wrong. */
interface Control {
  readonly element: HTMLElement;
  readonly target: HTMLElement;
}

/** True if a field made for one question also serves the other. */
export function sameField(a: Question, b: Question): boolean {
  return a.id === b.id && a.kind === b.kind && JSON.stringify(a.choices) === JSON.stringify(b.choices);
}

/** Makes the field of a question. `onAnswer` is called with every key, with the answer as typed. */
export function questionField(question: Question, answer: string, onAnswer: (answer: string) => void): QuestionField {
  const id = `question-${made += 1}`;
  const control = controlOf(question, answer, id, onAnswer);
  const label = element(question.kind === 'choices' ? 'span' : 'label', { class: 'rp-label', attributes: { id: `${id}-label` } });
  if (label instanceof HTMLLabelElement) label.htmlFor = id;
  const unit = element('span', { class: 'rp-unit', attributes: { id: `${id}-unit` } });
  const help = element('p', { class: 'rp-help', attributes: { id: `${id}-help` } });
  const problems = element('ul', { class: 'rp-problems', attributes: { id: `${id}-problems` } });
  control.target.setAttribute('aria-describedby', `${id}-unit ${id}-problems ${id}-help`);

  const update = ({ label: words, optional, unit: unitWord, help: helpWords }: Question): void => {
    label.replaceChildren(words, ...(optional ? [element('span', { class: 'rp-optional', children: [' optional'] })] : []));
    unit.textContent = unitWord ?? '';
    help.textContent = helpWords;
  };
  update(question);
  return {
    element: element('div', {
      class: 'rp-question',
      attributes: { 'data-question': question.id },
      children: [label, element('div', { class: 'rp-answer', children: [control.element, unit] }), problems, help],
    }),
    update,
    setProblems(found) {
      const refused = found.some(({ severity }) => severity === 'refuse');
      if (refused) control.target.setAttribute('aria-invalid', 'true');
      else control.target.removeAttribute('aria-invalid');
      problems.replaceChildren(...found.map(problemLine));
    },
    focus: () => (control.target.matches('input, select') ? control.target : control.target.querySelector('input') ?? control.target).focus(),
  };
}

function problemLine({ severity, message }: Problem): HTMLElement {
  const word = severity === 'refuse' ? 'To mend' : 'Caution';
  return element('li', { class: `rp-${severity}`, children: [element('strong', { children: [`${word}: `] }), message] });
}

function controlOf(question: Question, answer: string, id: string, onAnswer: (answer: string) => void): Control {
  if (question.kind === 'choice') return selectOf(question, answer, id, onAnswer);
  if (question.kind === 'choices') return checkboxesOf(question, answer, id, onAnswer);
  const input = element('input', { attributes: { id, type: 'text', autocomplete: 'off', spellcheck: 'false' } });
  if (question.kind === 'number') input.inputMode = 'decimal';
  if (!question.optional) input.setAttribute('aria-required', 'true');
  input.value = answer;
  input.addEventListener('input', () => onAnswer(input.value));
  return { element: input, target: input };
}

function selectOf({ choices = [], optional }: Question, answer: string, id: string, onAnswer: (answer: string) => void): Control {
  const known = choices.some(({ value }) => value === answer);
  // An answer that is none of the choices must not turn into the first of them unseen.
  const others = known || choices.length === 0 ? [] : [{ value: answer, label: answer === '' ? 'Choose …' : answer }];
  const blank = optional && answer !== '' && !choices.some(({ value }) => value === '') ? [{ value: '', label: 'None' }] : [];
  const select = element('select', {
    attributes: { id },
    children: [...others, ...blank, ...choices].map(({ value, label }) => element('option', { attributes: { value }, children: [label] })),
  });
  select.value = answer;
  select.addEventListener('change', () => onAnswer(select.value));
  return { element: select, target: select };
}

function checkboxesOf({ choices = [] }: Question, answer: string, id: string, onAnswer: (answer: string) => void): Control {
  const chosen = new Set(answer.split(',').map((word) => word.trim()));
  const boxes = choices.map(({ value, label }) => {
    const box = element('input', { attributes: { type: 'checkbox', value } });
    box.checked = chosen.has(value);
    return { box, line: element('label', { class: 'rp-check', children: [box, element('span', { children: [label] })] }) };
  });
  const group = element('div', { class: 'rp-checks', attributes: { id, role: 'group', 'aria-labelledby': `${id}-label` }, children: boxes.map(({ line }) => line) });
  group.addEventListener('change', () => onAnswer(boxes.filter(({ box }) => box.checked).map(({ box }) => box.value).join(', ')));
  return { element: group, target: group };
}
