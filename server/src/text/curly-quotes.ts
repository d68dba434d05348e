/** A value without the curly quotation marks around it, which word processors set in place of straight ones. */
export function withoutCurlyQuotes(value: string): string {
  return (
    /^[\u201c\u201d\u201e\u2018\u2019]([^\u201c\u201d\u2018\u2019]+)[\u201c\u201d\u2018\u2019]$/
      .exec(value)?.[1]
      ?.trim() ?? value
  );
}
