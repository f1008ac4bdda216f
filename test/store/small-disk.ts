/** A tiny disk of its own for tests, where this machine lets one be made (root on Linux). */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const run = (program: string, ...args: readonly string[]): void => {
  const { status, stderr, error } = spawnSync(program, args, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${program} ${args.join(' ')}: ${error?.message ?? stderr}`);
};

export interface SmallDisk {
  readonly folder: string;
  /** The same files at another place, where nothing can be written. */
  readonly readOnlyView: () => string;
  readonly remove: () => void;
}

export const smallDisk = (megabytes: number, owner?: { readonly uid: number; readonly gid: number }): SmallDisk => {
  const folder = mkdtempSync(join(tmpdir(), 'pierhand-disk-'));
  const mounted: string[] = [];
  const ownership = owner === undefined ? '' : `,uid=${owner.uid},gid=${owner.gid}`;
  run('mount', '-t', 'tmpfs', '-o', `size=${megabytes}m,mode=700${ownership}`, 'pierhand-test', folder);
  mounted.push(folder);
  return {
    folder,
    readOnlyView: () => {
      const view = mkdtempSync(join(tmpdir(), 'pierhand-view-'));
      run('mount', '--bind', folder, view);
      mounted.push(view);
      run('mount', '-o', 'remount,ro,bind', view);
      return view;
    },
    remove: () => {
      for (const place of mounted.reverse()) {
        run('umount', '-l', place);
        rmSync(place, { recursive: true, force: true });
      }
    },
  };
};

/** Why no small disk can be made here, or null when one can. */
export const smallDiskMissing = (): string | null => {
  try {
    const disk = smallDisk(1);
    disk.readOnlyView();
    disk.remove();
    return null;
  } catch (error) {
    return `this machine lets the test mount no disk of its own: ${(error as Error).message.split('\n')[0]}`;
  }
};
