/** A sequence of four lessons without demands on the length of stories; lesson 2 teaches nothing new. */
export const smallSequence = `title: Willow Lane
targets: { readable: 0, sentence: 20, page: 50, practice: 0, repeats: 0 }
lessons:
  - name: "1"
    title: first letters
    spellings: [m as in mud, s as in sun, t as in top, a as in map, p as in pan, n as in nap, i as in sit]
    high-frequency words: [the]
  - name: "2"
  - name: "3"
    title: long i
    spellings: [igh as in light]
  - name: "4"
    spellings: [ck as in lock]
`;

/** A story with a lesson and a body. */
export function storyAt(lesson: string, body: string, more = ''): string {
  return `---\nlesson: "${lesson}"\n${more}---\n${body}\n`;
}
