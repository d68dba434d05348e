import type { Lesson } from '../../sequence/sequence.ts';
import { spellingLabel } from '../gap-wording.ts';
import type { Row, Series, StoryInSeries } from '../series.ts';
import { escaped } from './markup.ts';

/** Stories side by side in one table; with more of them there are several tables, so that each fits a sheet of paper. */
const mostAbreast = 24;

/** The spellings of a series by its stories, as tables. */
export function spellingTables({ spellings, stories }: Series): string {
  return tables(spellings, stories, 'Spelling', spellingLabel);
}

/** The high-frequency words of a series by its stories, as tables. */
export function wordTables({ highFrequencyWords, stories }: Series): string {
  return tables(highFrequencyWords, stories, 'Word', ({ word }) => word);
}

function tables<Thing extends { readonly lesson: Lesson }>(
  rows: readonly Row<Thing>[],
  stories: readonly StoryInSeries[],
  heading: string,
  label: (thing: Thing) => string,
): string {
  const parts: string[] = [];
  for (let from = 0; from < stories.length; from += mostAbreast) {
    const abreast = stories.slice(from, from + mostAbreast);
    const last = abreast.at(-1)?.story.lesson.index ?? -1;
    const taught = rows.filter(({ thing }) => thing.lesson.index <= last);
    parts.push(table(taught, abreast, from, stories.length, heading, label));
  }
  return parts.join('\n');
}

function table<Thing extends { readonly lesson: Lesson }>(
  rows: readonly Row<Thing>[],
  abreast: readonly StoryInSeries[],
  from: number,
  all: number,
  heading: string,
  label: (thing: Thing) => string,
): string {
  const caption =
    all <= abreast.length
      ? 'Uses in each story, under the name of its lesson.'
      : `Uses in stories ${from + 1} to ${from + abreast.length} of ${all}, under the names of their lessons.`;
  const heads = abreast.map(
    ({ story }) =>
      `<th scope="col" title="${escaped(story.title)}"><a href="#story-${from + abreast.findIndex((each) => each.story === story) + 1}">${escaped(story.lesson.name)}</a></th>`,
  );
  const body = rows.map(({ thing, uses, total }) => {
    const cells = abreast.map(({ story }, index) =>
      cell(uses[from + index] ?? 0, thing.lesson, story.lesson),
    );
    return `<tr><th scope="row">${escaped(label(thing))}</th><td>${escaped(thing.lesson.name)}</td><td>${total}</td>${cells.join('')}</tr>`;
  });
  return `<div class="scroll"><table class="uses"><caption>${caption}</caption>
<thead><tr><th scope="col">${heading}</th><th scope="col">Lesson</th><th scope="col">All</th>${heads.join('')}</tr></thead>
<tbody>
${body.join('\n')}
</tbody></table></div>`;
}

/** A story before the lesson has a dot unless it happens to use it; its own lesson is framed, and 0 there is set off. */
function cell(uses: number, taught: Lesson, at: Lesson): string {
  const classes: string[] = [];
  if (at.index < taught.index) {
    return uses === 0 ? '<td></td>' : `<td class="early">${uses}</td>`;
  }
  if (at === taught) classes.push('own');
  if (uses === 0) classes.push(at === taught ? 'none' : 'early');
  else classes.push(uses < 3 ? 'u1' : uses < 8 ? 'u2' : 'u3');
  return `<td class="${classes.join(' ')}">${uses === 0 && at !== taught ? '·' : uses}</td>`;
}
