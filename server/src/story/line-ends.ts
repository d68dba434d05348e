/** The sign in the visible text for a break that the writer set (two spaces at a line's end, `\`, `<br>`): LINE SEPARATOR. */
export const setBreak = '\u2028';

/** What ends a line of the visible text. */
export const lineEnds: readonly string[] = ['\n', '\r', setBreak];
