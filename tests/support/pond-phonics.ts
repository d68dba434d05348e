import { handPhonics } from './hand-phonics.ts';

/** Words enough for the stories of the command line's tests. */
export const pondPhonics = handPhonics(
  `map    m=M a=AE1 p=P
   mud    m=M u=AH1 d=D
   sun    s=S u=AH1 n=N
   top    t=T o=AA1 p=P
   ten    t=T e=EH1 n=N
   nap    n=N a=AE1 p=P
   rug    r=R u=AH1 g=G
   light  l=L igh=AY1 t=T
   sit    s=S i=IH1 t=T
   the    th=DH e=AH0
   sat    s=S a=AE1 t=T
   red    r=R e=EH1 d=D
   net    n=N e=EH1 t=T
   pond   p=P o=AA1 n=N d=D
   night  n=N igh=AY1 t=T
   cake   c=K a_e=EY1 k=K
   knee   kn=N ee=IY1
   rabbit r=R a=AE1 bb=B i=AH0 t=T / rab-bit
   zat    z=Z a=AE1 t=T
   jumps  j=JH u=AH1 m=M p=P s=S`,
  ['zat'],
);

/** A sequence of three lessons without targets that stories of a few words miss. */
export const pondSequence = `title: At the pond
targets: { readable: 75, practice: 0, repeats: 0 }
lessons:
  - name: "1"
    spellings: [m as in map, p as in map, a as in map, s as in sun, n as in sun, t as in top, e as in ten]
    high-frequency words: [the]
  - name: "2"
    spellings: [d as in mud, r as in rug, o as in top, u as in sun]
  - name: "3"
    spellings: [igh as in light]
`;
