/** The small words of English grammar that say what their neighbours are. All in lower case. */
const list = (words: string): ReadonlySet<string> => new Set(words.split(' '));

/** Words that begin a noun phrase. */
export const determiners = list(
  'a an the this that these those my your his her its our their some any no every each one two three four five six seven eight nine ten both all many few another',
);
/** Pronouns that can be a subject and nothing else. */
export const subjectPronouns = list('i he she we they');
/** Pronouns that stand for a subject or an object. */
export const eitherPronouns = list('it you');
/** Pronouns that stand for an object and never for a subject. */
export const objectPronouns = list('me him us them');
/** Forms of *be*. */
export const formsOfBe = list("am is are was were be been being isn't aren't wasn't weren't");
/** Forms of *have*. */
export const formsOfHave = list("have has had haven't hasn't hadn't");
/** Verbs before which another verb stands in its base form. */
export const modals = list(
  "can could will would shall should may might must do does did can't couldn't won't wouldn't shouldn't don't doesn't didn't",
);
/** Words that say where, where to or with what. */
export const prepositions = list(
  'about above across after against along among around as at before behind below beneath beside between beyond by down for from in inside into near of off on onto out outside over past round since through till to toward under until up upon with without',
);
/** Words that begin a clause which cannot stand alone. */
export const subordinators = list(
  'when while if as because since after before until till unless although though where once whether than like',
);
/** Adverbs that stand between a subject and its verb. */
export const middleAdverbs = list('just then still also never always often soon not only even');
/** Nouns without a plural: no *a* stands before them. */
export const massNouns = list(
  'bacon bread butter cake candy cash cheese chalk clothes corn cream dark dirt dust fire fog food frost fun fur fluff grass grub gum hair ham hay help homework honey ice ink jam junk ketchup land love luck lunch magic mail meat mess milk mist money moss muck mud music noise oatmeal paint paper pasta popcorn pork rain rice rubbish salad salt sand shade silk silver sleep sleet slime smoke snow soap soil soup spinach steam string stuff sugar sunlight sunshine tape thunder time trash water weather wheat wind wood wool work yarn yogurt trouble darkness daylight moonlight gold mush toast sun',
);
/** Mass nouns that also count: *a cake*, *a fire*; nothing is ruled out for them. */
export const massOrCount = list(
  'cake fire lunch mess noise rain sleep snow soup string wind wood toast cream cheese candy salad sun land work paint',
);
/** Nouns that have no singular. */
export const pluralNouns = list(
  'clothes pants jeans shorts scissors pajamas glasses stairs woods fries trousers slacks togs duds people folks',
);
