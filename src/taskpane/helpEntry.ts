import { copyButton } from './copyButton';
import { element } from './dom';
import { signature, type HelpText } from './helpTexts';

/** All that is written about one function, as an article with its name as the heading. */
export function helpEntry(help: HelpText): HTMLElement {
  const headingId = `function-help-${help.id}`;
  return element('article', {
    class: 'fh-entry',
    attributes: { 'aria-labelledby': headingId },
    children: [
      element('h2', { attributes: { id: headingId, tabindex: '-1' }, children: [help.name] }),
      element('p', { class: 'fh-signature', children: [breakableCode(signature(help))] }),
      element('p', { children: [help.summary] }),
      ...section('Arguments', [argumentList(help)]),
      ...section('Result', [paragraph(help.returns)]),
      ...section('Formula', help.formula.map((line) => element('p', { class: 'fh-formula', children: [line] }))),
      ...section('Notes', help.notes.map(paragraph)),
      ...section(help.examples.length > 1 ? 'Examples' : 'Example', help.examples.map((example, index) => exampleBlock(help, example, index))),
      ...section('Source', help.source.map(paragraph)),
    ],
  });
}

function section(title: string, content: readonly HTMLElement[]): HTMLElement[] {
  return content.length === 0 ? [] : [element('h3', { children: [title] }), ...content];
}

function paragraph(text: string): HTMLElement {
  return element('p', { children: [text] });
}

function argumentList(help: HelpText): HTMLElement {
  return element('dl', {
    children: help.parameters.flatMap(({ name, description, optional, range }) => [
      element('dt', {
        children: [
          element('code', { children: [name] }),
          element('span', { class: 'fh-kind', children: [` ${range ? 'range' : 'value'}${optional ? ', optional' : ''}`] }),
        ],
      }),
      element('dd', { children: [description] }),
    ]),
  });
}

function exampleBlock(help: HelpText, example: HelpText['examples'][number], index: number): HTMLElement {
  const formula = breakableCode(example.formula);
  return element('div', {
    class: 'fh-example',
    children: [
      element('div', { class: 'fh-example-formula', children: [formula, copyButton(formula, `example ${index + 1} of ${help.name}`)] }),
      element('div', { class: 'fh-example-result', children: ['gives ', breakableCode(example.result)] }),
    ],
  });
}

/** A formula whose lines break after a comma, a semicolon or a bracket rather than within a word. */
function breakableCode(text: string): HTMLElement {
  const pieces = text.split(/(?<=[,;(])/);
  return element('code', { children: pieces.flatMap((piece, index) => (index === 0 ? [piece] : [element('wbr'), piece])) });
}
