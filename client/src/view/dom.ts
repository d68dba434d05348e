/** Makes an element as the last child of its parent. */
export function append<K extends keyof HTMLElementTagNameMap>(
  parent: Element,
  tag: K,
  className = '',
  text = '',
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  if (className !== '') element.className = className;
  if (text !== '') element.textContent = text;
  parent.append(element);
  return element;
}

/** Sets an element's text, if it is another; an unchanged text is left alone, with the reader's selection in it. */
export function setText(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

/** Sets an attribute, or takes it away where the value is undefined, if that changes anything. */
export function setAttribute(element: Element, name: string, value: string | undefined): void {
  if (value === undefined) element.removeAttribute(name);
  else if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

/** Shows or hides an element, for everyone. */
export function setShown(element: HTMLElement, isShown: boolean): void {
  if (element.hidden === isShown) element.hidden = !isShown;
}

/** Sets a length of an element's style from a share of its container. */
export function setShare(
  element: HTMLElement,
  property: 'left' | 'right' | 'width' | 'height' | 'bottom',
  share: number,
): void {
  const value = `${Math.round(share * 100000) / 1000}%`;
  if (element.style[property] !== value) element.style[property] = value;
}
