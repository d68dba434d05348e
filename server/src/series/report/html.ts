import { shownShare } from '../../review/figures.ts';
import { counted } from '../../review/wording.ts';
import { gapHeadings, gapLabel, gapMessage } from '../gap-wording.ts';
import { type Gap, gapKinds, type Series, type StoryInSeries } from '../series.ts';
import { shortfall } from '../standing.ts';
import { chartSvg, roundedUp } from './chart.ts';
import { escaped } from './markup.ts';
import { reportStyle } from './style.ts';
import { grade } from './text.ts';
import { spellingTables, wordTables } from './uses-tables.ts';

/**
 * The series as one page to read, to hand on and to print. It needs nothing from elsewhere and runs nothing: the pictures
 * are inline SVG, and what they show stands in tables too.
 */
export function coverageHtml(series: Series): string {
  const title = series.sequence.title === '' ? 'Series' : series.sequence.title;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escaped(title)}: coverage</title>
<style>${reportStyle}</style>
</head>
<body>
<header>
<h1>${escaped(title)}</h1>
<p class="under">What the stories of this series practise, story by story, in the order of the lessons.</p>
<nav aria-label="Parts of this page"><ul><li><a href="#year">The year</a></li><li><a href="#gaps">What is missing</a></li><li><a href="#stories">Stories</a></li><li><a href="#spellings">Spellings</a></li><li><a href="#words">High-frequency words</a></li><li><a href="#new">New words</a></li></ul></nav>
</header>
<main>
${summary(series)}
<h2 id="year">The year</h2>
${charts(series.stories)}
<h2 id="gaps">What is missing</h2>
${gaps(series)}
<h2 id="stories" class="sheet">Stories</h2>
${storyTable(series.stories)}
<h2 id="spellings" class="sheet">Spellings</h2>
<p>Decodable running words that use each spelling. A frame marks the stories of the lesson that teaches it; the darker, the more uses.</p>
${spellingTables(series)}
<h2 id="words" class="sheet">High-frequency words</h2>
${wordTables(series)}
<h2 id="new" class="sheet">New words</h2>
<p>Words that no earlier story of the series has.</p>
${newWords(series.stories)}
</main>
</body>
</html>
`;
}

function summary({ stories, words, spellings, highFrequencyWords, gaps: missing }: Series): string {
  const passing = stories.filter(({ story }) => story.passes).length;
  const running = stories.reduce((sum, { story }) => sum + story.counts.words, 0);
  const used = spellings.filter(({ total }) => total > 0).length;
  const seldom = missing.filter(({ kind }) => kind === 'seldom-met').length;
  const met = highFrequencyWords.filter(({ total }) => total > 0).length;
  const figures: readonly (readonly [string, number, string])[] = [
    ['stories', stories.length, `${passing} pass`],
    ['running words', running, ''],
    ['different words', words.length, ''],
    ['spellings used', used, `of ${spellings.length}`],
    ['high-frequency words met', met, `of ${highFrequencyWords.length}`],
    ['gaps', missing.length - seldom, `and ${counted(seldom, 'rare word')}`],
  ];
  return `<dl class="figures">${figures
    .map(
      ([name, figure, beside]) =>
        `<div><dt>${name}</dt><dd>${figure.toLocaleString('en-US')}${beside === '' ? '' : ` <small>${beside}</small>`}</dd></div>`,
    )
    .join('')}</dl>`;
}

function charts(stories: readonly StoryInSeries[]): string {
  const label = ({ story }: StoryInSeries): string => story.lesson.name;
  const name = ({ story }: StoryInSeries): string => `Lesson ${story.lesson.name}, ${story.title}`;
  const lowest = Math.min(...stories.map(({ story }) => Math.min(story.readable, story.target) * 100));
  const longest = Math.max(1, ...stories.map(({ story }) => story.sentences.longest));
  const mostWords = Math.max(1, ...stories.map(({ story }) => story.counts.words));
  const mostNew = Math.max(1, ...stories.map((each) => each.newWords.length));
  const least = Math.max(0, Math.floor((lowest - 5) / 10) * 10);
  return [
    figure(
      'readable',
      'Readable share',
      'Percent of running words. The line across is the target; ✕ marks a story that falls short of some target.',
      {
        bars: stories.map((each) => ({
          label: label(each),
          hint: `${name(each)}: ${shownShare(each.story.readable, each.story.counts.words)} readable, target ${Math.round(each.story.target * 100)} %`,
          value: each.story.readable * 100,
          mark: each.story.target * 100,
          fallsShort: !each.story.passes,
        })),
        least,
        most: 100,
        unit: ' %',
      },
    ),
    figure('length', 'Length', 'Running words of each story.', {
      bars: stories.map((each) => ({
        label: label(each),
        hint: `${name(each)}: ${counted(each.story.counts.words, 'word')}`,
        value: each.story.counts.words,
        fallsShort: false,
      })),
      least: 0,
      most: roundedUp(mostWords),
      unit: '',
    }),
    figure('sentences', 'Sentences', 'Mean words a sentence; the line across is the longest sentence.', {
      bars: stories.map((each) => ({
        label: label(each),
        hint: `${name(each)}: ${each.story.sentences.mean.toFixed(1)} words a sentence, the longest ${each.story.sentences.longest}`,
        value: each.story.sentences.mean,
        mark: each.story.sentences.longest,
        fallsShort: false,
      })),
      least: 0,
      most: roundedUp(longest),
      unit: '',
    }),
    figure('new-words', 'New words', 'Different words that no earlier story has.', {
      bars: stories.map((each) => ({
        label: label(each),
        hint: `${name(each)}: ${counted(each.newWords.length, 'new word')}`,
        value: each.newWords.length,
        fallsShort: false,
      })),
      least: 0,
      most: roundedUp(mostNew),
      unit: '',
    }),
  ].join('\n');
}

function figure(
  id: string,
  title: string,
  description: string,
  chart: Omit<Parameters<typeof chartSvg>[0], 'title' | 'description'>,
): string {
  return `<figure><figcaption>${title} <span>${description}</span></figcaption>
${chartSvg({ title, description: `${description} A bar for each story, under the name of its lesson. The table of stories below has the figures.`, ...chart }, id)}</figure>`;
}

function gaps({ gaps: missing, sequence, words }: Series): string {
  const { againWithin, unseenFor, metAtLeast } = sequence.limits;
  const limits = `<p class="under">By the limits of the sequence: a spelling again within ${counted(againWithin, 'story', 'stories')}, a high-frequency word unseen for fewer than ${unseenFor}, a word met at least ${metAtLeast} times.</p>`;
  if (missing.length === 0) return `${limits}<p class="good">Nothing is missing.</p>`;
  return [
    limits,
    ...gapKinds.flatMap((kind) => {
      const own = missing.filter((gap) => gap.kind === kind);
      if (own.length === 0) return [];
      const head = `<h3>${gapHeadings[kind]} <span class="under">(${own.length}${kind === 'seldom-met' ? ` of ${words.length} words` : ''})</span></h3>`;
      return [head, gapList(own)];
    }),
  ].join('\n');
}

/** Where the heading says it all, the bare things are listed, each with its lesson; else a sentence for each gap. */
function gapList(own: readonly Gap[]): string {
  const labels = own.flatMap((gap) => gapLabel(gap) ?? []);
  if (labels.length === own.length) {
    return `<p class="list">${labels.map((label) => `<span>${escaped(label)}</span>`).join(', ')}</p>`;
  }
  return `<ul class="gaps">${own.map((gap) => `<li>${escaped(gapMessage(gap))}</li>`).join('')}</ul>`;
}

function storyTable(stories: readonly StoryInSeries[]): string {
  const rows = stories.map(({ story, newWords: fresh }, index) => {
    const verdict = story.passes ? 'passes' : `<span class="short">✕ ${escaped(shortfall(story))}</span>`;
    const figures = [
      shownShare(story.readable, story.counts.words),
      story.counts.words,
      story.sentences.mean.toFixed(1),
      story.sentences.longest,
      fresh.length,
      grade(story.readability.fleschKincaid),
      grade(story.readability.spache),
    ];
    return `<tr id="story-${index + 1}"><td class="figure">${escaped(story.lesson.name)}</td><th scope="row">${escaped(story.title)}<br><small>${escaped(story.path)}</small></th>${figures.map((each) => `<td class="figure">${each}</td>`).join('')}<td>${verdict}</td></tr>`;
  });
  return `<div class="scroll"><table class="stories">
<thead><tr><th scope="col" class="figure">Lesson</th><th scope="col">Story</th><th scope="col" class="figure">Readable</th><th scope="col" class="figure">Words</th><th scope="col" class="figure">Words a<br>sentence</th><th scope="col" class="figure">Longest<br>sentence</th><th scope="col" class="figure">New<br>words</th><th scope="col" class="figure">Flesch-<br>Kincaid</th><th scope="col" class="figure">Spache</th><th scope="col">Targets</th></tr></thead>
<tbody>
${rows.join('\n')}
</tbody></table></div>
<p class="under">Flesch-Kincaid and Spache are grades by formula, made for longer and harder texts. At this level they say little: compare stories with each other, and name no grade by them. Spache’s familiar words are here the words of Battledore’s own list of what six-year-olds know, not Spache’s.</p>`;
}

function newWords(stories: readonly StoryInSeries[]): string {
  const rows = stories.map(
    ({ story, newWords: fresh }) =>
      `<tr><td class="figure">${escaped(story.lesson.name)}</td><th scope="row">${escaped(story.title)}</th><td class="figure">${fresh.length}</td><td>${fresh.map(({ text }) => escaped(text)).join(', ')}</td></tr>`,
  );
  return `<div class="scroll"><table class="stories">
<thead><tr><th scope="col" class="figure">Lesson</th><th scope="col">Story</th><th scope="col" class="figure">New</th><th scope="col">Words</th></tr></thead>
<tbody>
${rows.join('\n')}
</tbody></table></div>`;
}
