import { type Ending, endings } from '../phonics/reading.ts';
import { withoutCurlyQuotes } from '../text/curly-quotes.ts';
import { nearestName } from '../text/nearest-name.ts';
import { isNothing, type YamlNode } from '../yaml/yaml-node.ts';
import { isMark, plainMark } from './punctuation-mark.ts';
import { readTargets } from './read-targets.ts';
import {
  type Blend,
  blends,
  type Dimension,
  type Lesson,
  type Placed,
  type SpellingLine,
} from './sequence.ts';
import type { Field, FieldReader } from './yaml-fields.ts';

/** A lesson with the dimensions that its lines mention, whether or not it opens anything in them. */
export interface LessonRead {
  readonly lesson: Lesson;
  readonly mentions: ReadonlySet<Dimension>;
}

/** What a lesson is called that has no name of its own; no story can name it. */
export const namelessLesson = '(no name)';

/** One item of `lessons`. Undefined, and reported, when it is no map; its bad lines are reported and left out. */
export function readLesson(
  node: YamlNode | null,
  index: number,
  fields: FieldReader,
): LessonRead | undefined {
  const given = fields.fieldsOf(node, 'a lesson', lessonKeys);
  if (given === undefined || node?.kind !== 'map') {
    return undefined;
  }
  const { span } = node;
  const name = fields.textOf(given.get('name'));
  if (isNothing(given.get('name')?.value ?? null)) {
    fields.report(
      'This lesson has no name; a story could not name it. Add one, as in name: "12".',
      node.pairs[0]?.key?.span ?? span,
    );
  }
  const title = fields.textOf(given.get('title'));
  const mentions = new Set<Dimension>();
  const mentioned = (dimension: Dimension): Dimension => {
    if (given.has(dimension)) {
      mentions.add(dimension);
    }
    return dimension;
  };
  const list = <T>(key: string, example: string, read: (text: string) => T | Refusal): Placed<T>[] =>
    readList(given.get(key), example, fields, read);
  const syllables = readSyllables(given.get(mentioned('syllables')), fields);
  if (syllables === undefined) {
    mentions.delete('syllables');
  }
  const lesson: Lesson = {
    name: name === undefined ? namelessLesson : withoutCurlyQuotes(name.value),
    index,
    ...(title === undefined ? {} : { title: title.value }),
    spellings: list('spellings', '[m as in mud, a as in map]', spellingLine),
    highFrequencyWords: list('high-frequency words', '[the, said]', highFrequencyWord),
    endings: list(mentioned('endings'), '[s, ing]', ending),
    blends: list(mentioned('blends'), '[end, start]', blend),
    ...(syllables === undefined ? {} : { syllables }),
    punctuation: list(mentioned('punctuation'), '["!", "?"]', mark),
    targets: readTargets(given.get('targets')?.value ?? null, fields),
    nameSpan: name?.span ?? span,
    span,
  };
  return { lesson, mentions };
}

/** The keys a lesson may have. */
export const lessonKeys = [
  'name',
  'title',
  'spellings',
  'high-frequency words',
  'endings',
  'blends',
  'syllables',
  'punctuation',
  'targets',
] as const;

/** True for what a lesson can teach as a whole: a word with the apostrophes, hyphens and full stop it is written with. */
export function isOneWord(text: string): boolean {
  return /^['’]?[\p{L}\p{M}]+(?:['’-][\p{L}\p{M}]+)*[.'’]?$/u.test(text);
}

/** Why an item is not taken. */
interface Refusal {
  readonly refusal: string;
}

function readList<T>(
  field: Field | undefined,
  example: string,
  fields: FieldReader,
  read: (text: string) => T | Refusal,
): Placed<T>[] {
  const taken: Placed<T>[] = [];
  for (const item of (field && fields.textItemsOf(field, example)) ?? []) {
    if (item?.kind === 'text' && item.tag === '!') {
      // YAML takes a bare exclamation mark for a tag; the empty item stands just behind it.
      const end = item.span.start;
      fields.report('A mark at the head of an item needs quotes around it, as in "!".', {
        start: Math.max(0, end - 1),
        end,
      });
      continue;
    }
    const text = fields.textOfItem(
      item,
      `Each item of “${field?.key.value}” is one piece of text, as in ${example}.`,
    );
    if (text === undefined) {
      continue;
    }
    const value = read(text.value);
    if (isRefusal(value)) {
      fields.report(value.refusal, text.span);
    } else {
      taken.push({ value, span: text.span });
    }
  }
  return taken;
}

function isRefusal(value: unknown): value is Refusal {
  return typeof value === 'object' && value !== null && 'refusal' in value;
}

function spellingLine(text: string): SpellingLine | Refusal {
  const parts = /^(\S+)\s+as\s+in\s+(\S+)$/i.exec(text);
  const letters = parts?.[1]?.toLowerCase();
  const keyWord = parts?.[2];
  if (letters === undefined || keyWord === undefined) {
    return {
      refusal: `“${shortened(text)}” does not say its sound. Write letters, “as in” and a key word: ai as in rain.`,
    };
  }
  if (!/^[a-z]+(?:_[a-z]+)*$/.test(letters)) {
    return {
      refusal: `“${shortened(letters)}” is not a spelling. Write its letters, with a low line where another letter stands between: a_e as in cake.`,
    };
  }
  return /^[a-z]+(?:['’-][a-z]+)*$/i.test(keyWord)
    ? { letters, keyWord }
    : { refusal: `“${shortened(keyWord)}” is not a word that could show a sound.` };
}

function highFrequencyWord(text: string): string | Refusal {
  return isOneWord(text)
    ? text
    : { refusal: `“${shortened(text)}” is not one word. Write each word as an item of its own.` };
}

function ending(text: string): Ending | Refusal {
  const wanted = text.toLowerCase().replace(/’/g, "'").replace(/^-|-$/g, '');
  return oneOf(wanted, endings) ?? notOneOf(text, 'an ending', endings);
}

function blend(text: string): Blend | Refusal {
  return oneOf(text.toLowerCase(), blends) ?? notOneOf(text, 'a place of blends', blends);
}

function mark(text: string): string | Refusal {
  return isMark(text)
    ? plainMark(text)
    : {
        refusal: `“${shortened(text)}” is not a punctuation mark. Write each mark in quotes as an item of its own: ["!", "?"].`,
      };
}

function readSyllables(field: Field | undefined, fields: FieldReader): Placed<number> | undefined {
  if (field === undefined || isNothing(field.value)) {
    return undefined;
  }
  const text = fields.textOf(field);
  if (text === undefined) {
    return undefined;
  }
  if (!/^[1-9]\d?$/.test(text.value)) {
    fields.report(
      `“syllables” is the number of syllables of the longest word, as in syllables: 2, not “${shortened(text.value)}”.`,
      text.span,
    );
    return undefined;
  }
  return { value: Number(text.value), span: text.span };
}

function oneOf<Name extends string>(text: string, names: readonly Name[]): Name | undefined {
  return names.find((name) => name === text);
}

function notOneOf(text: string, what: string, names: readonly string[]): Refusal {
  const meant = nearestName(text, names);
  return {
    refusal: `“${shortened(text)}” is not ${what}. ${meant === undefined ? `Known are ${names.join(', ')}.` : `Did you mean “${meant}”?`}`,
  };
}

function shortened(text: string): string {
  const letters = [...text];
  return letters.length <= 40 ? text : `${letters.slice(0, 40).join('')}…`;
}
