/** `npm run stories [-- WORD]`: plays every story (or those whose id holds the word) and prints how each went, worst first. */
import { realDeps } from '../commands/real-deps.js';
import { linesOf, tell, type Told } from './told-figures.js';
import { loadStories } from './told-story.js';

const deps = await realDeps();
const told: Told[] = [];
for (const story of loadStories().filter(({ id }) => id.includes(process.argv[2] ?? '')))
  told.push(await tell(deps, story));
for (const line of linesOf(told)) console.log(line);
