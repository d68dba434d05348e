import { describe, expect, it } from 'vitest';
import { readRegular } from '../../../server/src/phonics/regular.ts';

/** Invented words and rare ones that a first-grade reader sounds out: word, graphemes, sounds. */
const table = `
zib z-i-b Z IH B
plim p-l-i-m P L IH M
splim s-p-l-i-m S P L IH M
thrup th-r-u-p TH R AH P
swig s-w-i-g S W IH G
runt r-u-n-t R AH N T
shan sh-a-n SH AE N
trunk t-r-u-n-k T R AH NG K
mip m-i-p M IH P
vod v-o-d V AA D
lub l-u-b L AH B
dask d-a-s-k D AE S K
kem k-e-m K EH M
jat j-a-t JH AE T
wep w-e-p W EH P
yim y-i-m Y IH M
hud h-u-d HH AH D
fep f-e-p F EH P
nop n-o-p N AA P
tob t-o-b T AA B
cag c-a-g K AE G
cun c-u-n K AH N
cep c-e-p S EH P
cid c-i-d S IH D
gop g-o-p G AA P
gam g-a-m G AE M
guf g-u-f G AH F
rass r-a-ss R AE S
niff n-i-ff N IH F
dell d-e-ll D EH L
fuzz f-u-zz F AH Z
vedd v-e-dd V EH D
migg m-i-gg M IH G
zatt z-a-tt Z AE T
lenn l-e-nn L EH N
pabb p-a-bb P AE B
rupp r-u-pp R AH P
sommp - -
bick b-i-ck B IH K
yack y-a-ck Y AE K
dreck d-r-e-ck D R EH K
snuck s-n-u-ck S N AH K
lotch l-o-tch L AA CH
fitch f-i-tch F IH CH
gadge g-a-dge G AE JH
ledge l-e-dge L EH JH
nudge n-u-dge N AH JH
vish v-i-sh V IH SH
crosh c-r-o-sh K R AA SH
shup sh-u-p SH AH P
chim ch-i-m CH IH M
chad ch-a-d CH AE D
thim th-i-m TH IH M
theg th-e-g TH EH G
whim wh-i-m W IH M
wheb wh-e-b W EH B
phim ph-i-m F IH M
knob kn-o-b N AA B
knup kn-u-p N AH P
wrim wr-i-m R IH M
squib s-qu-i-b S K W IH B
quid qu-i-d K W IH D
quem qu-e-m K W EH M
vax v-a-x V AE K S
dex d-e-x D EH K S
zox z-o-x Z AA K S
next n-e-x-t N EH K S T
tring t-r-i-ng T R IH NG
vang v-a-ng V AE NG
bong b-o-ng B AO NG
dunk d-u-n-k D AH NG K
zink z-i-n-k Z IH NG K
plonk p-l-o-n-k P L AA NG K
skimp s-k-i-m-p S K IH M P
frand f-r-a-n-d F R AE N D
blent b-l-e-n-t B L EH N T
clisp c-l-i-s-p K L IH S P
glust g-l-u-s-t G L AH S T
prisk p-r-i-s-k P R IH S K
smelt s-m-e-l-t S M EH L T
drilk d-r-i-l-k D R IH L K
snelf s-n-e-l-f S N EH L F
stilp s-t-i-l-p S T IH L P
pelm p-e-l-m P EH L M
thrict th-r-i-c-t TH R IH K T
strept s-t-r-e-p-t S T R EH P T
graft g-r-a-f-t G R AE F T
splint s-p-l-i-n-t S P L IH N T
scrub s-c-r-u-b S K R AH B
scep sc-e-p S EH P
shrimp sh-r-i-m-p SH R IH M P
squant - -
belch b-e-l-ch B EH L CH
winch w-i-n-ch W IH N CH
hent h-e-n-t HH EH N T
bulge b-u-l-ge B AH L JH
finge f-i-n-ge F IH N JH
lince l-i-n-ce L IH N S
pulse p-u-l-se P AH L S
nelve n-e-l-ve N EH L V
lamb l-a-mb L AE M
crumb c-r-u-mb K R AH M
vake v-a_e-k V EY K
jame j-a_e-m JH EY M
splade s-p-l-a_e-d S P L EY D
nace n-a_e-c N EY S
drage d-r-a_e-g D R EY JH
hase h-a_e-s HH EY S
baste b-a_e-s-t B EY S T
zide z-i_e-d Z AY D
thripe th-r-i_e-p TH R AY P
wime w-i_e-m W AY M
rise r-i_e-s R AY Z
fice f-i_e-c F AY S
lithe l-i_e-th L AY DH
dode d-o_e-d D OW D
skone s-k-o_e-n S K OW N
plose p-l-o_e-s P L OW Z
fube f-u_e-b F Y UW B
mune m-u_e-n M Y UW N
rupe r-u_e-p R UW P
dute d-u_e-t D UW T
theme th-e_e-m TH IY M
tryne t-r-y_e-n T R AY N
vail v-ai-l V EY L
plaim p-l-ai-m P L EY M
zay z-ay Z EY
stray s-t-r-ay S T R EY
feem f-ee-m F IY M
glee g-l-ee G L IY
leech l-ee-ch L IY CH
bleam b-l-ea-m B L IY M
zoap z-oa-p Z OW P
croam c-r-oa-m K R OW M
foe f-oe F OW
floy f-l-oy F L OY
loip l-oi-p L OY P
zoint z-oi-n-t Z OY N T
snoom s-n-oo-m S N UW M
voo v-oo V UW
drook d-r-oo-k D R UH K
blout b-l-ou-t B L AW T
dround d-r-ou-n-d D R AW N D
fowl f-ow-l F AW L
vaw v-aw V AO
prawn p-r-aw-n P R AO N
laum l-au-m L AO M
blew b-l-ew B L UW
few f-ew F Y UW
grue g-r-ue G R UW
vie v-ie V AY
nigh n-igh N AY
zight z-igh-t Z AY T
sleigh s-l-eigh S L EY
garb g-ar-b G AA R B
marn m-ar-n M AA R N
dar d-ar D AA R
charge ch-ar-ge CH AA R JH
warb w-ar-b W AO R B
zorm z-or-m Z AO R M
blorn b-l-or-n B L AO R N
forge f-or-ge F AO R JH
werp w-er-p W ER P
nerve n-er-ve N ER V
zirt z-ir-t Z ER T
flirm f-l-ir-m F L ER M
blurb b-l-ur-b B L ER B
murse m-ur-se M ER S
zair z-air Z EH R
plare p-l-are P L EH R
deer d-eer D IH R
mear m-ear M IH R
vire v-ire V AY ER
jore j-ore JH AO R
zoar z-oar Z AO R
pure p-ure P Y UH R
ball b-a-ll B AO L
zalk z-al-k Z AO K
zold z-o-l-d Z OW L D
me m-e M IY
zo z-o Z OW
spy s-p-y S P AY
hi h-i HH AY
flu f-l-u F L UW
gym - -
lymph l-y-m-ph L IH M F
zibs z-i-b-s Z IH B Z
runts r-u-n-t-s R AH N T S
swigs s-w-i-g-s S W IH G Z
blips b-l-i-p-s B L IH P S
plims p-l-i-m-s P L IH M Z
vakes v-a_e-k-s V EY K S
zobes z-o_e-b-s Z OW B Z
feems f-ee-m-s F IY M Z
trays t-r-ay-s T R EY Z
cars c-ar-s K AA R Z
plus p-l-u-s P L AH S
gas g-a-s G AE S
yes y-e-s Y EH S
`;

const rows = table
  .trim()
  .split('\n')
  .map((line) => line.split(' '))
  .map(([word = '', graphemes = '', ...sounds]) => ({ word, graphemes, sounds: sounds.join(' ') }));

describe('a regular short word', () => {
  it.each(rows.filter(({ graphemes }) => graphemes !== '-'))('$word is $graphemes, $sounds', (row) => {
    const parts = readRegular(row.word);
    expect(parts?.map((part) => part.letters).join('-')).toBe(row.graphemes);
    expect(parts?.flatMap((part) => part.sounds).join(' ')).toBe(row.sounds);
  });

  it.each(rows.filter(({ graphemes }) => graphemes === '-'))('$word has no regular reading', ({ word }) => {
    expect(readRegular(word)).toBeUndefined();
  });

  it('has its stress on its one vowel', () => {
    expect(readRegular('plim')?.map((part) => part.stress)).toEqual([undefined, undefined, 1, undefined]);
  });
});

describe('what is not of regular shape', () => {
  it.each([
    ['two syllables', ['rabbit', 'plimmo', 'banana', 'zibby', 'boxes', 'roses']],
    [
      'two readings that fit alike',
      ['zow', 'glow', 'zood', 'gen', 'gip', 'plead', 'frost', 'zind', 'wab', 'troll'],
    ],
    ['no vowel letter', ['', 'b', 'shh', 'mr']],
    ['no consonant', ['a', 'i', 'ea']],
    ['letters that do not go together', ['zqib', 'tlap', 'pkin', 'bazv', 'mulh', 'vrip', 'fliw']],
    ['other characters', ["zib's", 'zíb', 'z1b', 'Zib']],
  ])('%s', (_, words) => {
    expect(words.filter((word) => readRegular(word) !== undefined)).toEqual([]);
  });
});
