/** Elements, made one by one; text is only ever text. */
export const made = <T extends keyof HTMLElementTagNameMap>(tag: T, name?: string): HTMLElementTagNameMap[T] => {
  const element = document.createElement(tag);
  if (name !== undefined) element.className = name;
  return element;
};

export function text<T extends keyof HTMLElementTagNameMap>(tag: T, words: string, name?: string): HTMLElementTagNameMap[T] {
  const element = made(tag, name);
  element.textContent = words;
  return element;
}
