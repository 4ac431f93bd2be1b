// Real repositories in folders that are gone after the test, untouched by the settings of whoever runs it.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { folder, matched } from '../folder.ts';

// The code under test runs in this process and starts git from here.
Object.assign(process.env, {
  GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_NOSYSTEM: '1', LC_ALL: 'C', HOME: '/nonexistent',
  GIT_AUTHOR_NAME: 'Saltmarsh', GIT_AUTHOR_EMAIL: 'bench@saltmarsh.example', GIT_COMMITTER_NAME: 'Saltmarsh', GIT_COMMITTER_EMAIL: 'bench@saltmarsh.example',
});
for (const name of ['GIT_DIR', 'GIT_WORK_TREE', 'GIT_INDEX_FILE', 'GIT_PREFIX']) Reflect.deleteProperty(process.env, name);

export class Made {
  /** each commit is a minute younger than the one before it */
  private minutes = 0;

  constructor(readonly at: string, ...init: string[]) {
    this.git('init', '-q', '-b', 'main', ...init);
  }

  git(...args: string[]): string {
    // git starts another one to tidy up behind a commit; here is nothing to tidy.
    return execFileSync('git', ['-c', 'maintenance.auto=false', ...args], { cwd: this.at, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
  }
  path(name: string): string {
    return join(this.at, name);
  }
  write(files: Readonly<Record<string, string | Buffer>>): this {
    for (const [name, text] of Object.entries(files)) {
      mkdirSync(dirname(this.path(name)), { recursive: true });
      writeFileSync(this.path(name), text);
    }
    return this;
  }
  remove(...names: string[]): this {
    for (const name of names) rmSync(this.path(name), { recursive: true });
    return this;
  }
  /** Everything as it is; gives the id. */
  commit(subject: string): string {
    this.git('add', '-A');
    const date = `2026-02-14T21:${String(this.minutes++).padStart(2, '0')}:00+0100`;
    Object.assign(process.env, { GIT_AUTHOR_DATE: date, GIT_COMMITTER_DATE: date });
    this.git('commit', '-q', '--allow-empty-message', '-m', subject);
    const head = (name: string): string => readFileSync(this.path(`.git/${name}`), 'utf8').trim();
    // Hundreds are made, and each git that is asked is one more process.
    return head(head('HEAD').replace('ref: ', ''));
  }
}

export const made = (files: Readonly<Record<string, string | Buffer>> = {}, ...init: string[]): Made => new Made(folder(), ...init).write(files);

// S1–cockle 1171 mm + cockle–P1 300 mm = 1471 mm, as the reference; 1221 mm makes the object beam 50 mm longer.
export const longer = (page = matched()): string => page.replace('1171 mm', '1221 mm');

/** A page in four revisions: renamed on the way, changed, only tidied; with an inventory that changes once. */
export function bench(): Made {
  const page = `use "lab.plate"\n${matched().replace('plate P1', 'plate P1 = lab.fine')}`;
  const lab = (sensitivity: number): string => `inventory lab {\n  plate fine {\n    sensitivity: ${sensitivity} µJ/cm²\n  }\n}\n`;
  const shop = made({ 'old.plate': page, 'lab.plate': lab(40) });
  shop.commit('as set up');
  shop.git('mv', 'old.plate', 'cockle.plate');
  shop.commit('another name');
  shop.write({ 'cockle.plate': longer(page) }).commit('object further back');
  shop.write({ 'cockle.plate': `// tidied\n${longer(page)}` }).commit('tidied');
  shop.write({ 'lab.plate': lab(80) }).commit('another box of plates');
  return shop;
}
