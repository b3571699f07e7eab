/** What an element is made with: its class, attributes, and children; text always goes in as text. */
interface Parts {
  readonly class?: string;
  readonly attributes?: Readonly<Record<string, string>>;
  readonly children?: readonly (Node | string)[];
}

/** Makes an element. Strings among its children become text nodes, never markup. */
export function element<K extends keyof HTMLElementTagNameMap>(tag: K, parts: Parts = {}): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  if (parts.class) made.className = parts.class;
  for (const [name, value] of Object.entries(parts.attributes ?? {})) made.setAttribute(name, value);
  made.append(...(parts.children ?? []));
  return made;
}

/** A push button. */
export function button(label: string, onPress: () => void, parts: Parts = {}): HTMLButtonElement {
  const made = element('button', { children: [label], ...parts });
  made.type = 'button';
  made.addEventListener('click', onPress);
  return made;
}
