/** Every command there is, in the order `help` lists them. A new command is its own file and its line here. */
import { ahead } from './ahead/ahead.js';
import { alignment } from './alignment.js';
import { altitude } from './altitude.js';
import { astray } from './astray/astray.js';
import { bright } from './bright.js';
import { plainReader } from './asking/plain-reader.js';
import type { Command, WordsReader } from './core/command.js';
import { causes } from './causes.js';
import { compare } from './compare.js';
import { dark } from './dark.js';
import { drift } from './drift.js';
import { entries } from './entries.js';
import { epoch } from './epoch.js';
import { forget } from './kept/forget.js';
import { gear } from './gear.js';
import { help } from './help.js';
import { figuresAsked } from './asking/following/figures-asked.js';
import { lostWords } from './asking/lost-words.js';
import { meridian } from './meridian.js';
import { moon } from './moon.js';
import { moons } from './moons.js';
import { mydata } from './kept/mydata.js';
import { pole } from './pole.js';
import { refraction } from './refraction.js';
import { changedReminder } from './remind/changed-reminder.js';
import { remind } from './remind/remind.js';
import { sidereal } from './sidereal.js';
import { site } from './site/site.js';
import { sun } from './sun/sun.js';
import { tonight } from './tonight.js';
import { severalRequests } from './asking/several-requests.js';
import { sunFirst } from './asking/sun-first.js';
import { slippedCommand } from './asking/slipped-command.js';
import { triage } from './triage/triage.js';
import { entriesAsked } from './triage/entries-asked.js';
import { followingWords } from './triage/following-words.js';
import { placeTold } from './triage/place-told.js';
import { besideWalk } from './triage/beside-walk.js';
import { toldTrouble } from './triage/told-trouble.js';
import { waitingWords } from './triage/waiting-words.js';
import { townTold } from './triage/town-told.js';
import { up } from './up.js';

export const allCommands: readonly Command[] = [
  triage,
  up,
  altitude,
  compare,
  bright,
  tonight,
  dark,
  moon,
  ahead,
  moons,
  sun,
  meridian,
  alignment,
  entries,
  sidereal,
  pole,
  drift,
  astray,
  epoch,
  refraction,
  site,
  remind,
  gear,
  causes,
  mydata,
  forget,
  help,
];

/** Who is asked, in order, about text that begins with no command. */
export const allReaders: readonly WordsReader[] = [
  sunFirst,
  entriesAsked,
  figuresAsked,
  changedReminder,
  followingWords,
  townTold,
  placeTold,
  besideWalk,
  waitingWords,
  slippedCommand,
  toldTrouble,
  severalRequests,
  plainReader,
  lostWords,
];
