/** @jest-environment jsdom */
import { TemplateForm } from '../../../src/taskpane/build/templateForm';
import type { SheetPlan } from '../../../src/worksheets/plan';
import type { Answers } from '../../../src/worksheets/question';
import { fakePlanning, passed, template } from '../fakes';

Element.prototype.scrollIntoView = jest.fn();
const SOON = 200;

function mounted() {
  const built: SheetPlan[] = [];
  let answers: Answers = {};
  const ten = template('ten', 'Ten points');
  const form = new TemplateForm({
    template: ten,
    planning: fakePlanning,
    answers: fakePlanning.suggestedAnswers(ten),
    onAnswers: (given) => { answers = given; },
    build: async (plan) => void built.push(plan),
    back: jest.fn(),
  });
  document.body.replaceChildren(form.element);
  const question = (id: string): HTMLElement => form.element.querySelector(`[data-question="${id}"]`)!;
  const field = (id: string): HTMLInputElement => question(id).querySelector('input, select')!;
  const type = async (id: string, text: string): Promise<void> => {
    field(id).value = text;
    field(id).dispatchEvent(new Event(field(id).matches('select') ? 'change' : 'input', { bubbles: true }));
    await passed(SOON);
  };
  const check = async (value: string): Promise<void> => {
    form.element.querySelector<HTMLInputElement>(`input[value=${value}]`)!.click();
    await passed(SOON);
  };
  const press = (label: string): void => [...form.element.querySelectorAll('button')].find(({ textContent }) => textContent === label)!.click();
  const problemsAt = (id: string): (string | null)[] => [...question(id).querySelectorAll('.rp-problems li')].map((line) => line.textContent);
  return { form, built, question, field, type, check, press, problemsAt, answers: () => answers };
}

describe('the questions', () => {
  test('stand in their groups, with the suggested answers filled in', () => {
    const { form, field } = mounted();
    expect([...form.element.querySelectorAll('fieldset')].map((group) => [group.querySelector('legend')!.textContent, group.querySelectorAll('.rp-question').length])).toEqual([['Item', 3], ['Procedure', 1]]);
    expect(field('capacity').value).toBe('20');
    expect(field('unit').value).toBe('kN');
    expect([...form.element.querySelectorAll<HTMLInputElement>('[type=checkbox]')].map(({ checked }) => checked)).toEqual([true, false]);
  });

  test('have labels, units and helps that a screen reader hears with the field', () => {
    const { field, question, form } = mounted();
    expect(field('capacity').labels?.[0].textContent).toBe('Capacity');
    const described = field('capacity').getAttribute('aria-describedby')!.split(' ').map((id) => document.getElementById(id)!.textContent);
    expect(described).toEqual(['kN', '', 'Greatest force.']);
    expect(field('item').labels?.[0].textContent).toBe('Item optional');
    expect(form.element.querySelector('[role=group]')!.getAttribute('aria-labelledby')).toBe(question('directions').querySelector('.rp-label')!.id);
  });

  test('follow the answers: a unit changes in place, and a new question comes without taking the focus', async () => {
    const { type, check, question, field, form } = mounted();
    const before = field('capacity');
    await type('unit', 'N');
    expect(question('capacity').querySelector('.rp-unit')!.textContent).toBe('N');
    expect(field('capacity')).toBe(before);
    const box = form.element.querySelector<HTMLInputElement>('input[value=compression]')!;
    box.focus();
    await check('compression');
    expect(question('pad')).not.toBeNull();
    expect(document.activeElement).toBe(box);
    await check('compression');
    expect(question('pad')).toBeNull();
  });

  test('hand every answer on as typed, several choices parted by commas', async () => {
    const { type, check, answers } = mounted();
    await type('capacity', '2,5');
    await check('compression');
    expect(answers()).toEqual({ item: '', capacity: '2,5', unit: 'kN', directions: 'tension, compression' });
  });
});

describe('problems', () => {
  test('stand beside their field as one types, and mark it', async () => {
    const { type, problemsAt, field } = mounted();
    expect(problemsAt('capacity')).toEqual([]);
    await type('capacity', 'x');
    expect(problemsAt('capacity')).toEqual(['To mend: found “x”; expected a number above 0']);
    expect(field('capacity').getAttribute('aria-invalid')).toBe('true');
    await type('capacity', '0.5');
    expect(problemsAt('capacity')).toEqual(['Caution: a small cell']);
    expect(field('capacity').hasAttribute('aria-invalid')).toBe(false);
  });

  test('are counted in one place, those in the way first, and each goes to its field', async () => {
    const { type, check, form, field } = mounted();
    await type('capacity', '-1');
    await check('tension');
    const summary = form.element.querySelector('details.rp-summary') as HTMLDetailsElement;
    expect(summary.querySelector('summary')!.textContent).toBe('2 to mend, 1 caution');
    expect(summary.open).toBe(true);
    const lines = [...summary.querySelectorAll('button')];
    expect(lines.map(({ textContent }) => textContent!.split(':')[0])).toEqual(['Capacity', 'Directions', 'Capacity']);
    lines[0].click();
    expect(document.activeElement).toBe(field('capacity'));
    lines[1].click();
    expect((document.activeElement as HTMLInputElement).value).toBe('tension');
  });

  test('are spoken as a number, after a pause', async () => {
    const { type, form } = mounted();
    const voice = form.element.querySelector('.rp-unseen[role=status]')!;
    await type('capacity', 'x');
    expect(voice.textContent).toBe('');
    await passed(1000);
    expect(voice.textContent).toBe('1 to mend');
  });

  test('keep the sheet from being built: nothing is written, and the focus goes to the first one', async () => {
    const { type, press, built, field, form } = mounted();
    await type('capacity', '');
    press('Build the sheet');
    await passed();
    expect(built).toEqual([]);
    expect(document.activeElement).toBe(field('capacity'));
    expect(form.element.querySelector('.rp-said')!.textContent).toBe('Nothing is built: 1 to mend first.');
  });
});

describe('the preview', () => {
  test('follows the answers, and goes while something is to mend', async () => {
    const { type, form } = mounted();
    const cells = (): (string | null)[] => [...form.element.querySelectorAll('.rp-preview td')].map((cell) => cell.textContent);
    expect(cells()).toContain('20');
    await type('capacity', '50');
    expect(cells()).toContain('50');
    await type('capacity', 'x');
    expect(cells()).toEqual([]);
  });
});

test('a press just after a key builds what was typed', async () => {
  const { field, press, built } = mounted();
  field('capacity').value = '75';
  field('capacity').dispatchEvent(new Event('input'));
  press('Build the sheet');
  await passed();
  expect(built[0].cells).toContainEqual({ at: 'A6', role: 'reference', value: 75 });
});

describe('saving the template', () => {
  const saved: { name: string; text: Promise<string> }[] = [];

  beforeEach(() => {
    saved.length = 0;
    const blobs = new Map<string, Blob>();
    URL.createObjectURL = (blob) => { blobs.set('blob:1', blob as Blob); return 'blob:1'; };
    URL.revokeObjectURL = jest.fn();
    HTMLAnchorElement.prototype.click = function click() {
      const reader = new FileReader();
      const text = new Promise<string>((resolve) => { reader.onload = () => resolve(reader.result as string); });
      reader.readAsText(blobs.get(this.href)!);
      saved.push({ name: this.download, text });
    };
  });

  test('hands over a file with the answers as its defaults', async () => {
    const { type, press, form } = mounted();
    await type('capacity', '50');
    press('Save this template…');
    expect(saved.map(({ name }) => name)).toEqual(['ten.json']);
    expect(JSON.parse(await saved[0].text)).toMatchObject({ id: 'ten', purpose: 'For 50 kN' });
    expect(form.element.querySelector('.rp-said')!.textContent).toContain('“ten.json”');
  });

  test('is refused while something is to mend, since the file would not hold what was typed', async () => {
    const { type, press, form } = mounted();
    await type('capacity', 'x');
    press('Save this template…');
    expect(saved).toEqual([]);
    expect(form.element.querySelector('.rp-said')!.textContent).toBe('The template is not saved: 1 to mend first.');
  });
});
