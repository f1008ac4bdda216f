/** How words are written on a phone: short, by their sound, with figures for syllables; each form has one meaning. */
import { tableOf } from '../../../ground/table-of.js';

/** The meaning, then its forms. */
const FORMS = `
tonight: tonite 2nite 2night tonit tnite nite2
tomorrow: tomoro tmrw tmrrw tmr tmw tmoro 2moro 2morrow 2mrw tomoz tomo
night: nite
bright: brite
midnight: midnite midnyt
twenty: twenny
today: 2day
you: u ya
your: ur
are: r
why: y
with: w w/ wth wiv
without: w/o
before: b4
between: betw btwn
save: sav sve
from: fr
the: teh da hte
and: &
please: pls plz plse
thanks: thx tnx
when: wen whn
what: wot wat wht
what's: whats wots wats whatz
when is: whens wens
where: wer whr
where is: wheres
because: cos cuz
right now: rn atm
good: gud
great: gr8
going to: gonna gunna
want to: wanna
give me: gimme
let me: lemme
about: abt
through: thru
though: tho
could: cud
would: wud
should: shud
nebula: neb
nebulas: nebs
cluster: clust
galaxy: gal
galaxies: gals galaxys
double: dbl dubble duble
doubles: dubbles dubles dbls
binoculars: bino
altitude: alti
coordinates: coords co-ords coord
opposition: opp
telescope: tele
weekend: w/e wkend
weather: wx
minutes: mins
half an hour: half-hour
half: haf hlf
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
