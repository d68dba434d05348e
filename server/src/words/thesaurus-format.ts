/**
 * The data file `meanings.bin`, in sections. `targets`: the words that can stand for others, parted by spaces.
 * `meanings`: words in the order of their letters, in blocks of sixteen, each told as the number of letters it shares with
 * the one before, the number of its own, and these; then the length of what follows in two bytes and two bytes of shares
 * (four bits for each part of speech in the order of {@link partsOfSpeech}, fifteen for all of the word's use). Then for
 * each part of speech with a share, the number of its words and for each the distance of its number in `targets` from the
 * one before (one byte, or 255 and two bytes) and a byte: closeness in steps of 1/31 and, above it, what may follow a verb.
 * `meanings-index`: the offset of each block in four bytes, the lowest first. `irregular-forms` and `replacements` are
 * tables.
 */
export const blockSize = 16;

/** The parts of speech in the order of the file. */
export const partsOfSpeech = ['noun', 'verb', 'adjective', 'adverb'] as const;
/** A part of speech that has meanings of its own. */
export type PartOfSpeech = (typeof partsOfSpeech)[number];

/** The steps of closeness. */
export const closenessSteps = 31;

/** Bits of what may follow a verb. */
export const followBits = { object: 0x20, nothing: 0x40, place: 0x80 } as const;
