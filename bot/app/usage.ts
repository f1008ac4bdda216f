/** What `--help` prints. */
import { settingLines } from './settings.js';
import { ownVersion } from './version.js';

export const usage = (): string => `Pierhand ${ownVersion()}
  npm start                   answers on Discord, on Matrix or on both, whichever is set; where none is, what is typed here
  npm start -- up M 31        the same, this question first
  npm start -- --version
  npm run backup -- FILE      copies what is kept into one file, while the bot runs

Settings are environment variables; deploy/.env.example explains each, deploy/README.md the rest:
${settingLines.join('\n')}
`;
