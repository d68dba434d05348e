/** Ways to set off text on a terminal; each gives its text unchanged where colours are not wanted. */
export interface Styles {
  strong(text: string): string;
  good(text: string): string;
  bad(text: string): string;
  faint(text: string): string;
}

/** Styles by the sixteen colours every terminal theme defines. Nothing is said by colour alone. */
export function styled(hasColour: boolean): Styles {
  const between =
    (on: number, off: number) =>
    (text: string): string =>
      hasColour ? `\u001b[${on}m${text}\u001b[${off}m` : text;
  return { strong: between(1, 22), good: between(32, 39), bad: between(31, 39), faint: between(2, 22) };
}
