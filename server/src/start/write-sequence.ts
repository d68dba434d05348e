import type { LessonPlan, SequencePlan } from './sequence-plan.ts';

/** The text of a `sequence.yaml`: read again, it has everything the plan has. Lines have at most some 110 characters. */
export function sequenceText({ title, targets, settings = {}, remarks = [], lessons }: SequencePlan): string {
  const blocks: string[] = [...remarks.flatMap(commentLines)];
  if (title !== undefined && title !== '') blocks.push(`title: ${quoted(title)}`);
  if (targets !== undefined) {
    blocks.push('targets:', ...Object.entries(targets).map(([key, figure]) => `  ${key}: ${figure}`));
  }
  for (const [key, value] of Object.entries(settings)) {
    if (typeof value === 'string') blocks.push(`${key}: ${scalar(value)}`);
    else
      blocks.push(
        `${key}:`,
        ...Object.entries(value).map(([name, text]) => `  ${scalar(name)}: ${scalar(text)}`),
      );
  }
  blocks.push(lessons.length === 0 ? 'lessons: []' : 'lessons:');
  lessons.forEach((lesson, index) => {
    if (index > 0) blocks.push('');
    blocks.push(...lessonLines(lesson));
  });
  return `${blocks.join('\n')}\n`;
}

function lessonLines(lesson: LessonPlan): string[] {
  const { name, title, syllables, targets, remarks = [] } = lesson;
  const lines = remarks.flatMap(commentLines).map((line) => `  ${line}`);
  lines.push(`  - name: ${quoted(name)}`);
  if (title !== undefined && title !== '') lines.push(`    title: ${scalar(title)}`);
  const list = (key: string, items: readonly string[] | undefined): void => {
    if (items !== undefined) lines.push(...listLines(key, items));
  };
  list('spellings', lesson.spellings);
  list('high-frequency words', lesson.highFrequencyWords);
  list('endings', lesson.endings);
  list('blends', lesson.blends);
  if (syllables !== undefined) lines.push(`    syllables: ${syllables}`);
  list('punctuation', lesson.punctuation?.map(quoted));
  if (targets !== undefined) {
    const entries = Object.entries(targets).map(([key, figure]) => `${key}: ${figure}`);
    lines.push(`    targets: { ${entries.join(', ')} }`);
  }
  return lines;
}

const longestLine = 110;

function listLines(key: string, items: readonly string[]): string[] {
  const written = items.map((item) => (item.startsWith('"') ? item : scalar(item)));
  const whole = `    ${key}: [${written.join(', ')}]`;
  if (whole.length <= longestLine) return [whole];
  const lines = [`    ${key}:`, '      ['];
  let row = '       ';
  for (const item of written) {
    if (row.length + item.length > longestLine) {
      lines.push(row);
      row = '       ';
    }
    row += ` ${item},`;
  }
  return [...lines, row, '      ]'];
}

/** Plain where nothing in it could be taken for anything else, by any reader of YAML. */
function scalar(text: string): string {
  const isPlain =
    /^[\p{L}][\p{L}\p{N}_'’ ,.-]*$/u.test(text) &&
    !/[ ,]$|, |^(?:y|n|yes|no|on|off|true|false|null)$/i.test(text);
  return isPlain && !text.includes(',') ? text : quoted(text);
}

/** In double quotes: a JSON string is one of YAML's. */
function quoted(text: string): string {
  return JSON.stringify(text).replaceAll('\u007f', '\\u007f').replaceAll('\u0085', '\\u0085');
}

function commentLines(text: string): string[] {
  // Other signs of control may not stand in YAML at all.
  return text
    .split(/\r\n?|\n|\u0085|\u2028|\u2029/)
    .map((line) => `# ${line}`.replace(/[^\P{Cc}\t]/gu, ' ').trimEnd());
}
