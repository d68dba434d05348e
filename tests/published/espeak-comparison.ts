import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { rowsOf } from '../../server/src/phonics/table.ts';
import { frequentWords } from './lexicon-words.ts';
import { phonics } from './published-phonics.ts';

/**
 * Compares the default readings of the 4,000 most frequent words with an independent source, the synthesizer espeak-ng
 * (Debian package, GPL: a program beside ours, no part of it), accent noise merged. Every disagreement was looked at and
 * is kept in `data/espeak-disagreements.tsv` with who is right (ours, theirs, both, accent) and why. A new one, or one
 * without a verdict, makes the script fail. `--keep` writes the file anew, old verdicts kept and new ones to be filled in.
 *
 *     npx tsx tests/published/espeak-comparison.ts
 */
const file = new URL('data/espeak-disagreements.tsv', import.meta.url);
const verdicts: ReadonlySet<string> = new Set(['ours', 'theirs', 'both', 'accent']);
const words = frequentWords(4000).filter((word) => word.length > 1);
const spoken = speak(words);
if (spoken === undefined) {
  console.log('espeak-ng is not installed; nothing is compared.');
} else if (spoken.length !== words.length) {
  console.log(`espeak-ng gave ${spoken.length} lines for ${words.length} words; nothing is compared.`);
  process.exitCode = 1;
} else {
  const kept = new Map(
    rowsOf(readFileSync(file, 'utf8'), ['word', 'here', 'espeak-ng', 'verdict', 'reason']).map((row) => [
      [row.word, row.here, row['espeak-ng']].join('\t'),
      row,
    ]),
  );
  const disagreements = words.flatMap((word, index) => {
    const [reading] = phonics.readingsOf(word);
    const here = (reading?.parts ?? []).flatMap(({ sounds }) => sounds).join(' ');
    const theirs = arpabetOf(spoken[index] ?? '');
    return merged(here) === merged(theirs) ? [] : [[word, here, theirs].join('\t')];
  });
  if (process.argv.includes('--keep')) {
    const rows = disagreements.map(
      (row) => `${row}\t${kept.get(row)?.verdict ?? ''}\t${kept.get(row)?.reason ?? ''}`,
    );
    writeFileSync(file, `word\there\tespeak-ng\tverdict\treason\n${rows.join('\n')}\n`);
  }
  const fresh = disagreements.filter((row) => !verdicts.has(kept.get(row)?.verdict ?? ''));
  const share = ((100 * disagreements.length) / words.length).toFixed(1);
  console.log(
    `${words.length} words, ${disagreements.length} disagreements (${share} %), ${fresh.length} not looked at yet`,
  );
  for (const row of fresh) console.log(row);
  for (const verdict of verdicts) {
    const count = disagreements.filter((row) => kept.get(row)?.verdict === verdict).length;
    console.log(`${verdict}: ${count}`);
  }
  process.exitCode = fresh.length === 0 ? 0 : 1;
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
