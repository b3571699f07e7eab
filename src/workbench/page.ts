/** An element of the page by its id. Throws if index.html has none. */
export function byId<T extends HTMLElement = HTMLElement>(id: string): T {
  const found = document.getElementById(id);
  if (!found) throw new Error(`the page has no element "${id}"`);
  return found as T;
}
