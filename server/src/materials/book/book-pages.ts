import type { Illustration, PlacedPage } from '../../story/story.ts';
import type { StudioStory } from '../layout/studio.ts';

/** A page of the child's book before it is set. */
export interface BookPage {
  /** The draft's page it comes from. */
  readonly placed: PlacedPage;
  /** Its sentences as printed, each as the lines that the writer broke it into: mostly one. */
  readonly sentences: readonly (readonly string[])[];
  readonly illustrations: readonly Illustration[];
}

/** The pages of a story that go into the child's book: those with text or a picture. The others are for the teacher. */
export function bookPages({ printed, text }: StudioStory): readonly BookPage[] {
  return printed.review.story.pages
    .filter(({ page }) => page.sentences.length > 0 || page.illustrations.length > 0)
    .map((placed) => ({
      placed,
      sentences: placed.page.sentences.map(({ text: whole, lines = [whole], span }) =>
        lines.map((line) => text(line, { start: placed.start + span.start, end: placed.start + span.end })),
      ),
      illustrations: placed.page.illustrations,
    }));
}

/** What the illustrator's note says, for a reader who cannot see the picture. */
export function alternativeOf({ note }: Illustration): string {
  return note.trim() === '' ? 'A picture without a description' : note.trim().replace(/\s+/g, ' ');
}
