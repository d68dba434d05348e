import type { Review } from '../review/review.ts';
import type { ReviewContext } from '../review/review-context.ts';
import { foldedWord } from '../text/folded-word.ts';
import { shifted } from '../text/span.ts';
import type { Thesaurus } from '../words/thesaurus.ts';
import { formsOf } from '../words/word-forms.ts';
import { replacementsFor } from './replacements.ts';
import type { TextEdit } from './text-edit.ts';

/** A place where a word that the lesson wants could stand for the one that stands there. */
export interface PlaceForWord {
  /** What stands there now. */
  readonly original: string;
  readonly page: number;
  /** What to put, spans absolute. */
  readonly edits: readonly TextEdit[];
}

/** At most so many places are given, the closest in meaning first. */
const most = 5;
/** A book is not searched to its end when so many were found before. */
const enough = 20;

/** Where in the running text a word could be used in place of another of near meaning, in the same form. */
export function placesForWord(
  wanted: string,
  { pages }: Review,
  context: ReviewContext,
  thesaurus: Thesaurus,
): readonly PlaceForWord[] {
  const folded = foldedWord(wanted);
  const mayBecome = becoming(folded, context, thesaurus);
  const found: (PlaceForWord & { readonly closeness: number })[] = [];
  for (const { placed } of pages) {
    const { page, start, number } = placed;
    for (const { words } of page.sentences) {
      for (const [index, word] of words.entries()) {
        if (!mayBecome(foldedWord(word.text))) continue;
        const question = { words, index, source: page.source, context, thesaurus };
        const replacement = replacementsFor(question).find(({ text }) => foldedWord(text) === folded);
        const before = words[index - 1];
        if (replacement === undefined) continue;
        const { text, article, closeness } = replacement;
        const edits = [{ span: shifted(word.span, start), text }];
        if (article !== undefined && before !== undefined) {
          edits.unshift({ span: shifted(before.span, start), text: article });
        }
        found.push({ original: word.text, page: number, edits, closeness });
        if (found.length === enough) return best(found);
      }
    }
  }
  return best(found);
}

function best<Place extends { readonly closeness: number }>(found: readonly Place[]): readonly Place[] {
  return [...found].sort((one, other) => other.closeness - one.closeness).slice(0, most);
}

/** A quick look, each different word once: whether a word has the wanted one, or what that is a form of, among its kin. */
function becoming(
  wanted: string,
  { phonics }: ReviewContext,
  thesaurus: Thesaurus,
): (word: string) => boolean {
  const bases = new Set([wanted, ...formsOf(wanted, thesaurus, phonics).map(({ base }) => base)]);
  const known = new Map<string, boolean>();
  const look = (word: string): boolean =>
    thesaurus.byHand.of(word, 'other').some(({ words }) => words.join(' ') === wanted) ||
    formsOf(word, thesaurus, phonics).some(
      ({ base, part }) =>
        thesaurus.byHand
          .of(base, part)
          .some(({ words }) => words.length === 1 && bases.has(words[0] ?? '')) ||
        thesaurus.kinOf(base, part).some((kin) => bases.has(kin.word)),
    );
  return (word) => {
    const before = known.get(word);
    if (before !== undefined) return before;
    const result = word !== wanted && look(word);
    known.set(word, result);
    return result;
  };
}
