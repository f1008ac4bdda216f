import { execFileSync } from 'node:child_process';
import { hostname, userInfo } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../bot/ground/project-root.js';
import { readCollecting } from '../../bot/triage/model/collecting.js';

const lines = readCollecting(path.join(projectRoot(), 'knowledge/connection'));

describe('the line a member copies to gather what a helper would ask for', () => {
  it('is there for each system, reads only, and asks for no rights', () => {
    expect(lines.map(({ system }) => system).sort()).toEqual(['linux', 'macos', 'windows']);
    for (const { line } of lines) {
      // Redirections go to the bin or to standard output; nothing is installed, stopped, written or fetched.
      expect(line.replace(/2>\/dev\/null|2>&1/gu, '')).not.toMatch(/[^-]>|>>/u);
      expect(line).not.toMatch(
        /\b(?:sudo|su|doas|rm|mv|tee|curl|wget|install|Set-|Remove-|New-|Stop-|Start-|Invoke-|iex)\b/u,
      );
    }
  });

  it.runIf(process.platform === 'linux')(
    'prints on this very Linux under sixty lines, without account, host or serial numbers',
    () => {
      const { line } = lines.find(({ system }) => system === 'linux')!;
      for (const shell of ['sh', 'bash']) {
        const printed = execFileSync(shell, ['-c', line], { encoding: 'utf8' });
        expect(printed).toMatch(/^Linux\n/u);
        expect(printed).toContain('my groups:');
        expect(printed.trimEnd().split('\n').length).toBeLessThan(60);
        expect(printed).not.toMatch(/serial ?number/iu);
        for (const name of [userInfo().username, hostname()].filter((word) => word.length > 3 && word !== 'root'))
          expect(printed).not.toContain(name);
      }
    },
  );
});
