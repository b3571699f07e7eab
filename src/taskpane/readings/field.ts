import { element } from '../dom';

let made = 0;

/** A field with its label. */
export interface Field<T extends HTMLElement> {
  readonly element: HTMLElement;
  readonly input: T;
}

/** A choice; `offer` replaces what is offered and keeps what is chosen, if it still is there. */
export function choiceField(label: string, onChange: () => void): Field<HTMLSelectElement> & { offer(options: readonly (readonly [value: string, words: string])[], chosen?: string): void } {
  const id = `readings-choice-${made += 1}`;
  const input = element('select', { attributes: { id } });
  input.addEventListener('change', onChange);
  return {
    element: element('div', { class: 'rp-field', children: [element('label', { class: 'rp-label', attributes: { for: id }, children: [label] }), input] }),
    input,
    offer(options, chosen = input.value) {
      input.replaceChildren(...options.map(([value, words]) => element('option', { attributes: { value }, children: [words] })));
      if (options.some(([value]) => value === chosen)) input.value = chosen;
    },
  };
}

/** A number to type; decimal comma and point are both taken. */
export function numberField(label: string, onChange: () => void): Field<HTMLInputElement> & { value(): number | undefined; readonly unit: HTMLElement } {
  const id = `readings-number-${made += 1}`;
  const input = element('input', { attributes: { id, type: 'text', inputmode: 'decimal', autocomplete: 'off', spellcheck: 'false' } });
  const unit = element('span', { class: 'rp-unit' });
  input.addEventListener('change', onChange);
  return {
    element: element('div', { class: 'rp-field', children: [element('label', { class: 'rp-label', attributes: { for: id }, children: [label] }), element('div', { class: 'rp-answer', children: [input, unit] })] }),
    input,
    unit,
    value: () => typedNumber(input.value),
  };
}

export function tickField(label: string, onChange: () => void): Field<HTMLInputElement> {
  const input = element('input', { attributes: { type: 'checkbox' } });
  input.addEventListener('change', onChange);
  return { element: element('label', { class: 'rp-check', children: [input, element('span', { children: [label] })] }), input };
}

/** A number as typed, with decimal point or comma; undefined of nothing, NaN of what is no number. */
export function typedNumber(text: string): number | undefined {
  const plain = text.trim().replace('−', '-').replace(',', '.');
  return plain === '' ? undefined : Number(plain);
}
