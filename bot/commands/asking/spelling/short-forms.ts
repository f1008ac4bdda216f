/** How words are written on a phone: short, by their sound, with figures for syllables; each form has one meaning. */
import { tableOf } from '../../../ground/table-of.js';

/** The meaning, then its forms. */
const FORMS = `
tonight: tonite 2nite 2night tonit tnite nite2 2nyt tonyt tnght tnt
tomorrow: tomoro tmrw tmrrw tmr tmw tmoro 2moro 2morrow 2mrw tomoz tomo tmoz 2moz
night: nite nyt
morning: morn mornin
bright: brite
midnight: midnite midnyt
twenty: twenny
today: 2day
you: u ya
your: ur
are: r
why: y
with: w w/ wth wiv wif wid wih
without: w/o
before: b4 befor bfor befour bfore
between: betw btwn
save: sav sve
from: fr
the: teh da hte
and: &
please: pls plz plse
thanks: thx tnx
when: wen whn wehn whne
what: wot wat wht whut wt
what's: whats wots wats whatz
when is: whens wens
where: wer whr wher whre
where is: wheres weres whers
because: cos cuz coz bcos bcuz
right now: rn atm
good: gud
great: gr8
going to: gonna gunna
want to: wanna
give me: gimme
let me: lemme
about: abt
through: thru fru
though: tho
could: cud cld
would: wud wld
should: shud shd shld
nebula: neb
nebulas: nebs
cluster: clust
galaxy: gal
galaxies: gals galaxys
double: dbl dubble duble
doubles: dubbles dubles dbls
binoculars: bino binocs
altitude: alti
coordinates: coords co-ords coord
opposition: opp
telescope: tele
weekend: w/e wkend
weather: wx
minutes: mins
hours: hrs
half an hour: half-hour
half: haf hlf
right: rite rght
does: duz dus dose doz
look: luk lok
some: sum
enough: enuf enuff
which: wich wch whch
come: cum
comes: cums
still: stil stl
that: dat tht
this: dis ths
them: dem
they: dey
anything: anyfing anyfin anythin
everything: everyfing evryfing evrything everyfin evryfin
something: sumthing somefing sumfin
nothing: nuffin nuthin
proper: propa
properly: proply propaly
want: wnt
not: nt
have: hav hv
every: evry evri
wondering: wonderin
going: goin gng
first: furst
next: nxt
until: untill untl unil
quite: qite
will: wil wll
just: jus jst
friend: frend
time: tyme
was: woz wos
saturday: satday`;

/** The meaning of a short form, by the form. */
export const SHORT_FORMS = tableOf(
  Object.fromEntries(
    FORMS.trim()
      .split('\n')
      .flatMap((line) => {
        const [meaning = '', forms = ''] = line.split(': ');
        return forms.split(' ').map((form) => [form, meaning] as const);
      }),
  ),
);
