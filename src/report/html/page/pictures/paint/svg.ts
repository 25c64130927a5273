export type Attributes = Readonly<Record<string, string | number>>;

/** An SVG element with its attributes and what is in it; text is never read as markup. */
export function svg<Name extends keyof SVGElementTagNameMap>(
  document: Document,
  name: Name,
  attributes: Attributes = {},
  ...content: readonly (Node | string)[]
): SVGElementTagNameMap[Name] {
  const element = document.createElementNS('http://www.w3.org/2000/svg', name);
  setAttributes(element, attributes);
  element.append(...content);
  return element;
}

/** An HTML element, likewise. */
export function html<Name extends keyof HTMLElementTagNameMap>(
  document: Document,
  name: Name,
  attributes: Attributes = {},
  ...content: readonly (Node | string)[]
): HTMLElementTagNameMap[Name] {
  const element = document.createElement(name);
  setAttributes(element, attributes);
  element.append(...content);
  return element;
}

export function setAttributes(element: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value));
}
