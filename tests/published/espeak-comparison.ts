import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { frequentWords } from './lexicon-words.ts';
import { phonics } from './published-phonics.ts';

/**
 * Compares the default readings of the 4,000 most frequent words with an independent source, the synthesizer espeak-ng
 * (Debian package, GPL: a program beside ours, no part of it), accent noise merged. Every disagreement was looked at and
 * is kept in `data/espeak-disagreements.tsv`; a new one makes the script fail. `--keep` writes the file anew.
 *
 *     npx tsx tests/published/espeak-comparison.ts
 */
const file = new URL('data/espeak-disagreements.tsv', import.meta.url);
const words = frequentWords(4000).filter((word) => word.length > 1);
const spoken = speak(words);
if (spoken === undefined) {
  console.log('espeak-ng is not installed; nothing is compared.');
} else {
  const rows = words.flatMap((word, index) => {
    const readings = phonics
      .readingsOf(word)
      .map(({ parts }) => parts.flatMap(({ sounds }) => sounds).join(' '));
    const theirs = arpabetOf(spoken[index] ?? '');
    if (merged(readings[0] ?? '') === merged(theirs)) return [];
    const isListed = readings.some((reading) => merged(reading) === merged(theirs));
    return [
      `${word}\t${readings[0]}\t${theirs}\t${isListed ? 'both: ours has it as another reading' : 'ours, or accent'}`,
    ];
  });
  const table = `word\there\tespeak-ng\tlooked at\n${rows.join('\n')}\n`;
  if (process.argv.includes('--keep')) writeFileSync(file, table);
  const kept = new Set(readFileSync(file, 'utf8').split('\n').map(withoutVerdict));
  const fresh = rows.filter((row) => !kept.has(withoutVerdict(row)));
  console.log(
    `${words.length} words, ${rows.length} disagreements (${((100 * rows.length) / words.length).toFixed(1)} %), ${fresh.length} not looked at yet`,
  );
  for (const row of fresh) console.log(row);
  process.exitCode = fresh.length === 0 ? 0 : 1;
}

function withoutVerdict(row: string): string {
  return row.split('\t').slice(0, 3).join('\t');
}

/** One line of IPA a word; undefined where espeak-ng is not installed. */
function speak(list: readonly string[]): readonly string[] | undefined {
  try {
    const output = execFileSync('espeak-ng', ['-q', '-v', 'en-us', '--ipa', '--stdin'], {
      input: list.join('\n\n'),
      maxBuffer: 1e8,
      encoding: 'utf8',
    });
    return output
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== '');
  } catch {
    return undefined;
  }
}

/** IPA as espeak-ng writes American English, the longest signs first. */
function arpabetOf(ipa: string): string {
  const signs =
    'aɪɚ=AY ER,aɪə=AY AH,aʊɚ=AW ER,tʃ=CH,dʒ=JH,eɪ=EY,aɪ=AY,aʊ=AW,ɔɪ=OY,oʊ=OW,ɑː=AA,ɔː=AO,iː=IY,uː=UW,ɜː=ER,oː=AO,ɚ=ER,æ=AE,ʌ=AH,ə=AH,ɐ=AH,ᵻ=AH,ɪ=IH,ɛ=EH,ʊ=UH,ɔ=AO,ɑ=AA,i=IY,u=UW,a=AA,e=EH,o=OW,ŋ=NG,ʃ=SH,ʒ=ZH,θ=TH,ð=DH,ɹ=R,r=R,ɾ=T,j=Y,ɡ=G,g=G,h=HH,b=B,d=D,f=F,k=K,l=L,m=M,n=N,p=P,s=S,t=T,v=V,w=W,z=Z,x=K,ʔ=T,ɬ=L'
      .split(',')
      .map((pair) => pair.split('='));
  const sounds: string[] = [];
  for (let at = 0; at < ipa.length; ) {
    const sign = signs.find(([letters = '']) => ipa.startsWith(letters, at));
    if (sign) sounds.push(sign[1] ?? '');
    at += sign?.[0]?.length ?? 1;
  }
  return sounds.join(' ');
}

/** Accent noise merged: AA and AO, r-vowels, reduced vowels, flapped t. */
function merged(sounds: string): string {
  let text = ` ${sounds.replaceAll(' ', '  ')} `;
  const steps: readonly (readonly [RegExp, string])[] = [
    [/ AO /g, ' AA '],
    [/ IY {2}R /g, ' IH  R '],
    [/ (UW|UH) {2}R /g, ' AA  R '],
    [/ (AE|EY) {2}R /g, ' EH  R '],
    [/ ER /g, ' AH  R '],
    [/ (IH|UH) /g, ' AH '],
    [/ IY (?= [AEIOU])/g, ' Y '],
    [/ AH (?= [LNM] )/g, ' '],
    [/ R +R /g, ' R '],
    [/ D /g, ' T '],
    [/ AY +AH +R /g, ' AY R '],
    [/ AW +AH +R /g, ' AW R '],
  ];
  for (const [pattern, plain] of steps) text = text.replace(pattern, plain);
  return text.replace(/ +/g, ' ').trim();
}
