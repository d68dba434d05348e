import { withoutCurlyQuotes } from '../text/curly-quotes.ts';
import { nearestName } from '../text/nearest-name.ts';
import type { Problem } from '../text/problem.ts';
import type { FrontMatterBlock, FrontMatterKey } from './front-matter-block.ts';
import { frontMatterKeys } from './front-matter-block.ts';
import { readEntries } from './front-matter-entries.ts';
import type { Entry, EntryValue } from './front-matter-values.ts';
import type { FrontMatter, FrontMatterValue, StoryWord } from './story.ts';

/** A front matter and whether it makes its file a story. */
export interface ReadFrontMatter {
  readonly frontMatter: FrontMatter;
  /** True when a `lesson` key stands in it, even a half-written one. */
  readonly hasLesson: boolean;
}

/** The front matter of a file that has none. */
export const noFrontMatter: FrontMatter = {
  span: { start: 0, end: 0 },
  names: [],
  storyWords: [],
  pronunciations: [],
  problems: [],
};

/** Reads the front matter that `findFrontMatter` found in `text`. Whatever is wrong is a problem at its place. */
export function readFrontMatter(text: string, block: FrontMatterBlock): ReadFrontMatter {
  const content = text.slice(block.content.start, block.content.end);
  const { entries, problems: written } = readEntries(content, block.content.start);
  const problems: Problem[] = [...written];
  if (!block.closed) {
    const message = 'The front matter is not closed: put a line of three hyphens behind its last line.';
    problems.unshift({ message, span: block.fence, severity: 'error' });
  }
  const values = known(entries, problems);
  const lesson = values.get('lesson');
  if (lesson?.value.kind === 'nothing') {
    problems.push(error('Name the lesson the story is written for, as in lesson: "12".', lesson.key.span));
  }
  const single = (key: FrontMatterKey) => oneText(values.get(key), problems);
  const title = single('title');
  const lessonText = unquoted(single('lesson'));
  const sequence = unquoted(single('sequence'));
  const frontMatter: FrontMatter = {
    span: block.span,
    ...(title && { title }),
    ...(lessonText && { lesson: lessonText }),
    ...(sequence && { sequence }),
    names: names(values.get('names'), problems),
    storyWords: storyWords(values.get('story words'), problems),
    pronunciations: pronunciations(values.get('pronunciations'), problems),
    problems: problems.sort((left, right) => left.span.start - right.span.start),
  };
  // `lesson:12`, without its space, is no key to YAML but is on the way to being one.
  const hasLesson = lesson !== undefined || /(?:^|[\r\n])lesson:/.test(content);
  return { frontMatter, hasLesson };
}

function known(entries: readonly Entry[], problems: Problem[]): ReadonlyMap<FrontMatterKey, Entry> {
  const values = new Map<FrontMatterKey, Entry>();
  for (const entry of entries) {
    const name = frontMatterKeys.find((key) => key === entry.key.value);
    if (name === undefined) {
      problems.push(unknownKey(entry));
    } else if (values.has(name)) {
      problems.push(error(`"${name}" stands here a second time; the first one counts.`, entry.key.span));
    } else {
      values.set(name, entry);
    }
  }
  return values;
}

function unknownKey(entry: Entry): Problem {
  const { value, span } = entry.key;
  const near = nearestName(value, frontMatterKeys);
  const shown = value.length > 40 ? `${value.slice(0, 40)}…` : value;
  // An author or a date that the writer notes for herself does no harm; a key that is nearly right does.
  return near === undefined
    ? {
        message: `A story has no "${shown}", so it is passed over; it may have ${listed(frontMatterKeys)}.`,
        span,
        severity: 'information',
      }
    : { message: `A story has no "${shown}"; "${near}" may be meant.`, span, severity: 'warning' };
}

function listed(names: readonly string[]): string {
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;
}

function oneText(entry: Entry | undefined, problems: Problem[]): FrontMatterValue<string> | undefined {
  if (entry === undefined || entry.value.kind === 'nothing') return undefined;
  if (entry.value.kind === 'text') return { value: entry.value.text, span: entry.value.span };
  problems.push(
    error(
      `"${entry.key.value}" takes one value, not ${entry.value.kind === 'list' ? 'a list' : 'keys with values'}.`,
      entry.value.span,
    ),
  );
  return undefined;
}

/** Word processors make quotation marks curly, which YAML takes for a part of the value. */
function unquoted(given: FrontMatterValue<string> | undefined): FrontMatterValue<string> | undefined {
  if (given === undefined) return undefined;
  const value = withoutCurlyQuotes(given.value);
  if (value === given.value) return given;
  const start = given.span.start + given.value.indexOf(value);
  return { value, span: { start, end: start + value.length } };
}

function names(entry: Entry | undefined, problems: Problem[]): readonly FrontMatterValue<string>[] {
  const found: FrontMatterValue<string>[] = [];
  for (const item of items(entry)) {
    if (item.kind === 'nothing') continue;
    if (item.kind !== 'text') {
      problems.push(error('A name is a word or a few words; write names: [Kim, Mr. Hill].', item.span));
    } else if (item.text.includes(',')) {
      problems.push(error('Several names are a list; write names: [Kim, Mr. Hill].', item.span));
    } else {
      found.push({ value: item.text, span: item.span });
    }
  }
  return found;
}

function storyWords(entry: Entry | undefined, problems: Problem[]): readonly StoryWord[] {
  const found: StoryWord[] = [];
  for (const item of items(entry)) {
    if (item.kind === 'text' && item.text.split(/\s+/).length > 3) {
      problems.push(
        error(
          'A colon is missing between a story word and its meaning, as in pond: a small lake.',
          item.span,
        ),
      );
    } else if (item.kind === 'text' && /^[^\s:]+:\S/.test(item.text)) {
      problems.push(error('A space is missing behind the colon, as in pond: a small lake.', item.span));
    } else if (item.kind === 'text' && item.text.includes(',')) {
      problems.push(error('Several story words are a list; write story words: [pond, net].', item.span));
    } else if (item.kind === 'text') {
      found.push({ word: item.text, meaning: '', span: item.span });
    } else if (item.kind === 'map') {
      for (const { key, value } of item.entries) {
        const meaning = value.kind === 'text' ? value.text : '';
        found.push({ word: key.value, meaning, span: key.span });
        if (value.kind === 'text' ? value.text.trim() === '' : value.kind === 'nothing') {
          problems.push(
            warning(
              `“${key.value}” has no meaning yet. Write behind the colon how it is explained.`,
              key.span,
            ),
          );
        }
        if (value.kind === 'list' || value.kind === 'map') {
          problems.push(error('The meaning of a story word is one piece of text.', value.span));
        }
      }
    } else if (item.kind === 'list') {
      problems.push(error('Write each story word with its meaning, as in pond: a small lake.', item.span));
    }
  }
  return withoutRepeats(found, problems);
}

function withoutRepeats(words: readonly StoryWord[], problems: Problem[]): readonly StoryWord[] {
  const seen = new Set<string>();
  return words.filter(({ word, span }) => {
    if (!seen.has(word)) {
      seen.add(word);
      return true;
    }
    problems.push(error(`"${word}" stands here a second time; the first one counts.`, span));
    return false;
  });
}

function pronunciations(entry: Entry | undefined, problems: Problem[]): FrontMatter['pronunciations'] {
  if (entry === undefined || entry.value.kind === 'nothing') return [];
  if (entry.value.kind !== 'map') {
    problems.push(error('Write each word with its graphemes, as in Zib: z i b.', entry.value.span));
    return [];
  }
  const found: FrontMatter['pronunciations'][number][] = [];
  for (const { key, value } of entry.value.entries) {
    if (found.some(({ word }) => word.value === key.value)) {
      problems.push(error(`"${key.value}" stands here a second time; the first one counts.`, key.span));
    } else if (value.kind === 'text') {
      found.push({ word: key, graphemes: { value: value.text, span: value.span } });
    } else {
      problems.push(
        error(`Write the graphemes of "${key.value}" behind the colon, as in Zib: z i b.`, key.span),
      );
    }
  }
  return found;
}

/** The items of a list; any other value as the one item of a list. */
function items(entry: Entry | undefined): readonly EntryValue[] {
  if (entry === undefined) return [];
  return entry.value.kind === 'list' ? entry.value.items : [entry.value];
}

function warning(message: string, span: Problem['span']): Problem {
  return { message, span, severity: 'warning' };
}

function error(message: string, span: Problem['span']): Problem {
  return { message, span, severity: 'error' };
}
