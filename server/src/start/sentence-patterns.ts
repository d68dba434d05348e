/**
 * What a slot of a pattern is filled with: n a thing, c one that can be counted, p a place, m somebody, v an action by
 * itself, a a quality, f what somebody can be.
 */
export type SlotClass = 'n' | 'c' | 'p' | 'm' | 'v' | 'a' | 'f';

/** Subjects of `server/data/young-words.tsv` whose words can stand in a slot. */
export const slotSubjects: Readonly<Record<SlotClass, readonly string[]>> = {
  n: [
    'animals',
    'animal homes',
    'plants',
    'weather and sky',
    'home',
    'food',
    'clothes',
    'vehicles',
    'play',
    'school',
    'things',
    'people',
  ],
  c: ['animals', 'animal homes', 'home', 'vehicles', 'clothes', 'things'],
  p: ['places', 'animal homes', 'home', 'land and water'],
  m: ['animals', 'people'],
  v: ['actions'],
  a: ['feelings and ways', 'colors'],
  f: ['feelings and ways'],
};

/** Subjects in which an action is no thing, unless it has another of the slot's subjects too: *read* at school. */
export const loosely: ReadonlySet<string> = new Set(['play', 'school', 'things']);

/** Actions that make sense without saying what they are done to. */
export const actionsAlone: ReadonlySet<string> = new Set(
  `act bark beg bend blink blush bounce bow cheer chirp chomp clap climb cook crawl cry dance dart dash dig dip draw dream drift
  drink drive eat fall fish flap float flop fly freeze gasp giggle glow grin groan grow growl grumble grunt gulp hide hike
  hop howl hum hunt hurry jog joke jump kneel knock land laugh lean leap listen look march mix moan mop move munch nap nibble
  nod paddle paint peck peek peep play plop point pout prowl puff quack quit race rest ride roar rock roll run rush sail
  scream shake shine shop shout shrug sigh sing sip sit skate skid skip sleep slide slip slurp smile snack sneak sneeze sniff
  snore snort sob speak spin splash sprint squeak squeal squirm stand stare stay stomp stop stretch strut stumble swim swing talk tap
  think tiptoe tremble trot try tumble turn twirl twist vanish wade wait wake walk wander wave weep whisper whistle wiggle win
  wink wish wobble wonder work worry yap yawn yell zip zoom`
    .trim()
    .split(/\s+/),
);

/** What somebody can be. */
export const qualitiesOfSomebody: ReadonlySet<string> = new Set(
  `afraid alone angry awake big brave busy calm clever cold cool cozy cross dizzy fast fine firm fit free funny gentle glad good happy hot hungry
  ill jolly keen kind last late lazy lively lonely lost lucky mad merry messy neat nice noisy old polite proud quick quiet
  ready rich sad safe scared shy sick silly sleepy slim slow small smart smelly snug strong sunny sure sweet tall tired tough wet
  wild wise young`
    .trim()
    .split(/\s+/),
);

/** Words of the subject of qualities that describe nothing by themselves. */
export const noQualities: ReadonlySet<string> = new Set(
  'lot lots first extra worse best last well light'.split(' '),
);

/** Words that mean several, or are no single thing: *a mice* and *a sheep dog* are to be avoided. */
export const notCounted: ReadonlySet<string> = new Set(
  `mice geese feet teeth men women people children sheep fish deer moose pants jeans pajamas shorts clothes lace squid shrimp
  folk kids glue gold stuff lot`
    .trim()
    .split(/\s+/),
);

/**
 * Sentences to begin with: a slot in braces, everything else as it stands. The first that a lesson allows is taken, so the
 * plainer ones come first. Ours; each is a whole thing that somebody may say beside a picture.
 */
export const sentencePatterns: readonly string[] = `
The {n}.
A {c}.
I {v}.
It is {a}.
My {n}.
I am {f}.
I can {v}.
I see the {n}.
You {v}.
You can {v}.
The {m} is at the {p}.
The {m} can {v}.
To the {p}.
On top of the {n}.
At the top of the {n}.
The {n} and the {n}.
A {c} and a {c}.
It was {a}.
The {m} was at the {p}.
It was at the {p}.
His {n}.
It is his.
The {m} has a {c}.
The {m} has the {n}.
It is for the {m}.
For the {m}.
He can {v}.
Can he {v}?
You and I {v}.
She can {v}.
Can she {v}?
"I can {v}," said the {m}.
"I am {f}," said the {m}.
You are {f}.
Are you {f}?
We {v}.
We are {f}.
It is for me.
I can be {f}.
It can be {a}.
Do you {v}?
I do.
I have the {n}.
I have a {c}.
They {v}.
They can {v}.
What is it?
What a {c}!
I go to the {p}.
Go to the {p}.
No, it is not.
No, I am not {f}.
So {a}!
It is so {a}.
Come to the {p}.
Come to me.
Some are {a}.
I have some.
I want the {n}.
I want to {v}.
I put it on the {n}.
Put it on the {n}.
Your {n}.
It is your {n}.
Who is it?
Who can {v}?
Two and two.
I have two.
There is the {n}.
There is a {c}.
They were {f}.
We were at the {p}.
It is from the {m}.
It is from me.
One {c}.
It is one {c}.
Does he {v}?
Does it {v}?
Give it to me.
I give it to the {m}.
We live in a hut.
They live in a den.
Where is the {c}?
Where am I?
Here is the {n}.
Here I am.
Do you have any?
I do not have any.
There are so many.
How many are there?
I have many.
The people {v}.
There are people.
We have been to the {p}.
I have been {f}.
I can't {v}.
He can't {v}.
He says it is {a}.
She says yes.
I {v} again.
Here it is again.
Go into the {p}.
I go into the {p}.
We both {v}.
They are both {f}.
I don't {v}.
They don't {v}.
I could {v}.
He could {v}.
I would {v}.
She would {v}.
I should {v}.
We should {v}.
It is very {a}.
I am very {f}.
I {v} every day.
Every {c} can stay.
We work.
They work.
What is the word?
Here is the word.
The water is cold.
I drink water.
Here is the other {c}.
It is the other one.
Once I was {f}.
I did it once.
My mother can {v}.
His mother is {f}.
Go through the {p}.
We go through it.
Our {n}.
It is our {n}.
I love the {n}.
I love it.
It is above the {p}.
The sun is above us.
I {v} because I can.
It is because I am {f}.
My eyes are shut.
His eyes are {a}.
My friend can {v}.
He is my friend.
I can move.
It can move.
We laugh.
They laugh.
It is enough.
I have enough.
It is pretty.
The {n} is pretty.
Are you sure?
I am sure.
I have four.
I see four.
It is only me.
I have only one.
I thought so.
I thought it was {a}.
It is nothing.
I have nothing.
`
  .trim()
  .split('\n');
